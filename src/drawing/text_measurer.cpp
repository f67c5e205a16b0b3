#include "drawing/text_measurer.hpp"

#include <algorithm>

#include "drawing/detail/clean_text.hpp"
#include "drawing/detail/pango_text.hpp"

namespace wm::drawing {
namespace {

constexpr std::string_view k_ellipsis = "…";

constexpr std::size_t k_window = 1500;       // bytes given to pango at once
constexpr std::size_t k_surely_long = 8000;  // bytes that no line of a sheet holds

/// At most `most` bytes, not ending within a character.
std::string_view beginning(std::string_view text, std::size_t most) {
  if (text.size() <= most) return text;
  while (most > 0 && (static_cast<unsigned char>(text[most]) & 0xC0U) == 0x80U) --most;
  return text.substr(0, most);
}

/// Runs of spaces become one, none at the ends.
std::string one_spaced(std::string_view text) {
  std::string out;
  for (char c : text) {
    if (c == ' ' && (out.empty() || out.back() == ' ')) continue;
    out += c;
  }
  while (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

double to_mm(int pango_units) {
  return static_cast<double>(pango_units) / PANGO_SCALE / detail::k_points_per_mm;
}

}  // namespace

struct TextMeasurer::Hidden {
  detail::LayoutPtr layout{detail::make_layout(nullptr)};

  double width(const std::string& clean, double size, Weight weight) const {
    pango_layout_set_width(layout.get(), -1);
    detail::set_text(layout.get(), clean, size, weight);
    int units = 0;
    pango_layout_get_size(layout.get(), &units, nullptr);
    return to_mm(units);
  }

  /// Where the lines of a text begin, and its end.
  std::vector<std::size_t> line_starts(const std::string& clean, double size, Weight weight,
                                       double width_mm) const {
    // Huge widths would overflow pango's integers; a sheet is never that wide.
    const double points = std::clamp(width_mm, 0.0, 5000.0) * detail::k_points_per_mm;
    pango_layout_set_wrap(layout.get(), PANGO_WRAP_WORD_CHAR);
    pango_layout_set_width(layout.get(), static_cast<int>(points * PANGO_SCALE));
    detail::set_text(layout.get(), clean, size, weight);
    std::vector<std::size_t> starts;
    for (GSList* at = pango_layout_get_lines_readonly(layout.get()); at != nullptr; at = at->next)
      starts.push_back(
          static_cast<std::size_t>(static_cast<const PangoLayoutLine*>(at->data)->start_index));
    starts.push_back(clean.size());
    return starts;
  }

  /// Pango's time for one text grows with the square of its lines, so it gets a window at a
  /// time; the last line of a window begins the next one.
  void wrap_paragraph(const std::string& clean, double size, Weight weight, double width_mm,
                      std::vector<std::string>& out) const {
    std::string_view rest = clean;
    std::size_t window = k_window;
    while (!rest.empty()) {
      const std::string part{beginning(rest, window)};
      const auto starts = line_starts(part, size, weight, width_mm);
      const bool all = part.size() == rest.size();
      const std::size_t lines = starts.size() - 1;
      if (!all && lines < 2) {
        window *= 2;
        continue;
      }
      const std::size_t kept = all ? lines : lines - 1;
      for (std::size_t i = 0; i < kept; ++i)
        out.push_back(one_spaced(part.substr(starts[i], starts[i + 1] - starts[i])));
      rest.remove_prefix(starts[kept]);
    }
  }
};

TextMeasurer::TextMeasurer() : hidden_(std::make_unique<Hidden>()) {}
TextMeasurer::~TextMeasurer() = default;
TextMeasurer::TextMeasurer(TextMeasurer&&) noexcept = default;
TextMeasurer& TextMeasurer::operator=(TextMeasurer&&) noexcept = default;

double TextMeasurer::width(std::string_view text, double size, Weight weight) const {
  return hidden_->width(detail::clean_text(text), size, weight);
}

std::vector<std::string> TextMeasurer::wrap(std::string_view text, double size, Weight weight,
                                            double width) const {
  std::vector<std::string> out;
  const std::string clean = detail::clean_text(text);
  std::string_view rest = clean;
  while (!rest.empty()) {
    const std::size_t end = rest.find('\n');
    const std::string paragraph = one_spaced(rest.substr(0, end));
    if (!paragraph.empty())
      hidden_->wrap_paragraph(paragraph, size, weight, width, out);
    else if (!out.empty())
      out.emplace_back();
    if (end == std::string_view::npos) break;
    rest.remove_prefix(end + 1);
  }
  while (!out.empty() && out.back().empty()) out.pop_back();
  return out;
}

std::string TextMeasurer::shortened(std::string_view text, double size, Weight weight,
                                    double width) const {
  std::string clean = detail::clean_text(text);
  std::ranges::replace(clean, '\n', ' ');
  clean = one_spaced(clean);
  const bool long_text = clean.size() > k_surely_long;
  if (long_text) clean = beginning(clean, k_surely_long);
  if (!long_text && hidden_->width(clean, size, weight) <= width) return clean;
  const double room = width - hidden_->width(std::string{k_ellipsis}, size, weight);
  std::vector<std::string> lines;
  hidden_->wrap_paragraph(clean, size, weight, std::max(room, 0.0), lines);
  return (lines.empty() ? std::string{} : lines.front()) + std::string{k_ellipsis};
}

}  // namespace wm::drawing
