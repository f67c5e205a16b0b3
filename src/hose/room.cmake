# Vectors of space are Eigen's; header-only. Roots and minima are Boost.Math's, inside .cpp files.
find_package(Eigen3 REQUIRED NO_MODULE)
target_link_libraries(wm_hose PUBLIC Eigen3::Eigen)
# Unoptimised, Eigen is slower by a factor of fifty; the tests solve tens of thousands of shapes.
# The tests of the room are optimised alike (tests/unit/hose/tests.cmake): the linker keeps one copy
# of an inline function, and it may be theirs.
if(CMAKE_BUILD_TYPE STREQUAL "Debug")
  target_compile_options(wm_hose PRIVATE -O1)
  set_target_properties(wm_hose PROPERTIES DISABLE_PRECOMPILE_HEADERS ON)
endif()
