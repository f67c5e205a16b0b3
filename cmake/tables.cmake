# Reference tables: data/<room>/*.json are validated and turned into constant arrays at
# build time (tools/make_tables.cpp), so that pure rooms need no file.
#
#   #include "tables/<room>/<table_with_underscores>.hpp"   wm::tables::<table_...>
#   #include "tables/<room>/all.hpp"                        wm::tables::all_of_<room>()

add_executable(wm_make_tables EXCLUDE_FROM_ALL ${CMAKE_SOURCE_DIR}/tools/make_tables.cpp)
set_target_properties(wm_make_tables PROPERTIES RUNTIME_OUTPUT_DIRECTORY ${CMAKE_BINARY_DIR}/tools)
target_compile_features(wm_make_tables PRIVATE cxx_std_23)
target_compile_options(wm_make_tables PRIVATE -Wall -Wextra -Wpedantic -Wconversion -Wshadow)
find_package(fmt REQUIRED)
target_link_libraries(wm_make_tables PRIVATE fmt::fmt)

# wm_room() calls this for each room; a room without data is left as it is.
function(wm_tables room)
  file(GLOB tables CONFIGURE_DEPENDS ${CMAKE_SOURCE_DIR}/data/${room}/*.json)
  if(NOT tables)
    return()
  endif()
  set(root ${CMAKE_BINARY_DIR}/generated)
  set(made ${root}/tables/${room}/all.hpp ${root}/tables/${room}/all.cpp)
  set(sources ${root}/tables/${room}/all.cpp)
  foreach(table IN LISTS tables)
    get_filename_component(name ${table} NAME_WE)
    string(REPLACE "-" "_" name ${name})
    list(APPEND made ${root}/tables/${room}/${name}.hpp ${root}/tables/${room}/${name}.cpp)
    list(APPEND sources ${root}/tables/${room}/${name}.cpp)
  endforeach()
  # The stamp is what is new after a run; a generated file that would be the same keeps its
  # time, and with ninja's restat nothing that includes it is compiled again.
  set(stamp ${root}/tables/${room}/made.stamp)
  add_custom_command(OUTPUT ${stamp} BYPRODUCTS ${made}
    COMMAND wm_make_tables ${room} ${root} ${tables}
    COMMAND ${CMAKE_COMMAND} -E touch ${stamp}
    DEPENDS wm_make_tables ${tables}
    COMMENT "Reference tables of ${room}" VERBATIM)
  add_custom_target(wm_tables_${room} DEPENDS ${stamp})
  set_source_files_properties(${sources} PROPERTIES GENERATED TRUE)
  target_sources(wm_${room} PRIVATE ${sources})
  target_include_directories(wm_${room} PUBLIC ${root})
  add_dependencies(wm_${room} wm_tables_${room})
endfunction()
