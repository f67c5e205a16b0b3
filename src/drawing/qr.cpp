#include "drawing/qr.hpp"

#include <memory>

#include <fmt/format.h>
#include <qrencode.h>

namespace wm::drawing {

Result<QrSquares> qr_squares(std::string_view text) {
  // Largest symbol (version 40) at level M in byte mode.
  // source: qrencode 4.1.1 refuses more; ISO/IEC 18004 table 7, from memory, unconfirmed.
  constexpr std::size_t k_most_bytes = 2331;
  if (text.empty() || text.size() > k_most_bytes)
    return Fail(Kind::out_of_bounds, fmt::format("{} bytes for one QR code", text.size()),
                fmt::format("1 to {} bytes", k_most_bytes));
  const std::unique_ptr<QRcode, decltype(&QRcode_free)> code{
      QRcode_encodeData(static_cast<int>(text.size()),
                        reinterpret_cast<const unsigned char*>(text.data()), 0, QR_ECLEVEL_M),
      &QRcode_free};
  if (!code)
    return Fail(Kind::out_of_bounds, fmt::format("{} bytes do not fit one QR code", text.size()),
                fmt::format("1 to {} bytes", k_most_bytes));
  QrSquares out{code->width, {}};
  const auto count = static_cast<std::size_t>(code->width) * static_cast<std::size_t>(code->width);
  out.dark.reserve(count);
  for (std::size_t i = 0; i < count; ++i) out.dark.push_back((code->data[i] & 1U) != 0);
  return out;
}

}  // namespace wm::drawing
