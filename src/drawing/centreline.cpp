#include "drawing/centreline.hpp"

#include <fmt/format.h>

#include "drawing/detail/hose_parts.hpp"
#include "quantity/as_typed.hpp"

namespace wm::drawing {
namespace {

/// Programs of others take inches or millimetres; a hundredth of a thousandth of an inch and a
/// ten-thousandth of a millimetre are far below what a hose keeps.
struct FileUnit {
  std::string_view symbol;
  double metres;
  int decimals;
  int insert_code;  // $INSUNITS: 1 inches, 4 millimetres (from memory)
};

FileUnit unit_of(const hose::HoseSheetInput& in, quantity::UnitSet units) {
  const auto& typed = quantity::typed_unit(in.outside_diameter, units);
  if (typed.symbol == "in" || typed.symbol == "ft") return {"in", 0.0254, 5, 1};
  return {"mm", 0.001, 4, 4};
}

std::string figure(double metres, const FileUnit& unit) {
  auto out = fmt::format("{:.{}f}", metres / unit.metres, unit.decimals);
  // A negative zero is no figure.
  if (out.starts_with('-') && out.find_first_of("123456789") == std::string::npos) out.erase(0, 1);
  return out;
}

/// Pairs of group code and value, a line each.
class Pairs {
 public:
  explicit Pairs(const FileUnit& unit) : unit_(unit) {}
  void add(int code, std::string_view value) { text_ += fmt::format("{:>3}\n{}\n", code, value); }
  void point(int first, const detail::Vector& at) {
    add(first, figure(at.x(), unit_));
    add(first + 10, figure(at.y(), unit_));
    add(first + 20, figure(at.z(), unit_));
  }
  void layers(std::initializer_list<std::string_view> names) {
    add(0, "SECTION");
    add(2, "TABLES");
    add(0, "TABLE");
    add(2, "LAYER");
    add(70, fmt::format("{}", names.size()));
    for (const auto name : names) {
      add(0, "LAYER");
      add(2, name);
      add(70, "0");
      add(62, "7");  // ink on paper
      add(6, "CONTINUOUS");
    }
    add(0, "ENDTAB");
    add(0, "ENDSEC");
  }
  void polyline(std::string_view layer, const std::vector<detail::Vector>& points) {
    add(0, "POLYLINE");
    add(8, layer);
    add(66, "1");
    point(10, {0, 0, 0});
    add(70, "8");  // a polyline in space
    for (const auto& p : points) {
      add(0, "VERTEX");
      add(8, layer);
      point(10, p);
      add(70, "32");
    }
    add(0, "SEQEND");
    add(8, layer);
  }
  void line(std::string_view layer, const detail::Vector& from, const detail::Vector& to) {
    add(0, "LINE");
    add(8, layer);
    point(10, from);
    point(11, to);
  }
  [[nodiscard]] std::string take() { return std::move(text_); }

 private:
  FileUnit unit_;
  std::string text_;
};

}  // namespace

std::string centreline_csv(const hose::HoseSheetInput& in, const hose::HoseSheetAnswer& answer,
                           quantity::UnitSet units) {
  const auto unit = unit_of(in, units);
  std::string out = fmt::format("station_{0},x_{0},y_{0},z_{0},radius_{0}\r\n", unit.symbol);
  for (const auto& p : answer.shape.points) {
    out += fmt::format("{},{},{},{},{}\r\n", figure(p.station.si, unit), figure(p.x.si, unit),
                       figure(p.y.si, unit), figure(p.z.si, unit),
                       p.radius ? figure(p.radius->si, unit) : std::string{});
  }
  return out;
}

std::string centreline_dxf(const hose::HoseSheetInput& in, const hose::HoseSheetAnswer& answer,
                           quantity::UnitSet units) {
  const auto unit = unit_of(in, units);
  Pairs out(unit);
  out.add(999, fmt::format("centreline of a hose; unit: {}; x aft, y right, z up", unit.symbol));
  out.add(0, "SECTION");
  out.add(2, "HEADER");
  out.add(9, "$INSUNITS");
  out.add(70, fmt::format("{}", unit.insert_code));
  out.add(0, "ENDSEC");
  out.layers({"HOSE", "FITTINGS"});
  out.add(0, "SECTION");
  out.add(2, "ENTITIES");
  out.polyline("HOSE", detail::centreline_of(answer.shape.points));
  for (const auto* end : {&in.near_end, &in.far_end}) {
    const auto axis = detail::fitting(*end, in.outside_diameter.value.si).axis;
    for (std::size_t i = 0; i + 1 < axis.size(); ++i) out.line("FITTINGS", axis[i], axis[i + 1]);
  }
  out.add(0, "ENDSEC");
  out.add(0, "EOF");
  return out.take();
}

}  // namespace wm::drawing
