#pragma once
/// drawing: what goes on paper and on screen, as a plain list of shapes and texts.
///
/// A page is a value: shapes and texts in millimetres from its upper left corner, y
/// downwards, painted in order. Nothing here knows SVG, PDF or PNG; the emitters
/// (svg.hpp, pdf.hpp, png.hpp) do. Texts may hold anything a person or a file gave:
/// each emitter makes them harmless (detail/clean_text.hpp).

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "outcome/result.hpp"

namespace wm::drawing {

/// What a colour means. The figures behind each role are in palette.hpp.
enum class Role {
  ink,          ///< lines and text
  second_ink,   ///< what stands behind: units, sources, dimension lines
  paper,        ///< the ground itself
  zinc_light,   ///< lightest sheet
  zinc,         ///< sheet: upper plate, table heads
  zinc_dark,    ///< darker sheet: lower plate, accepted band
  lacquer,      ///< the one accent: this is the thing that moved
  lacquer_text  ///< the accent for text and thin lines
};

enum class Weight { normal, bold };
enum class Anchor { start, middle, end };

/// A place on the page, mm.
struct Point {
  double x{};
  double y{};
  friend bool operator==(const Point&, const Point&) = default;
};

/// How a line is drawn; width 0 means not at all.
struct Pen {
  Role role{Role::ink};
  double width{};     ///< mm
  double dash_on{};   ///< mm; 0 for a whole line
  double dash_off{};  ///< mm
  friend bool operator==(const Pen&, const Pen&) = default;
};

struct Line {
  Point from;
  Point to;
  Pen pen{Role::ink, 0.2};
  friend bool operator==(const Line&, const Line&) = default;
};

/// Straight pieces from point to point.
struct Path {
  std::vector<Point> points;
  bool closed{};
  std::optional<Role> fill;
  Pen pen;
  friend bool operator==(const Path&, const Path&) = default;
};

struct Rect {
  Point at;  ///< upper left corner
  double width{};
  double height{};
  double corner{};  ///< radius, mm
  std::optional<Role> fill;
  Pen pen;
  friend bool operator==(const Rect&, const Rect&) = default;
};

struct Circle {
  Point centre;
  double radius{};
  std::optional<Role> fill;
  Pen pen;
  friend bool operator==(const Circle&, const Circle&) = default;
};

/// One line of text; breaking into lines is done before (text_measurer.hpp).
struct Text {
  Point at;  ///< on the baseline, at the anchor
  std::string text;
  double size{3.2};  ///< mm, the em of the font
  Weight weight{Weight::normal};
  Anchor anchor{Anchor::start};
  Role role{Role::ink};
  friend bool operator==(const Text&, const Text&) = default;
};

/// A square code with its quiet zone (four modules) inside `side`.
struct QrCode {
  Point at;  ///< upper left corner of the quiet zone
  double side{};
  std::string text;
  friend bool operator==(const QrCode&, const QrCode&) = default;
};

using Item = std::variant<Line, Path, Rect, Circle, Text, QrCode>;

/// One sheet, or one mark or plot cut to its size.
struct Page {
  double width{};   ///< mm
  double height{};  ///< mm
  std::vector<Item> items;
  friend bool operator==(const Page&, const Page&) = default;
};

/// A mark or plot with the words that a screen reader speaks in its place.
struct Fragment {
  Page page;
  std::string title;
  std::string description;
  friend bool operator==(const Fragment&, const Fragment&) = default;
};

/// The same item, displaced.
[[nodiscard]] Item moved(Item item, double dx, double dy);

/// Put a mark or plot on a page with its upper left corner at `at`.
void place(Page& page, const Page& fragment, Point at);

/// Is the page fit to be emitted?
///
/// @return `Kind::out_of_bounds` for a page that is not between 1 mm and 5 m, for a
///         figure that is not finite, or for a negative size; the path names the item.
[[nodiscard]] Result<Done> check(const Page& page);

}  // namespace wm::drawing
