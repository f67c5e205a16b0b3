#pragma once
/// The figures behind the colour roles, for the ground they are painted on.

#include <array>
#include <cstdint>
#include <string>

#include "drawing/display_list.hpp"

namespace wm::drawing {

/// What the drawing lies on. `print` is `day` on white, so that no toner is spent on it.
enum class Ground { day, night, print };

struct Colour {
  std::uint8_t red{}, green{}, blue{};
  friend bool operator==(const Colour&, const Colour&) = default;
};

inline constexpr std::array k_all_roles{Role::ink,        Role::second_ink,  Role::paper,
                                        Role::zinc_light, Role::zinc,        Role::zinc_dark,
                                        Role::lacquer,    Role::lacquer_text};

[[nodiscard]] Colour colour(Role role, Ground ground);

/// "ink", "second-ink", ...: the word in class names of SVG.
[[nodiscard]] std::string role_word(Role role);

/// "#1d2224"
[[nodiscard]] std::string hex(Colour colour);

/// Contrast of two colours, 1 to 21, the same for a grey copy as for the coloured one
/// because only luminance enters.
///
///   (L1 + 0.05) / (L2 + 0.05)      L relative luminance, L1 the lighter
///
/// @source WCAG 2.2, definitions of contrast ratio and relative luminance.
[[nodiscard]] double contrast(Colour a, Colour b);

}  // namespace wm::drawing
