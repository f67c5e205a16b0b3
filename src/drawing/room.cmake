# Text and shapes are painted by cairo and pango, QR codes are computed by qrencode.
# PRIVATE: none of their headers may reach another room.
pkg_check_modules(WM_DRAWING REQUIRED IMPORTED_TARGET cairo pango pangocairo libqrencode)
target_link_libraries(wm_drawing PRIVATE PkgConfig::WM_DRAWING)
# Outlines of tubes are Boost.Geometry's, inside one .cpp file. Optimised, GCC 12 takes the point
# that the library fills in by reference for one that may be unset.
set(outline_options -DBOOST_ALLOW_DEPRECATED_HEADERS)
if(CMAKE_CXX_COMPILER_ID STREQUAL "Clang")
  # Debian's Boost gives its marks of numeric kinds a value outside of their enumeration.
  list(APPEND outline_options -Wno-enum-constexpr-conversion)
else()
  list(APPEND outline_options -Wno-maybe-uninitialized)
endif()
set_source_files_properties(${dir}/detail/hose_outline.cpp PROPERTIES
  SKIP_PRECOMPILE_HEADERS ON COMPILE_OPTIONS "${outline_options}")
# cairo's flags ask for threads, the precompiled headers were read without.
set_target_properties(wm_drawing PROPERTIES DISABLE_PRECOMPILE_HEADERS ON)
