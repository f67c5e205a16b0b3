#pragma once
/// QR codes as squares, dark or light.

#include <cstddef>
#include <string_view>
#include <vector>

#include "outcome/result.hpp"

namespace wm::drawing {

struct QrSquares {
  int side{};              ///< squares along one side, without the quiet zone
  std::vector<bool> dark;  ///< row by row from the top

  /// @pre x and y from 0 to side - 1
  [[nodiscard]] bool is_dark(int x, int y) const {
    return dark[static_cast<std::size_t>(y) * static_cast<std::size_t>(side) +
                static_cast<std::size_t>(x)];
  }
};

inline constexpr int k_quiet_zone = 4;  ///< light squares on every side, ISO/IEC 18004

/// @param text  Bytes to encode, at error correction level M.
/// @return      `Kind::out_of_bounds` when empty or beyond what one code holds (2331 bytes).
[[nodiscard]] Result<QrSquares> qr_squares(std::string_view text);

}  // namespace wm::drawing
