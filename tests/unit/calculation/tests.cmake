# RapidCheck draws the values of tests/property/calculation.
find_package(rapidcheck REQUIRED)
target_link_libraries(wm_calculation_test PRIVATE rapidcheck)
