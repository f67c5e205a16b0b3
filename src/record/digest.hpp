#pragma once
/// SHA-256, as lower-case hex text.

#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <string_view>

namespace wm::record {

/// SHA-256 of some bytes.
///
/// @return  64 lower-case hex digits.
/// @source  FIPS 180-4, section 6.2 (computed by libsodium).
[[nodiscard]] std::string sha256_hex(std::string_view bytes);

/// The same for bytes that come in pieces.
class Sha256 {
 public:
  Sha256();
  ~Sha256();
  Sha256(Sha256&&) noexcept;
  Sha256& operator=(Sha256&&) noexcept;
  Sha256(const Sha256&) = delete;
  Sha256& operator=(const Sha256&) = delete;

  void add(std::span<const std::byte> bytes);
  void add(std::string_view bytes);

  /// @return  64 lower-case hex digits. The object starts afresh.
  [[nodiscard]] std::string finish_hex();

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace wm::record
