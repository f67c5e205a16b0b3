// The words of "hose-age": fields, labels, bounds, examples.
#include "hose/age.hpp"

namespace wm::hose {

std::string_view describe(describe::Choices<HoseKind>& c) {
  c.has(HoseKind::not_said, "not-said", "not said")
      .has(HoseKind::elastomer, "elastomer", "rubber lined")
      .has(HoseKind::ptfe, "ptfe", "PTFE lined");
  return "hose-kind";
}

std::string_view describe(describe::Choices<AgeClock>& c) {
  c.has(AgeClock::shelf, "shelf", "on the shelf, to fitting")
      .has(AgeClock::service, "service", "in service");
  return "age-clock";
}

std::string_view describe(describe::Choices<AgeFrom>& c) {
  c.has(AgeFrom::cure, "cure", "the end of the cure quarter")
      .has(AgeFrom::assembly, "assembly", "assembly")
      .has(AgeFrom::proof, "proof", "the last proof test")
      .has(AgeFrom::fitting, "fitting", "fitting");
  return "age-from";
}

std::string_view describe(describe::Choices<AgeStands>& c) {
  c.has(AgeStands::not_dated, "not-dated", "without a date")
      .has(AgeStands::within, "within", "within")
      .has(AgeStands::past, "past", "past");
  return "age-stands";
}

std::string_view describe(describe::Choices<AgeStanding>& c) {
  c.has(AgeStanding::no_limit_entered, "no-limit-entered", "no limit entered")
      .has(AgeStanding::not_known, "unknown", "unknown")
      .has(AgeStanding::within_limit, "within-limit", "within the limits entered")
      .has(AgeStanding::past_limit, "past-limit", "past a limit entered");
  return "age-standing";
}

std::string_view describe(describe::Fields<OwnAgeLimit>& f) {
  using L = OwnAgeLimit;
  f.has<&L::clock>("clock", "Clock");
  f.has<&L::from>("from", "Counted from");
  f.has<&L::months>("months", "Months").needed("60").between(1, 1200);
  f.has<&L::source>("source", "Where it stands").example("maintenance manual, chapter 5");
  return "own-age-limit";
}

std::string_view describe(describe::Fields<HoseAgeInput>& f) {
  using I = HoseAgeInput;
  f.has<&I::family>("family", "Hose family")
      .example("MIL-H-8794")
      .help("Row of the table hose-families; it says the kind.");
  f.has<&I::kind>("kind", "Kind, where the family is not known");
  f.has<&I::liner>("liner", "Compound of the rubber");
  f.has<&I::cure>("cure", "Cured")
      .example("2Q2018")
      .help("Quarter and year on the hose, or a day. Counted from the end of the quarter.");
  f.has<&I::assembly>("assembly", "Assembled")
      .example("A4Q2018")
      .help("On the tag: A2Q80 is the 2nd quarter of 1980.");
  f.has<&I::proof>("proof", "Last proof test").example("2019-02-11");
  f.has<&I::delivery>("delivery", "Delivered").example("2019-03-04");
  f.has<&I::fitting>("fitting", "Fitted").example("2019-04-20").help("Empty: still on the shelf.");
  f.has<&I::on>("on", "Asked for the day").example("2026-11-25").help("Empty: today.");
  f.has<&I::own_limits>("own_limits", "Limits of the maker, an authority or your own")
      .example(R"([{"clock": "service", "from": "fitting", "months": 84, )"
               R"("source": "maintenance manual, chapter 5"}])")
      .help("They win over every published figure.");
  return "hose-age-input";
}

std::string_view describe(describe::Fields<AgeFigure>& f) {
  using A = AgeFigure;
  f.has<&A::what>("what", "What");
  f.has<&A::clock>("clock", "Clock");
  f.has<&A::counted>("counted", "Counted");
  f.has<&A::limit>("limit", "Limit");
  f.has<&A::due>("due", "Last day within it");
  f.has<&A::due_quarter>("due_quarter", "In quarter");
  f.has<&A::stands>("stands", "It is");
  f.has<&A::decides>("decides", "Entered, so it decides");
  f.has<&A::source>("source", "Source");
  f.has<&A::known>("known", "How it is known");
  f.has<&A::note>("note", "Mind");
  return "age-figure";
}

std::string_view describe(describe::Fields<AgeReading>& f) {
  using A = AgeReading;
  f.has<&A::clock>("clock", "Clock");
  f.has<&A::from>("from", "From");
  f.has<&A::to>("to", "To");
  f.has<&A::quarters>("quarters", "Whole quarters of a year");
  f.has<&A::in_words>("in_words", "In words");
  return "age-reading";
}

std::string_view describe(describe::Fields<HoseAgeAnswer>& f) {
  using A = HoseAgeAnswer;
  f.has<&A::standing>("standing", "By the limits entered");
  f.has<&A::in_words>("in_words", "In short");
  f.has<&A::clocks>("clocks", "The two clocks");
  f.has<&A::figures>("figures", "Figures");
  f.has<&A::missing>("missing", "To be found out");
  f.has<&A::notes>("notes", "Mind");
  f.has<&A::working>("working", "The sum, step by step");
  return "hose-age-answer";
}

}  // namespace wm::hose
