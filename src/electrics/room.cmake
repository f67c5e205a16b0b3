# The equations of a circuit are Eigen's to solve; header-only, and only inside circuit.cpp.
find_package(Eigen3 REQUIRED NO_MODULE)
target_link_libraries(wm_electrics PRIVATE Eigen3::Eigen)
