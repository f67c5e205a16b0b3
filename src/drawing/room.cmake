# Text and shapes are painted by cairo and pango, QR codes are computed by qrencode.
# PRIVATE: none of their headers may reach another room.
pkg_check_modules(WM_DRAWING REQUIRED IMPORTED_TARGET cairo pango pangocairo libqrencode)
target_link_libraries(wm_drawing PRIVATE PkgConfig::WM_DRAWING)
