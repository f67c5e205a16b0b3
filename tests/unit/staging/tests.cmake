# Trying every split unoptimised would take a minute.
set_source_files_properties(${CMAKE_SOURCE_DIR}/tests/property/staging/plan_laws.cpp
                            PROPERTIES COMPILE_OPTIONS -O1 SKIP_PRECOMPILE_HEADERS ON)
# The table of troubles names calculations of other rooms: they must be there.
target_link_libraries(wm_staging_test PRIVATE wm::calculation)
