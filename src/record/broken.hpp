#pragma once
/// What this room throws when the machine, not the person, has failed.

#include <stdexcept>
#include <string>

namespace wm::record {

/// Which part of the machine gave way.
enum class Fault {
  disk_full,     ///< no room left for the record or its safety file
  input_output,  ///< the disk could not read, write or confirm
  memory,        ///< no memory left
  locked,        ///< another program held the binder too long (only where no Result can say so)
  damaged,       ///< stored bytes do not agree (only where no Result can say so)
  other          ///< anything else that SQLite reports; the text says what
};

/// Something that no caller can repair by trying another input.
///
/// Whatever was acknowledged before it is still there. Whatever was being written when it was
/// thrown is *not acknowledged*: it may or may not be in the record. Send the same event with the
/// same id again once the machine is well; that is harmless in either case.
class Broken : public std::runtime_error {
 public:
  Broken(Fault fault, const std::string& what, std::string do_next)
      : std::runtime_error(what), fault_(fault), do_next_(std::move(do_next)) {}

  [[nodiscard]] Fault fault() const { return fault_; }
  /// What a person can do about it, in plain words.
  [[nodiscard]] const std::string& do_next() const { return do_next_; }

 private:
  Fault fault_;
  std::string do_next_;
};

}  // namespace wm::record
