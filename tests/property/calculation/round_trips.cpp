// Laws of the faces over drawn values of every shape: what is written reads back the same.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "calculation/json_face.hpp"
#include "calculation/toml_face.hpp"
#include "unit/calculation/sample.hpp"

namespace {

using namespace wm;
using namespace wm::sample;

// Our own seed: a failure can be replayed (RC_PARAMS would override it).
rc::detail::TestParams parameters() {
  rc::detail::TestParams params;
  params.seed = 7;
  params.maxSuccess = 200;
  params.maxSize = 30;
  return params;
}

template <class Property>
void holds(Property&& property) {
  const auto result = rc::detail::checkTestable(std::forward<Property>(property),
                                                rc::detail::TestMetadata{}, parameters());
  EXPECT_TRUE(result.template is<rc::detail::SuccessResult>()) << [&] {
    std::ostringstream out;
    rc::detail::printResultMessage(result, out);
    return out.str();
  }();
}

/// Any text that UTF-8 can hold: ASCII with quotes and breaks, accents, signs beyond 16 bits.
rc::Gen<std::string> text() {
  return rc::gen::map(
      rc::gen::container<std::vector<std::string>>(rc::gen::elementOf(
          std::vector<std::string>{"a", "Z", " ", "\"", "\\", "\n", "\t", "{", "]", "=", "#", "'",
                                   "\u00e9", "\u03a9", "\U0001F527", "0", "/", "\r\n"})),
      [](const std::vector<std::string>& parts) {
        std::string out;
        for (const auto& p : parts) out += p;
        return out;
      });
}

rc::Gen<double> finite() {
  return rc::gen::map(
      rc::gen::pair(rc::gen::inRange<std::int64_t>(-1'000'000'000, 1'000'000'000),
                    rc::gen::inRange(-12, 12)),
      [](const auto& p) { return static_cast<double>(p.first) / 7.0 * std::pow(10.0, p.second); });
}

/// As typed with a unit, or computed.
template <class Q>
rc::Gen<Entered<Q>> entered(std::string unit) {
  return rc::gen::apply(
      [unit](int whole, int tenths, bool typed, double computed, double resolution) {
        if (!typed) return Entered<Q>{Q{computed}, std::abs(resolution), ""};
        auto read =
            quantity::read<Q>(std::to_string(whole) + "." + std::to_string(tenths) + " " + unit);
        return *read;
      },
      rc::gen::inRange(0, 5000), rc::gen::inRange(0, 9), rc::gen::arbitrary<bool>(), finite(),
      finite());
}

rc::Gen<Measured<Resistance>> measured() {
  return rc::gen::apply(
      [](int value, bool typed, bool has_u, double computed, double u) {
        if (typed) {
          const auto text = std::to_string(value) + (has_u ? " ohm +- 0.7 ohm" : " kohm");
          const auto p = quantity::parse_measured(text, quantity::KindOf::resistance);
          Measured<Resistance> out{{p->value.si}, {}, p->value.resolution_si, text};
          if (p->expanded) out.expanded_si = p->expanded->si;
          return out;
        }
        return Measured<Resistance>{
            {computed}, has_u ? std::optional(std::abs(u)) : std::nullopt, 0.0, ""};
      },
      rc::gen::inRange(0, 5000), rc::gen::arbitrary<bool>(), rc::gen::arbitrary<bool>(), finite(),
      finite());
}

rc::Gen<Grade> grade() {
  return rc::gen::element(Grade::looked_at, Grade::adjusted, Grade::renewed);
}

rc::Gen<quantity::Date> date() {
  return rc::gen::map(rc::gen::inRange(10957, 47482), [](int days) {
    return quantity::Date{std::chrono::sys_days{std::chrono::days{days}}};
  });
}

template <class T>
rc::Gen<std::optional<T>> maybe(rc::Gen<T> gen) {
  return rc::gen::oneOf(rc::gen::just(std::optional<T>{}),
                        rc::gen::map(std::move(gen), [](T v) { return std::optional<T>(v); }));
}

rc::Gen<Lead> lead() {
  return rc::gen::apply(
      [](std::string name, Entered<Length> length, Measured<Resistance> reading,
         std::optional<double> slack, Grade g, std::optional<std::string> note) {
        Lead out{std::move(name), std::move(length), std::move(reading), {}, g, std::move(note)};
        if (slack) out.slack = Length{*slack};
        return out;
      },
      text(), entered<Length>("in"), measured(), maybe(finite()), grade(), maybe(text()));
}

rc::Gen<Hose> hose() {
  return rc::gen::apply([](double l, std::int64_t s) { return Hose{{l}, s}; }, finite(),
                        rc::gen::arbitrary<std::int64_t>());
}

rc::Gen<Meter> meter() {
  return rc::gen::apply(
      [](int value, std::string unit, bool typed, double computed, double factor) {
        Meter out;
        out.factor = factor;
        if (typed) {
          out.shows = *describe::read_any(std::to_string(value) + " " + unit);
        } else {
          out.shows = {quantity::KindOf::pressure_absolute, computed, 0.5, 0.25, ""};
        }
        return out;
      },
      rc::gen::inRange(0, 500),
      rc::gen::elementOf(std::vector<std::string>{"V", "psi", "degF", "ohm", "in-lb", "%"}),
      rc::gen::arbitrary<bool>(), finite(), finite());
}

rc::Gen<std::variant<Hose, Meter>> either() {
  using V = std::variant<Hose, Meter>;
  return rc::gen::oneOf(rc::gen::map(hose(), [](Hose h) { return V{h}; }),
                        rc::gen::map(meter(), [](Meter m) { return V{std::move(m)}; }));
}

Everything everything() {
  Everything out;
  out.title = *text();
  out.bench = *rc::gen::arbitrary<bool>();
  out.cylinders = *rc::gen::arbitrary<std::int64_t>();
  out.ratio = *finite();
  out.plain = {*finite()};
  out.grade = *grade();
  out.seen_on = *maybe(date());
  out.hose = *hose();
  out.leads = *rc::gen::container<std::vector<Lead>>(lead());
  out.words = *rc::gen::container<std::vector<std::string>>(text());
  out.either = *either();
  out.mixed = *rc::gen::container<std::vector<std::variant<Hose, Meter>>>(either());
  out.position = *text();
  out.photo = *maybe(text());
  out.teeth = *maybe(rc::gen::arbitrary<std::int64_t>());
  return out;
}

bool same(const Hose& a, const Hose& b) { return a.length == b.length && a.size == b.size; }
bool same(const Meter& a, const Meter& b) { return a.shows == b.shows && a.factor == b.factor; }
bool same(const std::variant<Hose, Meter>& a, const std::variant<Hose, Meter>& b) {
  if (a.index() != b.index()) return false;
  if (a.index() == 0) return same(std::get<0>(a), std::get<0>(b));
  return same(std::get<1>(a), std::get<1>(b));
}
bool same(const Lead& a, const Lead& b) {
  return a.name == b.name && a.length == b.length && a.reading == b.reading && a.slack == b.slack &&
         a.grade == b.grade && a.note == b.note;
}
template <class T>
bool same(const std::vector<T>& a, const std::vector<T>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](const T& x, const T& y) { return same(x, y); });
}
bool same(const Everything& a, const Everything& b) {
  return a.title == b.title && a.bench == b.bench && a.cylinders == b.cylinders &&
         a.ratio == b.ratio && a.plain == b.plain && a.grade == b.grade && a.seen_on == b.seen_on &&
         same(a.hose, b.hose) && same(a.leads, b.leads) && a.words == b.words &&
         same(a.either, b.either) && same(a.mixed, b.mixed) && a.position == b.position &&
         a.photo == b.photo && a.teeth == b.teeth;
}

TEST(Payload, ReadsBackToTheLastBit) {
  holds([] {
    const auto value = everything();
    const auto payload = calculation::to_payload(value);
    const auto back = calculation::from_payload<Everything>(payload);
    if (!back) RC_FAIL(payload + calculation::write_problems(back.error()));
    RC_ASSERT(same(*back, value));
    RC_ASSERT(calculation::to_payload(*back) == payload);
  });
}

// A sheet asks for more than the journal (names differ, a lead at least), so the draw is tamed.
Everything acceptable() {
  auto out = everything();
  out.title = "t" + std::to_string(*rc::gen::inRange(0, 1000));
  out.cylinders = *rc::gen::inRange<std::int64_t>(1, 13);
  out.ratio = std::abs(out.ratio) + 1;
  out.hose.size = *rc::gen::inRange<std::int64_t>(2, 33);
  const auto tame = [](std::variant<Hose, Meter>& v) {
    if (auto* h = std::get_if<Hose>(&v)) h->size = 8;
    if (auto* m = std::get_if<Meter>(&v)) {
      m->factor = 2;
      if (m->shows.text.empty()) m->shows = *describe::read_any("28 psi +- 1 psi");
    }
  };
  tame(out.either);
  for (auto& v : out.mixed) tame(v);
  out.leads.resize(1 + out.leads.size() % 15);
  for (std::size_t i = 0; i < out.leads.size(); ++i) {
    auto& l = out.leads[i];
    l.name = "lead " + std::to_string(i);
    l.length = *quantity::read<Length>(std::to_string(2 + i) + " in");
    if (l.reading.text.empty()) l.reading = {{85}, {}, 1, "85 ohm"};
    if (l.slack) l.slack = Length{std::abs(l.slack->si) + 0.01};
  }
  return out;
}

TEST(Sheet, ReadsBackAsItWasAndWritesTheSameBytes) {
  const auto& type = describe::type_of<Everything>();
  holds([&] {
    auto value = acceptable();
    const auto sheet = calculation::write_toml(type, &value);
    Everything back;
    const auto problems = calculation::read_toml(sheet, type, &back);
    if (!problems.empty()) RC_FAIL(sheet + calculation::write_problems(problems));
    // An optional text of blanks is what a form sends for nothing; it does not come back.
    if (value.photo && value.photo->find_first_not_of(" \t\r\n") == std::string::npos) {
      value.photo.reset();
    }
    for (auto& l : value.leads) {
      if (l.note && l.note->find_first_not_of(" \t\r\n") == std::string::npos) l.note.reset();
    }
    RC_ASSERT(same(back, value));
    const auto again = calculation::write_toml(type, &back);
    RC_ASSERT(again == calculation::write_toml(type, &value));
  });
}

TEST(Answers, AreJsonWithinTheDigitsThatCount) {
  holds([] {
    const auto value = everything();
    const auto json = calculation::to_json(value);
    // An answer is valid JSON of the API's own kind: it parses, and is no input.
    Everything back;
    const auto problems = calculation::read_json(json, describe::type_of<Everything>(), &back);
    for (const auto& p : problems) RC_ASSERT(p.what.find("not JSON") == std::string::npos);
  });
}

TEST(Reading, NeverAcceptsAndRefusesAtOnce) {
  holds([] {
    // Damage one byte of a good payload: whatever comes of it, it is told or read, never both.
    auto payload = calculation::to_payload(everything());
    const auto at = *rc::gen::inRange<std::size_t>(0, payload.size());
    payload[at] = *rc::gen::arbitrary<char>();
    Everything out;
    out.title = "untouched";
    const auto problems = calculation::read_json(payload, describe::type_of<Everything>(), &out);
    if (!problems.empty()) RC_ASSERT(out.title == "untouched");
  });
}

}  // namespace
