# Vectors of space are Eigen's; header-only. Roots and minima are Boost.Math's, inside .cpp files.
find_package(Eigen3 REQUIRED NO_MODULE)
target_link_libraries(wm_hose PUBLIC Eigen3::Eigen)
# Unoptimised, Eigen is slower by a factor of fifty; the tests solve tens of thousands of shapes.
if(CMAKE_BUILD_TYPE STREQUAL "Debug")
  set_source_files_properties(
    ${dir}/rod.cpp ${dir}/rod_start.cpp ${dir}/rod_measure.cpp ${dir}/window.cpp
    ${dir}/envelope.cpp ${dir}/chance.cpp ${dir}/dummy_tube.cpp ${dir}/solid.cpp ${dir}/mesh.cpp
    ${dir}/detail/near.cpp ${dir}/detail/free_step.cpp ${dir}/chain.cpp ${dir}/lean.cpp
    ${dir}/set_rod.cpp ${dir}/stl.cpp ${dir}/tape.cpp
    ${dir}/cut_plan.cpp ${dir}/detail/cut_bound.cpp ${dir}/detail/cut_search.cpp
    PROPERTIES COMPILE_OPTIONS -O2)
endif()
