#include "record/detail/checks.hpp"

#include "support.hpp"

namespace wm::record::test {
namespace {

TEST(Checks, DaysOfTheCalendar) {
  EXPECT_TRUE(detail::is_date("2026-11-25"));
  EXPECT_TRUE(detail::is_date("2028-02-29"));
  for (const auto* text :
       {"2026-02-29", "2026-02-30", "2026-13-01", "2026-00-10", "2026-11-00", "2026-11-5",
        "26-11-25", "2026/11/25", "2026-11-25 ", "", "2026-1a-25"}) {
    EXPECT_FALSE(detail::is_date(text)) << text;
  }
}

TEST(Checks, InstantsOfRfc3339) {
  for (const auto* text : {"2026-11-25T18:04:31Z", "2026-11-25T18:04:31.125Z",
                           "2026-11-25T18:04:31+01:00", "2016-12-31T23:59:60Z"}) {
    EXPECT_TRUE(detail::is_instant(text)) << text;
  }
  for (const auto* text :
       {"2026-11-25T18:04Z", "2026-11-25 18:04:31Z", "2026-11-25T24:04:31Z", "2026-11-25T18:60:31Z",
        "2026-11-25T18:04:31", "2026-11-25T18:04:31.Z", "2026-11-25T18:04:31+1:00",
        "2026-11-25T18:04:31+01:00Z", "2026-02-30T18:04:31Z", "2026-11-25T18:04:61Z", ""}) {
    EXPECT_FALSE(detail::is_instant(text)) << text;
  }
}

// Source of the cases: RFC 3629 sections 3, 4 and 10 (overlong forms, surrogates, above U+10FFFF).
TEST(Checks, WellFormedUtf8) {
  for (const char* text : {"", "plain", "\xc2\xb5", "\xe2\x84\xa6", "\xf0\x9f\x94\xa7"}) {
    EXPECT_TRUE(detail::is_clean_text(text)) << text;
  }
  for (const std::string& text :
       {std::string("a\0b", 3), std::string("\xc0\x80"), std::string("\xe0\x80\x80"),
        std::string("\xed\xa0\x80"), std::string("\xf4\x90\x80\x80"),
        std::string("\xf0\x80\x80\x80"), std::string("\xc2"), std::string("\xe2\x84"),
        std::string("\x80"), std::string("\xff")}) {
    EXPECT_FALSE(detail::is_clean_text(text));
  }
}

struct Case {
  const char* field;
  Kind kind;
  void (*spoil)(NewEvent&);
};

class EachField : public testing::TestWithParam<Case> {};

TEST_P(EachField, IsRefusedByName) {
  TemporaryFolder folder;
  Journal journal = a_journal(folder / "a.binder");
  std::vector<NewEvent> events{an_event(1), an_event(2)};
  GetParam().spoil(events[1]);
  const Problem problem = problem_of(journal.append(events));
  EXPECT_EQ(problem.path, std::string("events/1/") + GetParam().field);
  EXPECT_EQ(problem.kind, GetParam().kind) << problem.what;
  EXPECT_FALSE(problem.what.empty());
  EXPECT_FALSE(problem.expected.empty());
  EXPECT_EQ(journal.last_sequence(), 0) << "all or none";
}

INSTANTIATE_TEST_SUITE_P(
    Fields, EachField,
    testing::Values(
        Case{"id", Kind::missing, [](NewEvent& e) { e.id.clear(); }},
        Case{"id", Kind::bad_text, [](NewEvent& e) { e.id = "with space"; }},
        Case{"id", Kind::bad_text, [](NewEvent& e) { e.id = std::string(65, 'a'); }},
        Case{"id", Kind::bad_text, [](NewEvent& e) { e.id = "\xc2\xb5"; }},
        Case{"kind", Kind::missing, [](NewEvent& e) { e.kind.clear(); }},
        Case{"kind", Kind::bad_text, [](NewEvent& e) { e.kind = "a\nb"; }},
        Case{"kind", Kind::bad_text, [](NewEvent& e) { e.kind = std::string(65, 'k'); }},
        Case{"version", Kind::out_of_bounds, [](NewEvent& e) { e.version = 0; }},
        Case{"happened", Kind::bad_text, [](NewEvent& e) { e.happened = "2026-02-30"; }},
        Case{"happened", Kind::bad_text, [](NewEvent& e) { e.happened = ""; }},
        Case{"recorded", Kind::bad_text, [](NewEvent& e) { e.recorded = "2026-11-25"; }},
        Case{"recorded", Kind::bad_text,
             [](NewEvent& e) { e.recorded = "2026-11-25T10:00:00+01:00"; }},
        Case{"author", Kind::bad_text, [](NewEvent& e) { e.author = "\xff"; }},
        Case{"author", Kind::out_of_bounds, [](NewEvent& e) { e.author = std::string(201, 'a'); }},
        Case{"device", Kind::bad_text, [](NewEvent& e) { e.device = {"a\0", 2}; }},
        Case{"refers_to", Kind::bad_text, [](NewEvent& e) { e.refers_to = "no id!"; }},
        Case{"refers_to", Kind::not_found, [](NewEvent& e) { e.refers_to = "ev-9"; }},
        Case{"body", Kind::missing, [](NewEvent& e) { e.body.clear(); }},
        Case{"body", Kind::bad_text, [](NewEvent& e) { e.body = "{\"a\":\"\xc3\"}"; }},
        Case{"body", Kind::out_of_bounds, [](NewEvent& e) {
               e.body = std::string(static_cast<std::size_t>(k_body_limit) + 1, ' ');
             }}));

}  // namespace
}  // namespace wm::record::test
