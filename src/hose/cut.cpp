#include "hose/cut.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "hose/detail/problem.hpp"
#include "hose/order.hpp"
#include "quantity/as_typed.hpp"

namespace wm::hose {
namespace {

using detail::problem;
using quantity::Length;
using quantity::pencil;

constexpr double k_degree = std::numbers::pi / 180.0;

/// One assembly: its lengths, its sleeve, its card.
class Assembly {
 public:
  Assembly(const AssemblyToMake& make, const HoseCutInput& all, const describe::Context& context,
           std::size_t index)
      : make_(make), all_(all), context_(context), at_(fmt::format("assemblies/{}/", index)) {}

  std::optional<AssemblyCut> run(Problems& problems) {
    ask();
    if (const auto overall = overall_length()) lengths(*overall);
    if (!problems_.empty()) {
      problems.insert(problems.end(), problems_.begin(), problems_.end());
      return std::nullopt;
    }
    if (make_.sleeve) sleeve();
    warn();
    out_.name = make_.name;
    out_.card = work_card(make_, all_, out_, context_);
    return std::move(out_);
  }

 private:
  void missing(const std::string& path, std::string what, std::string expected,
               std::string example = {}) {
    problems_.push_back(problem(at_ + path, Kind::missing, std::move(what), std::move(expected),
                                std::move(example)));
  }

  void ask() {
    if (make_.making == Making::not_said) {
      missing("making", "the order of the work depends on how the ends are put on",
              "elastomer-screwed or ptfe-sleeved; a crimped assembly is ordered (hose-order)",
              "elastomer-screwed");
    }
    if (make_.size.empty()) missing("size", "no size", "its dash number", "-8");
    if (make_.count < 1 || make_.count > 100) {
      problems_.push_back(problem(at_ + "count", Kind::out_of_bounds,
                                  fmt::format("{} of them", make_.count), "1 to 100"));
    }
    if (is_elbow(make_.near_end.form) && is_elbow(make_.far_end.form) && !make_.clocking) {
      missing("clocking", "two elbows, and the angle between them is not known",
              "the angle, near elbow at six o'clock, counter-clockwise to the far elbow", "90 deg");
    }
    if (!make_.sleeve) return;
    for (const auto& [end, name] :
         {std::pair{&make_.near_end, "near_end"}, std::pair{&make_.far_end, "far_end"}}) {
      if (!end->socket) {
        missing(fmt::format("{}/socket", name), "the sleeve covers the socket, of unknown length",
                "visible length of the socket: measure it, or the maker's", "1.1 in");
      }
    }
    if (!make_.bends.empty() && !make_.sleeve->outside) {
      missing("sleeve/outside", "in a bend the outside of the sleeve is longer",
              "outside diameter of the sleeve: measure it", "1.12 in");
    }
  }

  std::optional<EnteredLength> overall_length() {
    if (make_.overall && make_.flexible) {
      problems_.push_back(problem(at_ + "flexible", Kind::conflict,
                                  "overall and flexible length are both given", "one of the two"));
      return std::nullopt;
    }
    if (make_.overall) return make_.overall;
    if (!make_.flexible) {
      missing("overall", "there is no length to start from",
              "the overall length, or the hose that can bend (flexible) with the rigid length of "
              "each end",
              "16.50 in");
      return std::nullopt;
    }
    if (!make_.near_end.rigid || !make_.far_end.rigid) {
      missing(make_.near_end.rigid ? "far_end/rigid" : "near_end/rigid",
              "a flexible length alone does not say how long the assembly is",
              "the length of the end that does not bend, from its seat", "1.5 in");
      return std::nullopt;
    }
    const auto& unit = quantity::typed_unit(*make_.flexible, context_.units);
    const Length sum =
        make_.flexible->value + make_.near_end.rigid->value + make_.far_end.rigid->value;
    out_.working.push_back(
        fmt::format("overall = {} + {} + {} = {}", pencil(make_.flexible->value.si, unit),
                    pencil(make_.near_end.rigid->value.si, unit),
                    pencil(make_.far_end.rigid->value.si, unit), pencil(sum.si, unit)));
    // The text only names the unit, so that the answer speaks the one that was typed.
    return EnteredLength{sum, 0.001 * unit.factor, pencil(sum.si, unit)};
  }

  static EndFitting plain(const EndToMake& e) { return {e.form, e.rigid, e.cut_off, e.family}; }

  void lengths(const EnteredLength& overall) {
    LengthAllowanceInput in;
    in.overall = overall;
    in.size = make_.size;
    in.near_end = plain(make_.near_end);
    in.far_end = plain(make_.far_end);
    in.pair_form = make_.pair_form;
    auto got = length_allowance(in, context_);
    if (!got) {
      for (Problem p : got.error()) {
        p.path = at_ + p.path;
        problems_.push_back(std::move(p));
      }
      return;
    }
    if (!got->cut_length) {
      for (const auto& [end, name] :
           {std::pair{&make_.near_end, "near_end"}, std::pair{&make_.far_end, "far_end"}}) {
        if (end->cut_off || !end->family.empty()) continue;
        missing(fmt::format("{}/cut_off", name), "without the cut-off there is no cut length",
                "its cut-off: measured, the maker's, or a row of the table hose-cut-off",
                "0.94 in");
      }
      return;
    }
    out_.overall = got->overall;
    out_.cut_length = *got->cut_length;
    out_.measured = std::move(got->measured);
    for (std::string& note : got->notes) {
      if (!note.starts_with("rigid length of an end")) out_.notes.push_back(std::move(note));
    }
    for (std::string& line : got->working) {
      if (line.starts_with("cut length")) out_.working.push_back(std::move(line));
    }
  }

  void sleeve() {
    const auto& unit = quantity::typed_unit(out_.overall, context_.units);
    const auto say = [&](Length l) { return pencil(l.si, unit); };
    double bends = 0.0;
    for (const auto& b : make_.bends) bends += b.value.si;
    const Length outside = make_.sleeve->outside ? make_.sleeve->outside->value : Length{};
    const Length near = make_.near_end.socket->value;
    const Length far = make_.far_end.socket->value;
    const Length past = all_.sleeve_past_socket.value;
    const Length length =
        sleeve_length(out_.cut_length.value, near + far, past, bends, outside, all_.sleeve_extra);
    out_.sleeve_length = EnteredLength{length, 0.01 * unit.factor, {}};
    const std::string bend_term =
        bends > 0 ? fmt::format(" + {} deg x pi/180 x {} / 2 = {}", pencil(bends / k_degree),
                                say(outside), say(outside * (bends / 2.0)))
                  : std::string(" + no bend entered");
    out_.working.push_back(
        fmt::format("sleeve: cut length {} + sockets {} + {} + past them 2 x {}{}",
                    say(out_.cut_length.value), say(near), say(far), say(past), bend_term));
    out_.working.push_back(fmt::format("sleeve length = {} x (1 + {}) = {}",
                                       say(length / (1.0 + all_.sleeve_extra.si)),
                                       pencil(all_.sleeve_extra.si), say(length)));
    out_.notes.push_back(
        "sleeve length: derived (hoses notes section 8); past the socket by a hose shop's page, "
        "secondary; the extra is common practice, no source. It is rather long: trim it on the "
        "finished hose");
    passes("near end", make_.near_end);
    passes("far end", make_.far_end);
  }

  void passes(const char* name, const EndToMake& end) {
    const auto& unit = quantity::typed_unit(out_.overall, context_.units);
    if (!end.widest || !make_.sleeve->inside) {
      out_.sleeve_over_ends.push_back(fmt::format(
          "{}: not known whether it passes through the sleeve: measure {}{}{}", name,
          end.widest ? "" : "its widest across", end.widest || make_.sleeve->inside ? "" : " and ",
          make_.sleeve->inside ? "" : "the sleeve's inside diameter"));
      return;
    }
    const bool through = end.widest->value <= make_.sleeve->inside->value;
    out_.sleeve_over_ends.push_back(fmt::format("{}: {} through the sleeve ({} across, {} inside)",
                                                name, through ? "passes" : "does not pass",
                                                pencil(end.widest->value.si, unit),
                                                pencil(make_.sleeve->inside->value.si, unit)));
  }

  void warn() {
    if (all_.ahead_of_firewall && !make_.sleeve && make_.making == Making::elastomer_screwed) {
      out_.notes.push_back(
          "elastomer hose ahead of the firewall without a fire sleeve: single-braid hose needs one "
          "in a fire zone (MIL-DTL-8794F 6.1)");
    }
  }

  const AssemblyToMake& make_;
  const HoseCutInput& all_;
  const describe::Context& context_;
  std::string at_;
  Problems problems_;
  AssemblyCut out_;
};

/// What is to be fetched, each thing once.
class Parts {
 public:
  void counted(const std::string& what, std::int64_t count, const std::string& for_what) {
    PartNeeded& p = line(what, for_what);
    p.count = p.count.value_or(0) + count;
  }
  void by_length(const std::string& what, Length length, const EnteredLength& like,
                 const std::string& for_what, const describe::Context& context) {
    PartNeeded& p = line(what, for_what);
    const auto& unit = quantity::typed_unit(like, context.units);
    const Length before = p.length ? p.length->value : Length{};
    p.length = EnteredLength{before + length, 0.01 * unit.factor, {}};
  }
  std::vector<PartNeeded> take() { return std::move(parts_); }

 private:
  PartNeeded& line(const std::string& what, const std::string& for_what) {
    auto at = std::find_if(parts_.begin(), parts_.end(),
                           [&](const PartNeeded& p) { return p.what == what; });
    if (at == parts_.end()) at = parts_.insert(parts_.end(), PartNeeded{what, {}, {}, {}});
    if (std::find(at->used_for.begin(), at->used_for.end(), for_what) == at->used_for.end()) {
      at->used_for.push_back(for_what);
    }
    return *at;
  }
  std::vector<PartNeeded> parts_;
};

std::string fitting_name(const AssemblyToMake& a, const EndToMake& e) {
  if (!e.fitting.empty()) return e.fitting;
  const std::string row = e.family.empty() ? "" : e.family + ", ";
  return fmt::format("end fitting {}, {}{}", a.size, row, words(e.form));
}

std::vector<PartNeeded> parts_of(const HoseCutInput& in, const std::vector<AssemblyCut>& cuts,
                                 const describe::Context& context) {
  Parts parts;
  for (std::size_t i = 0; i < cuts.size(); ++i) {
    const AssemblyToMake& a = in.assemblies[i];
    const auto n = static_cast<double>(a.count);
    parts.by_length(fmt::format("hose {}{}{}", a.family, a.family.empty() ? "" : " ", a.size),
                    cuts[i].cut_length.value * n, cuts[i].overall, a.name, context);
  }
  for (const AssemblyToMake& a : in.assemblies) {
    parts.counted(fitting_name(a, a.near_end), a.count, a.name);
    parts.counted(fitting_name(a, a.far_end), a.count, a.name);
  }
  for (std::size_t i = 0; i < cuts.size(); ++i) {
    const AssemblyToMake& a = in.assemblies[i];
    if (!a.sleeve || !cuts[i].sleeve_length) continue;
    const std::string name =
        a.sleeve->name.empty() ? fmt::format("fire sleeve for {}", a.size) : a.sleeve->name;
    parts.by_length(name, cuts[i].sleeve_length->value * static_cast<double>(a.count),
                    cuts[i].overall, a.name, context);
    parts.counted(fmt::format("bands for {}", name), 2 * a.count, a.name);
    parts.counted("sleeve ends to seal (dip or wrap)", 2 * a.count, a.name);
  }
  for (const AssemblyToMake& a : in.assemblies) {
    parts.counted("tag bands", a.count, a.name);
    parts.counted(fmt::format("caps {}", a.size), 2 * a.count, a.name);
  }
  return parts.take();
}

}  // namespace

quantity::Length sleeve_length(quantity::Length cut, quantity::Length sockets,
                               quantity::Length past_socket, double bends, quantity::Length outside,
                               quantity::Fraction extra) {
  return (cut + sockets + past_socket * 2.0 + outside * (bends / 2.0)) * (1.0 + extra.si);
}

Checked<HoseCutAnswer> hose_cut(const HoseCutInput& input, const describe::Context& context) {
  Problems problems;
  if (input.assemblies.empty()) {
    problems.push_back(
        problem("assemblies", Kind::missing, "there is nothing to make", "at least one hose"));
  }
  HoseCutAnswer out;
  for (std::size_t i = 0; i < input.assemblies.size(); ++i) {
    auto one = Assembly(input.assemblies[i], input, context, i).run(problems);
    if (one) out.assemblies.push_back(std::move(*one));
  }
  if (!problems.empty()) return Fail(std::move(problems));
  out.parts = parts_of(input, out.assemblies, context);
  for (std::size_t i = 0; i < out.assemblies.size(); ++i) {
    const AssemblyToMake& a = input.assemblies[i];
    out.pieces.push_back({a.name, a.family, a.size, out.assemblies[i].cut_length, a.count});
  }
  out.notes.push_back(
      "hose and sleeve lengths are net: kerf, trim and what is left over come with the cut plan");
  out.notes.push_back(
      "count the parts against the list before the first cut; do not mix makers of sockets and "
      "nipples");
  return out;
}

}  // namespace wm::hose
