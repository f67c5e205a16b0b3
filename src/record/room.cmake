# SQLite holds the file, libsodium computes SHA-256, zlib the CRC-32 column marks.
# Their headers stay in this room's sources.
pkg_check_modules(WM_SODIUM REQUIRED IMPORTED_TARGET libsodium)
find_package(SQLite3 REQUIRED)
find_package(ZLIB REQUIRED)
target_link_libraries(wm_record PRIVATE SQLite::SQLite3 PkgConfig::WM_SODIUM ZLIB::ZLIB)
