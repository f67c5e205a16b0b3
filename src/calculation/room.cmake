# JSON and TOML stay inside this room's sources: private, so that no other room sees them.
find_package(nlohmann_json REQUIRED)
find_package(tomlplusplus REQUIRED)
target_link_libraries(wm_calculation PRIVATE nlohmann_json::nlohmann_json tomlplusplus::tomlplusplus)
