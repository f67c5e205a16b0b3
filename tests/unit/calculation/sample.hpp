#pragma once
/// One struct with every shape, and a calculation on it: what the faces are tried out on.

#include "describe/catalogue.hpp"
#include "describe/fields.hpp"

namespace wm::sample {

using describe::AnyQuantity;
using quantity::Date;
using quantity::Entered;
using quantity::Length;
using quantity::Measured;
using quantity::Resistance;

enum class Grade { looked_at, adjusted, renewed };
inline std::string_view describe(describe::Choices<Grade>& c) {
  c.has(Grade::looked_at, "looked-at", "looked at")
      .has(Grade::adjusted, "adjusted", "adjusted")
      .has(Grade::renewed, "renewed", "renewed");
  return "grade";
}

struct Lead {
  std::string name;
  Entered<Length> length;
  Measured<Resistance> reading;
  std::optional<Length> slack;
  Grade grade{Grade::looked_at};
  std::optional<std::string> note;
};
inline std::string_view describe(describe::Fields<Lead>& f) {
  f.has<&Lead::name>("name", "Which lead").needed("3 top").unique().at_most(20);
  f.has<&Lead::length>("length", "From end to end")
      .needed("38 in")
      .between(quantity::inches(2), quantity::feet(20));
  f.has<&Lead::reading>("reading", "Resistance").needed("85.2 ohm +- 0.7 ohm");
  f.has<&Lead::slack>("slack", "Slack").example("1 in").above(quantity::inches(0));
  f.has<&Lead::grade>("grade", "Grade");
  f.has<&Lead::note>("note", "Note").help("What a stranger should know");
  return "lead";
}

struct Hose {
  Length length{1.0};
  std::int64_t size{6};
};
inline std::string_view describe(describe::Fields<Hose>& f) {
  f.has<&Hose::length>("length", "Length").example("22 in");
  f.has<&Hose::size>("size", "Dash size").between(2, 32);
  return "hose";
}

struct Meter {
  AnyQuantity shows;
  double factor{2};
};
inline std::string_view describe(describe::Fields<Meter>& f) {
  f.has<&Meter::shows>("shows", "What it shows").needed("13.8 V");
  f.has<&Meter::factor>("factor", "Coverage factor").between(1, 4);
  return "meter";
}

struct Everything {
  std::string title;
  bool bench{};
  std::int64_t cylinders{4};
  double ratio{1.5};
  Length plain{0.5};
  Grade grade{Grade::renewed};
  std::optional<Date> seen_on;
  Hose hose;
  std::vector<Lead> leads;
  std::vector<std::string> words;
  std::variant<Hose, Meter> either;
  std::vector<std::variant<Hose, Meter>> mixed;
  std::string position;
  std::optional<std::string> photo;
  std::optional<std::int64_t> teeth;
  std::vector<std::string> joints;
  std::vector<Grade> grades;
};
inline std::string_view describe(describe::Fields<Everything>& f) {
  f.has<&Everything::title>("title", "Title").needed("left harness");
  f.has<&Everything::bench>("bench", "On the bench");
  f.has<&Everything::cylinders>("cylinders", "Cylinders").between(1, 12);
  f.has<&Everything::ratio>("ratio", "Ratio").above(0);
  f.has<&Everything::plain>("plain", "Plain length").example("19 in");
  f.has<&Everything::grade>("grade", "Grade");
  // 2000-01-01 to 2100-01-01 in days since 1970.
  f.has<&Everything::seen_on>("seen_on", "Seen on").between(10957, 47482);
  f.has<&Everything::hose>("hose", "Hose");
  f.has<&Everything::leads>("leads", "Leads").between(1, 20);
  f.has<&Everything::words>("words", "Words");
  f.has<&Everything::either>("either", "Either");
  f.has<&Everything::mixed>("mixed", "Mixed");
  f.has<&Everything::position>("position", "Position").refers_to("position");
  f.has<&Everything::photo>("photo", "Photo").refers_to("attachment");
  f.has<&Everything::teeth>("teeth", "Teeth").shown_when("grade=renewed");
  f.has<&Everything::joints>("joints", "Joints").refers_to("joint");
  f.has<&Everything::grades>("grades", "Grades");
  return "everything";
}

struct Ask {
  Entered<Length> run;
  Measured<Resistance> each;
};
inline std::string_view describe(describe::Fields<Ask>& f) {
  f.has<&Ask::run>("run", "Length of the run").needed("38 in").above(quantity::inches(0));
  f.has<&Ask::each>("each", "Resistance").needed("85.2 ohm +- 0.7 ohm");
  return "ask";
}
struct Answer {
  quantity::ResistancePerLength per_length;
  Measured<Resistance> each;
  Grade grade{Grade::looked_at};
};
inline std::string_view describe(describe::Fields<Answer>& f) {
  f.has<&Answer::per_length>("per_length", "Resistance of each length").example("26.9 ohm/ft");
  f.has<&Answer::each>("each", "Resistance");
  f.has<&Answer::grade>("grade", "Grade");
  return "answer";
}
enum class Verdict { conforms, does_not_conform, undecided, not_tested };
inline std::string_view describe(describe::Choices<Verdict>& c) {
  c.has(Verdict::conforms, "conforms", "conforms")
      .has(Verdict::does_not_conform, "does-not-conform", "does not conform")
      .has(Verdict::undecided, "undecided", "undecided")
      .has(Verdict::not_tested, "not-tested", "not tested");
  return "verdict";
}
struct Judged {
  Verdict verdict{Verdict::not_tested};
};
inline std::string_view describe(describe::Fields<Judged>& f) {
  f.has<&Judged::verdict>("verdict", "Verdict");
  return "judged";
}

inline Checked<Answer> per_length(const Ask& ask, const describe::Context& /*context*/) {
  if (ask.run.value.si > 5) {
    return Fail(Problems{{Kind::not_applicable, "run", "longer than any lead", "", "", "", ""}});
  }
  return Answer{{ask.each.value.si / ask.run.value.si}, ask.each, Grade::renewed};
}
inline describe::Calculation per_length_calculation() {
  return describe::calculation<&per_length>("per-length", "How much resistance a length has",
                                            {describe::derived("Ohm's law")},
                                            {describe::caution::insulation_not_tested});
}

}  // namespace wm::sample
