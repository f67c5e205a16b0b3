// SVG, PDF and PNG of the same list: geometry and text, not raw bytes.
#include <gtest/gtest.h>

#include <limits>

#include "drawing/pdf.hpp"
#include "drawing/png.hpp"
#include "drawing/qr.hpp"
#include "drawing/svg.hpp"
#include "outside_tools.hpp"
#include "sheet_checks.hpp"

namespace wm::drawing {
namespace {

using test::count_of;
using test::have;
using test::TemporaryFile;

Page one_of_each() {
  return {100,
          60,
          {Line{{1, 2}, {30, 2}, {Role::ink, 0.2, 1, 0.5}},
           Path{{{1, 5}, {9, 5}, {5, 9.5}}, true, Role::lacquer, {Role::lacquer_text, 0.3}},
           Rect{{12, 5}, 10, 5, 1, Role::zinc, {}}, Circle{{30, 8}, 2, {}, {Role::ink, 0.25}},
           Text{{50, 20}, "85 Ω ± 0.7 Ω at 45°", 4, Weight::bold, Anchor::middle, Role::ink},
           QrCode{{60, 30}, 25, "WM1 412 abcdef"}}};
}

const char* const k_hostile = "<script>alert('x')</script> & \"quoted\" \x01\x1B ]]> \xFF\xFE --!>";

TEST(Svg, GoldenShapes) {
  const auto got = svg(one_of_each());
  ASSERT_TRUE(got);
  EXPECT_NE(got->find(R"(width="100mm" height="60mm" viewBox="0 0 100 60")"), std::string::npos);
  EXPECT_NE(got->find(R"(<line x1="1" y1="2" x2="30" y2="2" class="line-ink" fill="none" )"
                      R"(stroke="#1d2224" stroke-width="0.2" stroke-dasharray="1 0.5"/>)"),
            std::string::npos)
      << *got;
  EXPECT_NE(got->find(R"(<path d="M1 5L9 5L5 9.5Z" class="fill-lacquer line-lacquer-text")"),
            std::string::npos);
  EXPECT_NE(got->find(R"(<rect x="12" y="5" width="10" height="5" rx="1" class="fill-zinc")"),
            std::string::npos);
  EXPECT_NE(got->find(R"(<circle cx="30" cy="8" r="2")"), std::string::npos);
  EXPECT_NE(got->find(R"(font-weight="bold" text-anchor="middle" class="fill-ink" )"
                      R"(fill="#1d2224">85 Ω ± 0.7 Ω at 45°</text>)"),
            std::string::npos);
}

TEST(Svg, HoldsNoInlineStyleAndNoScript) {
  Page page = one_of_each();
  page.items.emplace_back(Text{{1, 50}, k_hostile});
  SvgOptions options;
  options.id = "\" onload=\"x";
  const auto got = svg(Fragment{page, k_hostile, k_hostile}, options);
  ASSERT_TRUE(got);
  EXPECT_EQ(got->find("style="), std::string::npos);
  EXPECT_EQ(got->find("<script"), std::string::npos);
  EXPECT_EQ(got->find("onload=\""), std::string::npos);
  EXPECT_NE(got->find("id=\"onloadx-title\""), std::string::npos);
}

TEST(Svg, IsWellFormedAlsoWithHostileText) {
  if (!have("xmllint")) GTEST_SKIP() << "xmllint (Debian package libxml2-utils) is not installed";
  Page page = one_of_each();
  page.items.emplace_back(Text{{1, 50}, k_hostile});
  const auto got = svg(Fragment{page, k_hostile, k_hostile});
  ASSERT_TRUE(got);
  const TemporaryFile file{".svg", *got};
  const auto ran = test::run("xmllint --noout " + file.path());
  EXPECT_EQ(ran.status, 0) << ran.output;
}

TEST(Svg, WithoutSizeThePageDecides) {
  SvgOptions options;
  options.sized = false;
  options.with_ground = false;
  const auto got = svg(one_of_each(), options);
  ASSERT_TRUE(got);
  EXPECT_EQ(got->find("mm\""), std::string::npos);
  EXPECT_EQ(got->find("fill-paper"), std::string::npos);
}

TEST(Pdf, TextCanBeSelectedAndPagesKeepTheirSize) {
  if (!have("pdftotext")) GTEST_SKIP() << "pdftotext (package poppler-utils) is not installed";
  Page letter{215.9, 279.4, {Text{{20, 40}, "second page, Δ = λ²"}}};
  const std::vector<Page> pages{{210, 297, one_of_each().items}, letter};
  const auto bytes = pdf(pages, {"Card & <title>", "Q-PEB", "2026-11-25"});
  ASSERT_TRUE(bytes);
  const TemporaryFile file{".pdf", *bytes};
  const std::string text = test::words_of(test::run("pdftotext " + file.path() + " -").output);
  EXPECT_NE(text.find("85 Ω ± 0.7 Ω at 45°"), std::string::npos) << text;
  EXPECT_NE(text.find("second page, Δ = λ²"), std::string::npos) << text;
  const std::string about = test::words_of(test::run("TZ=UTC pdfinfo -l 2 " + file.path()).output);
  EXPECT_NE(about.find("Title: Card & <title>"), std::string::npos) << about;
  EXPECT_NE(about.find("Wed Nov 25 00:00:00 2026"), std::string::npos) << about;
  EXPECT_NE(about.find("(A4)"), std::string::npos) << about;
  EXPECT_NE(about.find("612 x 792 pts"), std::string::npos) << about;
}

TEST(Pdf, RefusesADateThatIsNone) {
  const std::vector<Page> pages{one_of_each()};
  for (const char* date :
       {"", "yesterday", "2026-02-30", "2026-11-25T25:00:00Z", "2026-11-25 10:00", "2026-13-01",
        "2026-11-25T10:00:00+01", "٢٠٢٦-11-25"}) {
    const auto got = pdf(pages, {"t", "s", date});
    ASSERT_FALSE(got) << date;
    EXPECT_EQ(got.error().kind, Kind::bad_text);
    EXPECT_EQ(got.error().path, "created");
  }
  EXPECT_TRUE(pdf(pages, {"t", "s", "2028-02-29T23:59:59Z"}));
  EXPECT_EQ(pdf({}, {"t", "s", "2026-11-25"}).error().kind, Kind::missing);
}

TEST(Emitters, GiveTheSameBytesEachTime) {
  const std::vector<Page> pages{one_of_each(), one_of_each()};
  const PdfInfo info{"t", "s", "2026-11-25"};
  EXPECT_EQ(*pdf(pages, info), *pdf(pages, info));
  EXPECT_EQ(*svg(pages[0]), *svg(pages[0]));
  EXPECT_EQ(*png(pages[0], 96), *png(pages[0], 96));
}

TEST(Emitters, TakeHostileTextWithoutHarm) {
  Page page{50, 50, {}};
  for (const char* text : {k_hostile, "", "\xF0\x9F", "a\nb", "\u202Eabc", "%n%s{}{0}"})
    page.items.emplace_back(Text{{1, 10}, text});
  page.items.emplace_back(Text{{1, 20}, std::string(20000, 'x')});
  page.items.emplace_back(Text{{1, 20}, "no size", 0});
  EXPECT_TRUE(svg(page));
  EXPECT_TRUE(png(page, 96));
  EXPECT_TRUE(pdf(std::vector<Page>{page}, {k_hostile, k_hostile, "2026-11-25"}));
}

TEST(Emitters, ShapesOfNoWidthAreDrawnAsNothing) {
  const Page page{10,
                  10,
                  {Line{{1, 1}, {1, 1}, {Role::ink, 0}}, Rect{{1, 1}, 0, 0, 3, Role::ink, {}},
                   Circle{{1, 1}, 0, Role::ink, {}}, Path{}}};
  EXPECT_TRUE(svg(page));
  EXPECT_TRUE(png(page, 96));
  EXPECT_TRUE(pdf(std::vector<Page>{page}, {"t", "s", "2026-11-25"}));
}

TEST(Emitters, RefuseFiguresThatCannotBeDrawn) {
  constexpr double nan = std::numeric_limits<double>::quiet_NaN();
  constexpr double inf = std::numeric_limits<double>::infinity();
  const std::vector<Item> bad{Line{{nan, 0}, {1, 1}},
                              Path{{{0, inf}}, false, {}, {}},
                              Rect{{0, 0}, -1, 1, 0, {}, {}},
                              Circle{{0, 0}, nan, {}, {}},
                              Text{{0, 0}, "x", inf},
                              QrCode{{0, 0}, -1, "x"},
                              Line{{0, 0}, {1, 1}, {Role::ink, nan}}};
  for (const Item& item : bad) {
    const Page page{10, 10, {Line{}, item}};
    EXPECT_EQ(svg(page).error().path, "items/1");
    EXPECT_EQ(png(page, 96).error().kind, Kind::out_of_bounds);
    EXPECT_EQ(pdf(std::vector<Page>{page}, {"t", "s", "2026-11-25"}).error().kind,
              Kind::out_of_bounds);
  }
  for (double side : {0.0, -1.0, nan, inf, 6000.0}) EXPECT_FALSE(svg(Page{side, 10, {}})) << side;
}

TEST(Emitters, RefuseACodeThatHoldsTooMuch) {
  const Page page{10, 10, {QrCode{{0, 0}, 10, std::string(2332, 'x')}}};
  EXPECT_EQ(svg(page).error().kind, Kind::out_of_bounds);
  EXPECT_EQ(png(page, 96).error().kind, Kind::out_of_bounds);
  EXPECT_EQ(pdf(std::vector<Page>{page}, {"t", "s", "2026-11-25"}).error().kind,
            Kind::out_of_bounds);
  EXPECT_TRUE(qr_squares(std::string(2331, 'x')));
  EXPECT_FALSE(qr_squares(""));
}

TEST(Png, RefusesPicturesThatAreTooLarge) {
  EXPECT_FALSE(png({5000, 5000, {}}, 1200));
  EXPECT_FALSE(png(one_of_each(), 5));
  EXPECT_FALSE(png(one_of_each(), std::numeric_limits<double>::quiet_NaN()));
  EXPECT_TRUE(png({5000, 1, {}}, 20));
}

TEST(Qr, ADecoderReadsWhatWasWritten) {
  if (!have("zbarimg")) GTEST_SKIP() << "zbarimg (Debian package zbar-tools) is not installed";
  const std::string text = "WM1 412 " + std::string(64, 'a');
  for (double dpi : {150.0, 300.0}) {
    const auto picture = png({40, 40, {QrCode{{10, 10}, 19, text}}}, dpi);
    ASSERT_TRUE(picture);
    const TemporaryFile file{".png", *picture};
    const auto ran = test::run("zbarimg --raw -q " + file.path());
    EXPECT_NE(ran.output.find(text), std::string::npos) << dpi << ": " << ran.output;
  }
}

TEST(DisplayList, AFragmentIsPlacedWhole) {
  Page page{100, 100, {}};
  place(page, {10, 10, {Line{{1, 2}, {3, 4}}, QrCode{{1, 1}, 5, "x"}}}, {20, 30});
  EXPECT_EQ(std::get<Line>(page.items[0]), (Line{{21, 32}, {23, 34}}));
  EXPECT_EQ(std::get<QrCode>(page.items[1]).at, (Point{21, 31}));
}

}  // namespace
}  // namespace wm::drawing
