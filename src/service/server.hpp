#pragma once
/// The HTTP door: the web page and its JSON API on one open binder. It decides and computes
/// nothing: it checks who asks, hands the question on, and puts the answer into HTTP.

#include <functional>
#include <string>

#include "binder/binder.hpp"

namespace wm::service {

struct Settings {
  std::string host{"127.0.0.1"};        ///< address to listen on; loopback unless told otherwise
  int port{8480};                       ///< 0: any free one
  std::function<binder::Now()> clock;   ///< asked once a request
  std::function<bool()> stop_wanted{};  ///< asked many times a second; true ends serve()
  quantity::UnitSet units{quantity::UnitSet::us_customary};
  bool quiet{};  ///< faults of the machine are not written to standard error
};

/// Serve until `stop_wanted` says so. Blocks.
///
/// @param ready  told the address of the page once somebody who asks would get an answer
/// @return 0 once stopped, or `Kind::conflict`: the port is in use; `Kind::refused`: this user may
///         not listen there; `Kind::not_found`: this machine has no such address;
///         `Kind::out_of_bounds`: no such port.
/// @pre `clock` is set.
[[nodiscard]] Result<int> serve(binder::Binder& binder, const Settings& settings,
                                const std::function<void(const std::string& address)>& ready);

}  // namespace wm::service
