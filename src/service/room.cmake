# HTTP and JSON stay in this room's sources. The web page is embedded: web/dist as it is at build
# time goes into the program byte for byte (assets.S), with a table of what may be asked for.
# The assembler reads copies in the build folder: the names in web/dist carry hashes, and a page
# that is built again while the program is being built would take them away under its hands.
pkg_check_modules(WM_HTTPLIB REQUIRED IMPORTED_TARGET cpp-httplib)
find_package(nlohmann_json REQUIRED)
target_link_libraries(wm_service PRIVATE PkgConfig::WM_HTTPLIB nlohmann_json::nlohmann_json Threads::Threads)
target_compile_definitions(wm_service PRIVATE WM_VERSION="${PROJECT_VERSION}")

set(dist ${CMAKE_SOURCE_DIR}/web/dist)
set(made ${CMAKE_BINARY_DIR}/generated/service)
file(MAKE_DIRECTORY ${made}/page)
# Names carry hashes and change: look again at every build.
file(GLOB built CONFIGURE_DEPENDS ${dist}/*)
set(assembler "")
set(declarations "")
set(rows "")
set(embedded "")
if(EXISTS ${dist}/manifest.json)
  set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${dist}/manifest.json)
  file(READ ${dist}/manifest.json manifest)
  string(JSON count LENGTH ${manifest})
  math(EXPR last "${count} - 1")
  foreach(i RANGE ${last})
    string(JSON name GET ${manifest} ${i} name)
    string(JSON type GET ${manifest} ${i} type)
    string(JSON cache GET ${manifest} ${i} cache)
    string(JSON gzip ERROR_VARIABLE no_gzip GET ${manifest} ${i} gzip)
    if(NOT EXISTS ${dist}/${name})
      message(FATAL_ERROR "web/dist/manifest.json names ${name}, which is not there: run ./start")
    endif()
    set(parts plain)
    set(plain ${dist}/${name})
    set(zipped "{}")
    if(NOT no_gzip AND EXISTS ${dist}/${gzip})
      list(APPEND parts gzip)
      set(gzip ${dist}/${gzip})
      set(zipped "between(wm_asset_${i}_gzip, wm_asset_${i}_gzip_end)")
    endif()
    foreach(part IN LISTS parts)
      set(symbol wm_asset_${i}_${part})
      set(copy ${made}/page/${i}.${part})
      file(COPY_FILE ${${part}} ${copy} ONLY_IF_DIFFERENT)
      string(APPEND assembler
        "  .hidden ${symbol}\n  .globl ${symbol}\n${symbol}:\n  .incbin \"${copy}\"\n"
        "  .hidden ${symbol}_end\n  .globl ${symbol}_end\n${symbol}_end:\n  .byte 0\n")
      string(APPEND declarations "extern const char ${symbol}[];\nextern const char ${symbol}_end[];\n")
      list(APPEND embedded ${copy})
    endforeach()
    if(cache STREQUAL "forever")
      set(forever true)
    else()
      set(forever false)
    endif()
    string(APPEND rows "      {\"${name}\", \"${type}\", ${forever}, "
      "between(wm_asset_${i}_plain, wm_asset_${i}_plain_end), ${zipped}, {}},\n")
  endforeach()
endif()

# Written only when different, so that nothing is built again without a reason.
file(CONFIGURE OUTPUT ${made}/assets.S @ONLY CONTENT
"  .section .rodata
@assembler@  .section .note.GNU-stack,\"\",%progbits
")
string(REPLACE "\n" " \\\n" rows_of_macro "${rows}")
file(CONFIGURE OUTPUT ${made}/service_assets.inc @ONLY CONTENT
"// Made by src/service/room.cmake from web/dist.
extern \"C\" {
@declarations@}
#define WM_ASSETS \\
@rows_of_macro@
")
set_source_files_properties(${made}/assets.S PROPERTIES OBJECT_DEPENDS "${embedded}")
target_sources(wm_service PRIVATE ${made}/assets.S)
target_include_directories(wm_service PRIVATE ${made})
