// Source:    RFC 3339 (July 2002), section 5.8, examples (from memory); JCGM 100:2008, 7.2.4 (from
//            memory) and 7.2.6 (read in a quotation).
// Tolerance: exact: texts and instants.
#include <gtest/gtest.h>

#include "quantity/date.hpp"
#include "quantity/text.hpp"
#include "support/reference_case.hpp"

namespace wm::quantity {
namespace {

TEST(Rfc3339, ExamplesMeanWhatTheTextSays) {
  const char* source = "RFC 3339, section 5.8 (from memory)";
  const auto instant = [](const char* text) {
    const auto at = parse_instant(text);
    return at ? print_instant(*at) : at.error().what;
  };
  test::check_text("quantity", "time stamp with a fraction", source, "1985-04-12T23:20:50.520Z",
                   instant("1985-04-12T23:20:50.52Z"));
  test::check_text("quantity", "time stamp with an offset", source, "1996-12-20T00:39:57Z",
                   instant("1996-12-19T16:39:57-08:00"));
  test::check_text("quantity", "one leap second, two ways", source, instant("1990-12-31T23:59:60Z"),
                   instant("1990-12-31T15:59:60-08:00"));
  test::check_text("quantity", "offset of twenty minutes", source, "1937-01-01T11:40:27.870Z",
                   instant("1937-01-01T12:00:27.87+00:20"));
}

TEST(Gum, ExamplesOfReporting) {
  test::check_text("quantity", "100.021 47 g with U = 0.79 mg",
                   "JCGM 100:2008, 7.2.4 (from memory)", "100.02147 g +- 0.00079 g",
                   print_with_uncertainty(0.10002147, 0.79e-6, *find_unit(KindOf::mass, "g")));
  test::check_text("quantity", "10.057 62 ohm with u = 27 mohm", "JCGM 100:2008, 7.2.6",
                   "10.058 ohm +- 0.027 ohm",
                   print_with_uncertainty(10.05762, 0.027, *find_unit(KindOf::resistance, "ohm")));
}

}  // namespace
}  // namespace wm::quantity
