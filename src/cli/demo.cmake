# The files of demo/ go into the program as they are: one assembler source that includes their
# bytes, made again when one of them changes.
set(wm_demo_assembler "# Made by src/cli/demo.cmake.\n.section .rodata\n")
set(wm_demo_inputs "")
foreach(file pebblewing.toml thornback.toml history.jsonl stripe.png)
  string(REPLACE "." "_" symbol ${file})
  set(path ${CMAKE_SOURCE_DIR}/demo/${file})
  list(APPEND wm_demo_inputs ${path})
  string(APPEND wm_demo_assembler
    ".global wm_demo_${symbol}\n.global wm_demo_${symbol}_end\n"
    "wm_demo_${symbol}:\n.incbin \"${path}\"\nwm_demo_${symbol}_end:\n.byte 0\n")
endforeach()
string(APPEND wm_demo_assembler ".section .note.GNU-stack,\"\",%progbits\n")
set(wm_demo_source ${CMAKE_BINARY_DIR}/generated/demo_files.s)
file(CONFIGURE OUTPUT ${wm_demo_source} CONTENT "${wm_demo_assembler}" @ONLY)
set_source_files_properties(${wm_demo_source} PROPERTIES OBJECT_DEPENDS "${wm_demo_inputs}")
find_package(nlohmann_json REQUIRED)
target_sources(wm_cli PRIVATE ${wm_demo_source})
target_link_libraries(wm_cli PRIVATE nlohmann_json::nlohmann_json)
