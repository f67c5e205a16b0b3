# The peer is the JSON library alone.
find_package(nlohmann_json REQUIRED)
target_link_libraries(fold_bench PRIVATE nlohmann_json::nlohmann_json)
