#pragma once
/// Incoming check: an assembly as it came, or as it was made, against its order.

#include <optional>
#include <string>
#include <vector>

#include "hose/criterion.hpp"
#include "hose/order.hpp"

namespace wm::hose {

struct HoseIncomingInput {
  HoseOrderInput ordered;
  std::optional<quantity::Measured<quantity::Length>> overall;
  std::optional<quantity::Measured<quantity::Angle>> clocking;
  Seen near_end_as_ordered{Seen::not_looked};  ///< form, thread and seat
  Seen far_end_as_ordered{Seen::not_looked};
  Seen ball_passes{Seen::not_looked};  ///< by its own weight, from end to end
  Seen tag_there{Seen::not_looked};
  Seen tag_test_date{Seen::not_looked};
  std::optional<EnteredPressure> tag_proof;
  Seen cure_and_assembly_date{Seen::not_looked};
  Seen capped{Seen::not_looked};
  Seen layline_straight{Seen::not_looked};
  Seen undamaged{Seen::not_looked};
  std::optional<quantity::Measured<quantity::Length>> sleeve_near;  ///< past the socket
  std::optional<quantity::Measured<quantity::Length>> sleeve_far;
  std::optional<quantity::Measured<quantity::Current>> liner_current;  ///< at 1000 V d.c., 18 in
};

struct HoseIncomingAnswer {
  evidence::Verdict verdict{evidence::Verdict::not_tested};
  std::string in_words;
  std::vector<std::string> do_next;
  std::vector<Criterion> lines;
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

/// Each line by guarded acceptance: the uncertainty of tape and protractor is the guard band.
/// Conforms only when every line that was ordered was looked at and conforms.
///
/// @return every problem of the order, below "ordered/"; conflict (a clocking of a straight end, a
///         sleeve where none was ordered)
/// @source JCGM 106:2012 (from memory, unconfirmed); clocking: MIL-DTL-83796/5 fig. 3; bore check:
///         MIL-DTL-8789F 4.9.2; liner current: secondary, unconfirmed, advice only
[[nodiscard]] Checked<HoseIncomingAnswer> hose_incoming(const HoseIncomingInput& input,
                                                        const describe::Context& context);

std::string_view describe(describe::Fields<HoseIncomingInput>& f);
std::string_view describe(describe::Fields<HoseIncomingAnswer>& f);

}  // namespace wm::hose
