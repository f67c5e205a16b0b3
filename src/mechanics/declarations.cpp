#include "mechanics/declarations.hpp"

#include "mechanics/balance.hpp"
#include "mechanics/torque.hpp"
#include "tables/mechanics/all.hpp"

namespace wm::mechanics {

using quantity::degrees;
using quantity::inch_pounds;
using quantity::inches;
using quantity::pounds;

std::string_view describe(describe::Fields<TorqueSettingInput>& f) {
  const auto least = inch_pounds(0.1);
  const auto most = inch_pounds(24000);
  f.has<&TorqueSettingInput::wanted>("wanted", "Torque wanted")
      .example("100 in-lb")
      .between(least, most);
  f.has<&TorqueSettingInput::lowest>("lowest", "Torque from, where the maker gives a band")
      .between(least, most);
  f.has<&TorqueSettingInput::highest>("highest", "Torque to").between(least, most);
  f.has<&TorqueSettingInput::table>("table", "Torque table")
      .refers_to("table")
      .help("Only where the maker gives no torque; tables disagree, so the table is named.");
  f.has<&TorqueSettingInput::size>("size", "Thread or dash number in the table");
  f.has<&TorqueSettingInput::which>("which", "Nut or metal, as the table words it");
  f.has<&TorqueSettingInput::source>("source", "Where the torque is written");
  f.has<&TorqueSettingInput::drag>("drag", "Friction drag of a self-locking nut")
      .example("7 in-lb")
      .between(inch_pounds(0), inch_pounds(2400));
  f.has<&TorqueSettingInput::lever>("lever", "Wrench, middle of the grip to the drive")
      .example("12 in")
      .between(inches(1), inches(120));
  f.has<&TorqueSettingInput::extension>("extension", "Extension, drive to nut")
      .example("6 in")
      .between(inches(0), inches(60));
  f.has<&TorqueSettingInput::angle>("angle", "Angle between wrench and extension")
      .between(degrees(0), degrees(180))
      .help("0 in line, 90 degrees no effect.");
  f.has<&TorqueSettingInput::shortens>("shortens",
                                       "The adapter points back and shortens the wrench");
  f.has<&TorqueSettingInput::castle_nut>("castle_nut", "Castle nut");
  f.has<&TorqueSettingInput::wrench_from>("wrench_from", "The wrench's scale starts at")
      .between(inch_pounds(0), most);
  f.has<&TorqueSettingInput::wrench_to>("wrench_to", "The wrench's scale ends at")
      .between(least, most);
  return "torque-setting-input";
}

std::string_view describe(describe::Fields<TorqueSettingAnswer>& f) {
  f.has<&TorqueSettingAnswer::setting>("setting", "Set on the wrench");
  f.has<&TorqueSettingAnswer::setting_lowest>("setting_lowest", "Lowest setting");
  f.has<&TorqueSettingAnswer::setting_highest>("setting_highest", "Highest setting");
  f.has<&TorqueSettingAnswer::at_the_nut>("at_the_nut", "Torque at the nut, drag included");
  f.has<&TorqueSettingAnswer::torque_source>("torque_source", "Torque from");
  f.has<&TorqueSettingAnswer::notes>("notes", "Mind");
  f.has<&TorqueSettingAnswer::working>("working", "The sum, step by step");
  return "torque-setting-answer";
}

std::string_view describe(describe::Choices<MassChangeKind>& c) {
  c.has(MassChangeKind::added, "added", "added")
      .has(MassChangeKind::removed, "removed", "removed")
      .has(MassChangeKind::moved, "moved", "moved");
  return "mass-change-kind";
}

std::string_view describe(describe::Choices<Within>& c) {
  c.has(Within::inside, "inside", "inside the limits you entered")
      .has(Within::outside, "outside", "outside the limits you entered")
      .has(Within::not_judged, "not-judged", "not judged");
  return "within";
}

std::string_view describe(describe::Fields<MassChange>& f) {
  f.has<&MassChange::what>("what", "What").needed("starter");
  f.has<&MassChange::kind>("kind", "Added, removed or moved").needed("removed");
  f.has<&MassChange::mass>("mass", "Its mass").needed("18.0 lb").between(pounds(0), pounds(20000));
  f.has<&MassChange::arm>("arm", "Its arm")
      .needed("-38 in")
      .between(inches(-2000), inches(2000))
      .help("From the datum, behind it positive. Of a moved item: where it was.");
  f.has<&MassChange::to_arm>("to_arm", "New arm of a moved item")
      .between(inches(-2000), inches(2000));
  return "mass-change";
}

std::string_view describe(describe::Fields<Station>& f) {
  f.has<&Station::name>("name", "Station").needed("pilot").unique();
  f.has<&Station::arm>("arm", "Its arm").needed("16 in").between(inches(-2000), inches(2000));
  f.has<&Station::least>("least", "Always on board at least")
      .example("170 lb")
      .between(pounds(0), pounds(20000));
  f.has<&Station::most>("most", "At most").needed("170 lb").between(pounds(0), pounds(20000));
  f.has<&Station::fuel>("fuel", "It is a fuel tank");
  return "station";
}

std::string_view describe(describe::Fields<LoadedItem>& f) {
  f.has<&LoadedItem::station>("station", "Station").needed("pilot");
  f.has<&LoadedItem::mass>("mass", "Mass").needed("170 lb").between(pounds(0), pounds(20000));
  return "loaded-item";
}

std::string_view describe(describe::Fields<Loading>& f) {
  f.has<&Loading::name>("name", "Loading").needed("two up, full tanks");
  f.has<&Loading::items>("items", "On board").at_most(50);
  return "loading";
}

std::string_view describe(describe::Fields<MassBalanceInput>& f) {
  const auto far = inches(2000);
  f.has<&MassBalanceInput::empty_mass>("empty_mass", "Empty mass, from the last report")
      .needed("1169 lb")
      .above(pounds(0))
      .at_most(pounds(100000));
  f.has<&MassBalanceInput::empty_arm>("empty_arm", "Its centre of gravity")
      .needed("10.6 in")
      .between(inches(-2000), far);
  f.has<&MassBalanceInput::changes>("changes", "What comes, goes or is moved")
      .example(R"([{"what": "old starter", "kind": "removed", "mass": "18.0 lb", "arm": "-38 in"},
 {"what": "new starter", "kind": "added", "mass": "9.4 lb", "arm": "-38 in"}])")
      .at_most(200);
  f.has<&MassBalanceInput::not_yet_counted>("not_yet_counted",
                                            "Sum of earlier changes that were negligible")
      .between(pounds(-1000), pounds(1000));
  f.has<&MassBalanceInput::stations>("stations", "Stations")
      .example(R"([{"name": "oil", "arm": "-49 in", "least": "17 lb", "most": "17 lb"},
 {"name": "pilot", "arm": "16 in", "least": "170 lb", "most": "170 lb"},
 {"name": "rear seats", "arm": "48 in", "most": "340 lb"},
 {"name": "fuel", "arm": "22 in", "most": "240 lb", "fuel": true},
 {"name": "baggage", "arm": "75.5 in", "most": "100 lb"}])")
      .at_most(50);
  f.has<&MassBalanceInput::loadings>("loadings", "Loadings to look at").at_most(50);
  f.has<&MassBalanceInput::forward_limit>("forward_limit", "Forward limit")
      .example("8.5 in")
      .between(inches(-2000), far);
  f.has<&MassBalanceInput::aft_limit>("aft_limit", "Aft limit")
      .example("21.9 in")
      .between(inches(-2000), far);
  f.has<&MassBalanceInput::most_mass>("most_mass", "Greatest mass")
      .example("2100 lb")
      .above(pounds(0))
      .at_most(pounds(100000));
  f.has<&MassBalanceInput::power>("power", "METO power, for the minimum fuel")
      .example("165 hp")
      .above(quantity::Power{0})
      .at_most(quantity::Power{10000 * 745.69987158227022})  // 10,000 hp of 550 ft-lbf/s
      .help("The greatest power allowed without a time limit, take-off apart.");
  f.has<&MassBalanceInput::mac_leading_edge>("mac_leading_edge", "Leading edge of the mean chord")
      .between(inches(-2000), far);
  f.has<&MassBalanceInput::mac_length>("mac_length", "Length of the mean chord")
      .between(inches(5), inches(1500));
  return "mass-balance-input";
}

std::string_view describe(describe::Fields<LoadingAnswer>& f) {
  f.has<&LoadingAnswer::name>("name", "Loading");
  f.has<&LoadingAnswer::mass>("mass", "Mass");
  f.has<&LoadingAnswer::arm>("arm", "Centre of gravity");
  f.has<&LoadingAnswer::of_mac>("of_mac", "On the mean chord");
  f.has<&LoadingAnswer::within>("within", "Against the limits");
  f.has<&LoadingAnswer::in_words>("in_words", "In words");
  f.has<&LoadingAnswer::carried>("carried", "On board");
  return "loading-answer";
}

std::string_view describe(describe::Fields<MassBalanceAnswer>& f) {
  f.has<&MassBalanceAnswer::empty_mass>("empty_mass", "New empty mass");
  f.has<&MassBalanceAnswer::empty_arm>("empty_arm", "New centre of gravity, empty");
  f.has<&MassBalanceAnswer::empty_moment>("empty_moment", "New moment, empty");
  f.has<&MassBalanceAnswer::mass_change>("mass_change", "Change of empty mass");
  f.has<&MassBalanceAnswer::arm_change>("arm_change", "Shift of the centre of gravity");
  f.has<&MassBalanceAnswer::empty_of_mac>("empty_of_mac", "Empty, on the mean chord");
  f.has<&MassBalanceAnswer::negligible>("negligible", "Negligible change");
  f.has<&MassBalanceAnswer::change_in_words>("change_in_words", "The change in words");
  f.has<&MassBalanceAnswer::within>("within", "All loadings against the limits");
  f.has<&MassBalanceAnswer::in_words>("in_words", "In words");
  f.has<&MassBalanceAnswer::loadings>("loadings", "Loadings");
  f.has<&MassBalanceAnswer::working>("working", "The sum, step by step");
  return "mass-balance-answer";
}

void declare(describe::Catalogue& catalogue) {
  using namespace describe;
  for (const Table* table : tables::all_of_mechanics()) catalogue.add(*table);
  catalogue.add(calculation<&torque_setting>(
      "torque-setting", "What to set on the wrench: drag added, extension allowed for",
      {read("AC 43.13-1B CHG 1", "par. 7-40 and table 7-1"),
       read("TM 1-1500-204-23-9", "torque wrench attachments, figures 8-16 and 8-17"),
       read("TM 9-254", "figure 46, attachment at an angle")},
      {caution::wrong_torque, caution::defer}));
  catalogue.add(calculation<&mass_balance>(
      "mass-balance",
      "New empty mass and centre of gravity after a change, and the extreme loadings",
      {read("AC 43.13-1B CHG 1", "chapter 10, par. 10-2 and figures 10-10 to 10-13"),
       derived(
           "greatest pull on the centre of gravity within the greatest mass: stations filled in "
           "the order of their distance from the limit")},
      {caution::mass_and_balance, caution::defer}));
}

}  // namespace wm::mechanics
