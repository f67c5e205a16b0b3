#pragma once
/// The command line: every face of it, and the exit status of design.md.

namespace wm::cli {

/// 0 done, 1 a finding, 2 bad input, 3 a fault of the machine.
int run(int argc, char** argv);

}  // namespace wm::cli
