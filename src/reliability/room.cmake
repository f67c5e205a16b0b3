# Unoptimised, profiles of likelihoods and renewal sums take the tests minutes.
if(CMAKE_BUILD_TYPE STREQUAL "Debug")
  set_source_files_properties(${dir}/weibull_fit.cpp ${dir}/policy.cpp PROPERTIES COMPILE_OPTIONS -O2 SKIP_PRECOMPILE_HEADERS ON)
endif()
