#include "mechanics/torque.hpp"

#include <fmt/core.h>

#include <cmath>
#include <numbers>

#include "quantity/as_typed.hpp"

namespace wm::mechanics {
namespace {

using quantity::pencil;
using quantity::Torque;
using EnteredTorque = quantity::Entered<Torque>;
using MaybeTorque = std::optional<EnteredTorque>;

constexpr double k_pi = std::numbers::pi;
/// Nearer to the grip than this share of the lever the setting means nothing. Our choice.
constexpr double k_least_share = 0.2;
/// Foot-pounds set as inch-pounds, or the other way round.
constexpr double k_inches_a_foot = 12.0;

Problem problem(std::string path, Kind kind, std::string what, std::string expected = {}) {
  Problem p;
  p.kind = kind;
  p.path = std::move(path);
  p.what = std::move(what);
  p.expected = std::move(expected);
  return p;
}

/// The torque asked for before drag: one figure, or a band with its middle.
struct Wanted {
  Torque middle{};
  std::optional<Torque> lowest;
  std::optional<Torque> highest;
  std::optional<Torque> most;
  double resolution_si{};
  const quantity::Unit* unit{};
  std::string source;
};

void check_fields(const TorqueSettingInput& in, Problems& problems) {
  const bool band = in.lowest || in.highest;
  if (in.wanted && band) {
    problems.push_back(problem("wanted", Kind::conflict, "one torque and a band are both given",
                               "either \"wanted\", or \"lowest\" and \"highest\""));
  }
  if (in.lowest.has_value() != in.highest.has_value()) {
    problems.push_back(problem(in.lowest ? "highest" : "lowest", Kind::missing,
                               "half of the band is missing", "both ends of the band"));
  }
  if (in.lowest && in.highest && in.lowest->value > in.highest->value) {
    problems.push_back(problem("lowest", Kind::conflict, "the band is upside down",
                               "the lower torque as \"lowest\""));
  }
  if (!in.wanted && !band && in.table.empty()) {
    problems.push_back(problem("wanted", Kind::missing, "no torque is given",
                               "a torque, a band from the maker, or a table with its size"));
  }
  if (in.extension && !in.lever) {
    problems.push_back(problem("lever", Kind::missing, "the length of the wrench is not given",
                               "from the middle of the grip to the drive"));
  }
}

Wanted wanted_of(const TorqueSettingInput& in, const std::optional<TorqueBand>& table,
                 quantity::UnitSet set) {
  Wanted w;
  if (in.wanted) {
    w.middle = in.wanted->value;
    w.resolution_si = in.wanted->resolution_si;
    w.unit = &quantity::typed_unit(*in.wanted, set);
  } else if (in.lowest) {
    w.lowest = in.lowest->value;
    w.highest = in.highest->value;
    w.resolution_si = in.lowest->resolution_si;
    w.unit = &quantity::typed_unit(*in.lowest, set);
  } else {
    w.lowest = table->lowest;
    w.highest = table->highest;
    w.most = table->most;
    w.resolution_si = quantity::inch_pounds(1).si;
    w.unit = &quantity::default_unit(quantity::KindOf::torque, set);
  }
  if (w.lowest) w.middle = (*w.lowest + *w.highest) / 2.0;
  const bool typed = in.wanted || in.lowest;
  w.source = typed ? (in.source.empty() ? "entered by you" : "entered by you: " + in.source)
                   : table->in_words;
  return w;
}

/// A torque typed in beside a table row: the usual slip is inches for feet.
void compare_with_table(const Wanted& wanted, const TorqueBand& band,
                        std::vector<std::string>& notes) {
  const auto inside = [&](double si) { return si >= band.lowest.si && si <= band.highest.si; };
  if (inside(wanted.middle.si)) return;
  if (inside(wanted.middle.si / k_inches_a_foot) || inside(wanted.middle.si * k_inches_a_foot)) {
    notes.push_back(
        fmt::format("look at the unit: {} is twelve times off {}; inch-pounds and foot-pounds are "
                    "easily mixed up",
                    pencil(wanted.middle.si, *wanted.unit), band.in_words));
    return;
  }
  notes.push_back(fmt::format("{} lies outside {}; the maker's torque goes before any table",
                              pencil(wanted.middle.si, *wanted.unit), band.in_words));
}

void add_notes(const TorqueSettingInput& in, const Wanted& wanted, Torque drag, Torque setting,
               std::vector<std::string>& notes) {
  if (!in.drag) {
    notes.push_back(
        "no friction drag entered: for a self-locking nut measure it just before the nut seats "
        "and add it");
  }
  if (in.castle_nut) {
    std::string note =
        "castle nut: start lining up the hole at the lowest torque plus drag; never past the most "
        "plus drag; if no slot lines up, change the washer or the nut";
    if (wanted.most) note += "; most here " + pencil((*wanted.most + drag).si, *wanted.unit);
    notes.push_back(std::move(note));
  }
  if (in.extension && in.angle &&
      std::abs(in.angle->value.si - k_pi / 2.0) < quantity::degrees(0.5).si) {
    notes.push_back("extension at 90 degrees: no correction, the setting is the torque at the nut");
  }
  if (in.wrench_from && setting < in.wrench_from->value) {
    notes.push_back(fmt::format("{} lies below the wrench's scale, which starts at {}",
                                pencil(setting.si, *wanted.unit),
                                pencil(in.wrench_from->value.si, *wanted.unit)));
  }
  if (in.wrench_to && setting > in.wrench_to->value) {
    notes.push_back(fmt::format("{} lies above the wrench's scale, which ends at {}",
                                pencil(setting.si, *wanted.unit),
                                pencil(in.wrench_to->value.si, *wanted.unit)));
  }
}

double angle_of(const TorqueSettingInput& in) {
  const double typed = in.angle ? in.angle->value.si : 0.0;
  return in.shortens ? k_pi - typed : typed;
}

void show_extension(const TorqueSettingInput& in, double factor, const Wanted& wanted, Torque nut,
                    std::vector<std::string>& working) {
  const auto& unit = quantity::typed_unit(*in.lever, quantity::UnitSet::us_customary);
  const double angle = angle_of(in);
  const double part = in.extension->value.si * std::cos(angle);
  if (in.angle && in.angle->value.si != 0.0) {
    working.push_back(fmt::format("extension along the wrench = {} x cos {} deg = {}",
                                  pencil(in.extension->value.si, unit),
                                  pencil(angle * 180.0 / k_pi), pencil(part, unit)));
  }
  working.push_back(fmt::format("setting = {} x {} / ({} {} {}) = {}", pencil(nut.si, *wanted.unit),
                                pencil(in.lever->value.si, unit), pencil(in.lever->value.si, unit),
                                part < 0 ? "-" : "+", pencil(std::abs(part), unit),
                                pencil(nut.si * factor, *wanted.unit)));
}

}  // namespace

Result<double> extension_factor(quantity::Length lever, quantity::Length extension,
                                quantity::Angle angle) {
  const double effective = lever.si + extension.si * std::cos(angle.si);
  if (!(lever.si > 0.0) || effective < k_least_share * lever.si) {
    return Fail(Kind::not_applicable,
                "the extension brings the nut so near to the grip that no setting can be trusted",
                "a nut at least a fifth of the wrench's length away from the grip");
  }
  return lever.si / effective;
}

Checked<TorqueSettingAnswer> torque_setting(const TorqueSettingInput& input,
                                            const describe::Context& context) {
  Problems problems;
  check_fields(input, problems);
  std::optional<TorqueBand> table;
  if (!input.table.empty()) {
    auto band = torque_band(context, input.table, input.size, input.which);
    if (band) {
      table = std::move(*band);
    } else {
      problems.push_back(band.error());
    }
  }
  double factor = 1.0;
  if (input.extension && input.lever) {
    auto found = extension_factor(input.lever->value, input.extension->value,
                                  quantity::radians(angle_of(input)));
    if (found) {
      factor = *found;
    } else {
      Problem p = found.error();
      p.path = "extension";
      problems.push_back(std::move(p));
    }
  }
  if (!problems.empty()) return Fail(std::move(problems));

  const Wanted wanted = wanted_of(input, table, context.units);
  const Torque drag = input.drag ? input.drag->value : Torque{};
  const Torque nut = wanted.middle + drag;
  TorqueSettingAnswer answer;
  answer.torque_source = wanted.source;
  const auto computed = [&](Torque t) { return EnteredTorque{t, wanted.resolution_si / 10.0, {}}; };
  answer.at_the_nut = computed(nut);
  answer.setting = computed(nut * factor);
  if (wanted.lowest) {
    answer.setting_lowest = computed((*wanted.lowest + drag) * factor);
    answer.setting_highest = computed((*wanted.highest + drag) * factor);
    answer.working.push_back(fmt::format(
        "middle of {} to {} = {}", pencil(wanted.lowest->si, *wanted.unit),
        pencil(wanted.highest->si, *wanted.unit), pencil(wanted.middle.si, *wanted.unit)));
  }
  if (input.drag) {
    answer.working.push_back(
        fmt::format("at the nut = {} wanted + {} drag = {}", pencil(wanted.middle.si, *wanted.unit),
                    pencil(drag.si, *wanted.unit), pencil(nut.si, *wanted.unit)));
  }
  if (input.extension) {
    show_extension(input, factor, wanted, nut, answer.working);
  } else {
    answer.working.push_back("no extension: setting = torque at the nut = " +
                             pencil(nut.si, *wanted.unit));
  }
  answer.working.push_back("torque from: " + wanted.source);
  if (table && (input.wanted || input.lowest)) {
    compare_with_table(wanted, *table, answer.notes);
  }
  add_notes(input, wanted, drag, answer.setting.value, answer.notes);
  return answer;
}

}  // namespace wm::mechanics
