# UDUNITS-2 is an oracle here only: it reads a file at run time, so the room itself must not use it.
find_package(rapidcheck REQUIRED)
target_link_libraries(wm_quantity_test PRIVATE udunits2 rapidcheck)
