# Correlated draws need an eigenvalue solver; header-only, and only inside .cpp files.
find_package(Eigen3 REQUIRED NO_MODULE)
target_link_libraries(wm_evidence PRIVATE Eigen3::Eigen)
