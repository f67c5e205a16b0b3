// Read by the leak checker of the sanitized build, in every test program: fontconfig keeps its list
// of typefaces until the process ends.
extern "C" const char* __lsan_default_suppressions();  // NOLINT: the checker's own name
extern "C" const char* __lsan_default_suppressions() { return "leak:libfontconfig\n"; }
