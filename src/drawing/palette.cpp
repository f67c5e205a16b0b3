#include "drawing/palette.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace wm::drawing {
namespace {

Colour by_day(Role role) {
  switch (role) {
    case Role::ink:
      return {0x1d, 0x22, 0x24};
    case Role::second_ink:
      return {0x50, 0x58, 0x5c};
    case Role::paper:
      return {0xee, 0xf0, 0xf0};
    case Role::zinc_light:
      return {0xee, 0xf0, 0xf0};
    case Role::zinc:
      return {0xdf, 0xe2, 0xe3};
    case Role::zinc_dark:
      return {0xcf, 0xd3, 0xd4};
    case Role::lacquer:
      return {0xe2, 0x72, 0x2e};
    case Role::lacquer_text:
      return {0xa8, 0x41, 0x0f};
  }
  return {};
}

Colour by_night(Role role) {
  switch (role) {
    case Role::ink:
      return {0xe8, 0xeb, 0xec};
    case Role::second_ink:
      return {0xb0, 0xb8, 0xbb};
    case Role::paper:
      return {0x15, 0x19, 0x1b};
    case Role::zinc_light:
      return {0x1d, 0x22, 0x24};
    case Role::zinc:
      return {0x2a, 0x30, 0x33};
    case Role::zinc_dark:
      return {0x36, 0x3d, 0x40};
    case Role::lacquer:
      return {0xe2, 0x72, 0x2e};
    case Role::lacquer_text:
      return {0xf0, 0x94, 0x58};
  }
  return {};
}

double linear(std::uint8_t channel) {
  const double c = channel / 255.0;
  return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

double luminance(Colour c) {
  return 0.2126 * linear(c.red) + 0.7152 * linear(c.green) + 0.0722 * linear(c.blue);
}

}  // namespace

Colour colour(Role role, Ground ground) {
  if (ground == Ground::night) return by_night(role);
  if (ground == Ground::print && role == Role::paper) return {0xff, 0xff, 0xff};
  return by_day(role);
}

std::string role_word(Role role) {
  switch (role) {
    case Role::ink:
      return "ink";
    case Role::second_ink:
      return "second-ink";
    case Role::paper:
      return "paper";
    case Role::zinc_light:
      return "zinc-light";
    case Role::zinc:
      return "zinc";
    case Role::zinc_dark:
      return "zinc-dark";
    case Role::lacquer:
      return "lacquer";
    case Role::lacquer_text:
      return "lacquer-text";
  }
  return "ink";
}

std::string hex(Colour c) { return fmt::format("#{:02x}{:02x}{:02x}", c.red, c.green, c.blue); }

double contrast(Colour a, Colour b) {
  const double first = luminance(a);
  const double second = luminance(b);
  return (std::max(first, second) + 0.05) / (std::min(first, second) + 0.05);
}

}  // namespace wm::drawing
