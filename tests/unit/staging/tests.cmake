# Trying every split unoptimised would take a minute.
set_source_files_properties(${CMAKE_SOURCE_DIR}/tests/property/staging/plan_laws.cpp
                            PROPERTIES COMPILE_OPTIONS -O1)
