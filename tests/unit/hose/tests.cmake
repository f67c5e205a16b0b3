# GLPK is an oracle here only: an exact integer-programming library beside the cut plan.
target_link_libraries(wm_hose_test PRIVATE glpk)
