#include <cstdio>
#include <exception>
#include <new>

#include "cli/run.hpp"
#include "record/broken.hpp"

// One of the two places where an exception ends: what no caller can repair becomes words and
// exit status 3, never a stack trace.
int main(int argc, char** argv) {
  try {
    return wm::cli::run(argc, argv);
  } catch (const wm::record::Broken& broken) {
    (void)std::fprintf(stderr, "%s\n%s\n", broken.what(), broken.do_next().c_str());
  } catch (const std::bad_alloc&) {
    (void)std::fprintf(stderr, "There is no memory left. Close other programs and try again.\n");
  } catch (const std::exception& problem) {
    (void)std::fprintf(stderr, "The machine failed: %s\n", problem.what());
  }
  return 3;
}
