# These tests tamper with files behind the room's back, so they need SQLite themselves.
find_package(SQLite3 REQUIRED)
find_package(rapidcheck REQUIRED)
target_link_libraries(wm_record_test PRIVATE SQLite::SQLite3 rapidcheck)

# End to end: power cuts, write errors, killed processes (tests/e2e/power_cut/).
# WM_POWER_CUTS (60) and WM_KILLS (20) in the environment set how many.
file(GLOB power_cut_sources CONFIGURE_DEPENDS ${CMAKE_SOURCE_DIR}/tests/e2e/power_cut/*.cpp)
if(power_cut_sources)
  add_executable(wm_record_power_cut_test ${power_cut_sources})
  target_include_directories(wm_record_power_cut_test PRIVATE ${CMAKE_SOURCE_DIR}/tests)
  target_link_libraries(wm_record_power_cut_test PRIVATE wm::record SQLite::SQLite3 GTest::gtest
                        GTest::gtest_main)
  add_test(NAME record_power_cut COMMAND wm_record_power_cut_test)
endif()
