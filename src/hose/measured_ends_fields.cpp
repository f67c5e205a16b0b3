// The words of "hose-ends".
#include "hose/measured_ends.hpp"

namespace wm::hose {

using quantity::degrees;
using quantity::feet;
using quantity::inches;
using quantity::per_cent;

std::string_view describe(describe::Choices<Enough>& c) {
  c.has(Enough::yes, "good-enough", "good enough")
      .has(Enough::no, "not-good-enough", "not good enough")
      .has(Enough::not_asked, "not-asked", "not asked: the hose is not entered");
  return "enough";
}

std::string_view describe(describe::Fields<TubeBend>& f) {
  f.has<&TubeBend::straight>("straight", "Straight before it")
      .needed("6 in")
      .between(inches(0), feet(20))
      .help("From the seat, or from the end of the bend before.");
  f.has<&TubeBend::bend>("bend", "Bent by").needed("90 deg").between(degrees(0), degrees(175));
  f.has<&TubeBend::turn>("turn", "Plane turned by")
      .needed("0 deg")
      .between(degrees(-180), degrees(180))
      .help(
          "Seen along the tube from the near end, clockwise from the bend before; the first "
          "bend: from straight up (an upright tube: from straight aft).");
  return "tube-bend";
}

std::string_view describe(describe::Fields<DummyTubeRoute>& f) {
  using R = DummyTubeRoute;
  f.has<&R::bends>("bends", "Its bends, from the near end")
      .needed(R"([{"straight": "6 in", "bend": "90 deg", "turn": "90 deg"}])");
  f.has<&R::last_straight>("last_straight", "Straight behind the last bend")
      .needed("7 in")
      .between(inches(0), feet(20))
      .help("To the far seat.");
  f.has<&R::bend_radius>("bend_radius", "Radius of its bends")
      .needed("1.5 in")
      .between(inches(0), feet(5))
      .help("To the centreline; 0 where it is bent sharply.");
  f.has<&R::length_within>("length_within", "Lengths read within, each way")
      .needed("1/16 in")
      .between(inches(0), inches(6));
  f.has<&R::bend_within>("bend_within", "Bends read within, each way")
      .needed("1 deg")
      .between(degrees(0), degrees(20));
  f.has<&R::turn_within>("turn_within", "Turns read within, each way")
      .needed("2 deg")
      .between(degrees(0), degrees(45));
  return "dummy-tube";
}

std::string_view describe(describe::Fields<TapeRoute>& f) {
  using R = TapeRoute;
  const auto length = [&](auto builder, std::string_view example) {
    builder.needed(example).above(inches(0)).at_most(feet(30));
  };
  length(f.has<&R::near_rod>("near_rod", "Near rod, from its seat to its mark"), "8 in");
  length(f.has<&R::far_rod>("far_rod", "Far rod, from its seat to its mark"), "8 in");
  length(f.has<&R::seat_to_seat>("seat_to_seat", "Near seat to far seat"), "19.5 in");
  length(f.has<&R::near_seat_to_far_mark>("near_seat_to_far_mark", "Near seat to far mark"),
         "15.4 in");
  length(f.has<&R::near_mark_to_far_seat>("near_mark_to_far_seat", "Near mark to far seat"),
         "14.9 in");
  length(f.has<&R::mark_to_mark>("mark_to_mark", "Near mark to far mark"), "8.8 in");
  const auto rise = [&](auto builder, std::string_view example) {
    builder.needed(example).between(degrees(-90), degrees(90));
  };
  rise(f.has<&R::near_rise>("near_rise", "Rise of the near rod"), "0 deg");
  rise(f.has<&R::far_rise>("far_rise", "Rise of the far rod"), "0 deg");
  rise(f.has<&R::line_rise>("line_rise", "Rise of the line from near seat to far seat"),
       "11.8 deg");
  f.has<&R::to_the_left>("to_the_left", "The far seat lies to the left")
      .help(
          "Seen from above, along the near rod outwards. With a near rod steeper than 80 degrees: "
          "along the line of the seats, the far mark lies to the left.");
  f.has<&R::tape_within>("tape_within", "Tape read within, each way")
      .needed("1/16 in")
      .above(inches(0))
      .at_most(inches(6));
  f.has<&R::rise_within>("rise_within", "Inclinometer within, each way")
      .needed("0.5 deg")
      .above(degrees(0))
      .at_most(degrees(20));
  return "tape";
}

std::string_view describe(describe::Fields<HoseWanted>& f) {
  using W = HoseWanted;
  f.has<&W::outside_diameter>("outside_diameter", "Outside diameter")
      .needed("0.77 in")
      .above(inches(0))
      .at_most(inches(12));
  f.has<&W::least_radius>("least_radius", "Least bend radius")
      .needed("4.63 in")
      .above(inches(0))
      .at_most(feet(20));
  f.has<&W::radius_to>("radius_to", "That radius is meant");
  f.has<&W::rigid_near>("rigid_near", "Near end: its length that does not bend")
      .needed("1.5 in")
      .between(inches(0), inches(24));
  f.has<&W::rigid_far>("rigid_far", "Far end: its length that does not bend")
      .needed("1.5 in")
      .between(inches(0), inches(24));
  f.has<&W::lengthens>("lengthens", "Longer under pressure, at most")
      .between(per_cent(0), per_cent(20));
  f.has<&W::shortens>("shortens", "Shorter under pressure, at most")
      .between(per_cent(0), per_cent(20));
  f.has<&W::made_within>("made_within", "Length made within, each way")
      .needed("1/8 in")
      .between(inches(0), inches(12));
  f.has<&W::elbows>("elbows", "Elbows at both ends");
  return "hose-wanted";
}

std::string_view describe(describe::Fields<HoseEndsInput>& f) {
  using I = HoseEndsInput;
  f.has<&I::route>("route", "Measured by")
      .needed(
          R"({"is": "dummy-tube", "bends": [{"straight": "6 in", "bend": "90 deg", "turn": "90 deg"}], "last_straight": "7 in", "bend_radius": "1.5 in", "length_within": "1/16 in", "bend_within": "1 deg", "turn_within": "2 deg"})");
  f.has<&I::near_seat>("near_seat", "Near seat, where it is known")
      .help("Nothing entered: at the datum.");
  f.has<&I::near_leaves>("near_leaves", "The way the hose leaves the near fitting")
      .help(
          "Nothing entered: aft. With a tape only its plan counts; the inclinometer has its rise.");
  f.has<&I::hose>("hose", "The hose that it is for");
  return "hose-ends-input";
}

std::string_view describe(describe::Fields<HoseEndsAnswer>& f) {
  using A = HoseEndsAnswer;
  f.has<&A::near_seat>("near_seat", "Near seat");
  f.has<&A::near_leaves>("near_leaves", "The hose leaves it");
  f.has<&A::far_seat>("far_seat", "Far seat");
  f.has<&A::far_leaves>("far_leaves", "The hose leaves it");
  f.has<&A::apart>("apart", "Seat to seat, straight");
  f.has<&A::place_within>("place_within", "Far seat known within (k = 2)");
  f.has<&A::direction_within>("direction_within", "Directions known within (k = 2)");
  f.has<&A::shortest>("shortest", "Shortest overall length, wherever in that the ends are");
  f.has<&A::longest>("longest", "Longest");
  f.has<&A::to_order>("to_order", "To order from");
  f.has<&A::to_cut>("to_cut", "To cut from");
  f.has<&A::words>("words", "In words");
  f.has<&A::notes>("notes", "Mind");
  f.has<&A::working>("working", "The sum, step by step");
  return "hose-ends-answer";
}

}  // namespace wm::hose
