#include "evidence/declarations.hpp"

#include "evidence/conformity.hpp"
#include "evidence/meter_uncertainty.hpp"
#include "evidence/reading_trend.hpp"

namespace wm::evidence {

void declare(describe::Catalogue& catalogue) {
  using describe::calculation;
  using describe::common_practice;
  using describe::from_memory;
  using describe::secondary;
  using describe::Source;
  const Source gum = from_memory("JCGM 100:2008 (the GUM)",
                                 "4.2, 4.3.7, F.2.2.1, 5.1.2, G.4; examples H.1 and H.2 checked");
  catalogue.add(calculation<&meter_uncertainty>(
      "meter-uncertainty", "How well a reading is known, from the accuracy of the meter",
      {gum, common_practice("accuracy as per cent of reading plus counts of the last digit, taken "
                            "as bounds with nothing else known")},
      {describe::caution::defer}));
  catalogue.add(calculation<&conformity>(
      "conformity", "Judge a reading against its limit, with the meter's doubt counted",
      {from_memory("JCGM 106:2012", "7 to 9; the bearing case 9.5.4 checked"),
       secondary("ILAC-G8:09/2019", "par. 4.2, read in extract"), gum},
      {describe::caution::defer}));
  catalogue.add(calculation<&reading_trend>(
      "reading-trend", "Whether a reading drifts or jumped, and when it would meet its limit",
      {from_memory("Sen (1968); Mann (1945)",
                   "slope and test of a trend by ranks; R results checked"),
       from_memory("Hodges and Lehmann (1963); Mann and Whitney (1947)",
                   "shift of two groups by ranks; scipy results checked"),
       from_memory("Pettitt (1979)", "place of a jump in a run; p by shuffling here")},
      {describe::caution::defer}));
}

}  // namespace wm::evidence
