# GLPK is an oracle here only: an exact integer-programming library beside the cut plan.
target_link_libraries(wm_hose_test PRIVATE glpk)
# As the room itself: src/hose/room.cmake says why.
target_compile_options(wm_hose_test PRIVATE -O1)
set_target_properties(wm_hose_test PROPERTIES DISABLE_PRECOMPILE_HEADERS ON)
