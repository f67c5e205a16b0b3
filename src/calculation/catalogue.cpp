#include "calculation/catalogue.hpp"

#include "electrics/declarations.hpp"
#include "evidence/declarations.hpp"
#include "hose/declarations.hpp"
#include "ignition/declarations.hpp"
#include "life/declarations.hpp"
#include "mechanics/declarations.hpp"
#include "reliability/declarations.hpp"
#include "staging/declarations.hpp"

namespace wm::calculation {

const describe::Catalogue& catalogue() {
  static const describe::Catalogue all = [] {
    describe::Catalogue made;
    evidence::declare(made);
    life::declare(made);
    mechanics::declare(made);
    hose::declare(made);
    ignition::declare(made);
    electrics::declare(made);
    staging::declare(made);
    reliability::declare(made);
    return made;
  }();
  return all;
}

}  // namespace wm::calculation
