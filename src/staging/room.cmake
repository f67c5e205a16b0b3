# Unoptimised, a search over subsets is slower by a factor of thirty; the tests run thousands.
if(CMAKE_BUILD_TYPE STREQUAL "Debug")
  set_source_files_properties(
    ${dir}/detail/stage_cost.cpp ${dir}/detail/plan_rules.cpp ${dir}/detail/plan_search.cpp
    ${dir}/detail/plan_bound.cpp ${dir}/detail/noisy_or.cpp
    PROPERTIES COMPILE_OPTIONS -O2 SKIP_PRECOMPILE_HEADERS ON)
else()
  # Wide loops over all sets of symptoms: -O2 of GCC 12 leaves them narrow.
  set_source_files_properties(${dir}/detail/noisy_or.cpp PROPERTIES COMPILE_OPTIONS -O3)
endif()
