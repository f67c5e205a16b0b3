# The peer is plain SQLite.
find_package(SQLite3 REQUIRED)
target_link_libraries(append_bench PRIVATE SQLite::SQLite3)
