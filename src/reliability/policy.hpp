#pragma once
/// "renewal-age", "inspection-interval" and "failure-trend".

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "describe/catalogue.hpp"
#include "quantity/text.hpp"

namespace wm::reliability {

enum class RenewalRule : std::uint8_t {
  by_age,         ///< each part at its own age
  all_at_a_time,  ///< all at fixed times, failures renewed in between
  minimal_repair  ///< at fixed times, failures mended in between as if nothing had happened
};

struct RenewalAgeInput {
  RenewalRule rule{RenewalRule::by_age};
  double shape{2.0};
  quantity::Duration scale;
  double planned_cost{};
  double failure_cost{};
  /// Chance that the renewal itself brings a fault in, and what that costs.
  quantity::Fraction job_fault_chance;
  double job_fault_cost{};
};
struct RenewalAgeAnswer {
  bool pays{};  ///< renewing before failure costs less than waiting for it
  std::optional<quantity::Duration> renew_at;
  double cost_per_hour{};
  std::optional<double> never_renewed_per_hour;
  std::optional<quantity::Fraction> saving;
  std::optional<quantity::Fraction> survives_to_it;
  std::string in_words;
  std::vector<std::string> working;
};
/// By age: least [c_p R(T) + c_f F(T)] / integral of R; a shape of 1 or less never pays.
/// The chance that the job itself brings a fault in is added to both costs.
/// @return conflict where a failure costs no more than a renewal
[[nodiscard]] Checked<RenewalAgeAnswer> renewal_age(const RenewalAgeInput& input,
                                                    const describe::Context& context);
/// Expected renewals in (0, t], by midpoint Riemann-Stieltjes recursion. @pre steps > 0
[[nodiscard]] std::vector<double> renewals(double shape, double scale, double t, int steps);

enum class InspectionRule : std::uint8_t { warning_time, delay_time };
struct InspectionIntervalInput {
  InspectionRule rule{InspectionRule::warning_time};
  quantity::Fraction detection{0.9};          ///< chance that one inspection finds it
  std::optional<quantity::Duration> warning;  ///< from first visible to failed
  quantity::Fraction accepted_miss{0.01};
  std::optional<double> defects_per_hour;
  std::optional<quantity::Duration> mean_delay;  ///< exponential, from visible to failed
  std::optional<double> inspection_cost;
  std::optional<double> repair_cost;
  std::optional<double> failure_cost;
};
struct InspectionIntervalAnswer {
  quantity::Duration interval;
  std::optional<std::int64_t> inspections_in_warning;
  quantity::Fraction missed;  ///< share of defects that become failures
  std::optional<double> cost_per_hour;
  std::string in_words;
  std::vector<std::string> notes;
  std::vector<std::string> working;
};
/// Warning time: I = warning / n, n = ln(accepted) / ln(1 - detection), rounded up.
/// Delay time: least [c_i + k T (c_f b + c_r (1 - b))] / T.
[[nodiscard]] Checked<InspectionIntervalAnswer> inspection_interval(
    const InspectionIntervalInput& input, const describe::Context& context);
/// Share of defects that become failures, exponential delay, inspections every T.
[[nodiscard]] double missed_share(double interval, double mean_delay, double detection);

struct GroupedCount {
  quantity::Duration until;
  std::int64_t failures{};
};
struct FailureTrendInput {
  std::vector<quantity::Duration> times;    ///< since the record began, of one system
  std::optional<quantity::Duration> until;  ///< end of the record; empty: it ends at the last
  std::vector<GroupedCount> grouped;        ///< instead of times
  quantity::Fraction confidence{0.9};
  quantity::Duration next{quantity::hours(100)};
};
struct FailureTrendAnswer {
  double shape{};  ///< below 1: fewer with time
  std::optional<double> shape_low;
  std::optional<double> shape_high;
  std::optional<double> shape_unbiased;
  double rate_factor{};  ///< of N(t) = factor x t^shape, t in hours
  double rate_now{};     ///< failures an hour at the end
  quantity::Duration between_failures;
  std::optional<double> laplace;
  std::optional<double> trend_statistic;
  std::optional<quantity::Fraction> fewer_p;  ///< chance of so strong an improvement by accident
  std::optional<quantity::Fraction> more_p;
  std::optional<double> misfit;  ///< Cramer-von Mises
  double expected_next{};
  std::string in_words;
  std::vector<std::string> notes;
  std::vector<std::string> working;
};
/// Power-law process of a system that is repaired in place: E N(t) = factor x t^shape.
/// @return missing, conflict (times after the end), not_applicable (fewer than two failures)
[[nodiscard]] Checked<FailureTrendAnswer> failure_trend(const FailureTrendInput& input,
                                                        const describe::Context& context);

std::string_view describe(describe::Choices<RenewalRule>& c);
std::string_view describe(describe::Choices<InspectionRule>& c);
std::string_view describe(describe::Fields<RenewalAgeInput>& f);
std::string_view describe(describe::Fields<RenewalAgeAnswer>& f);
std::string_view describe(describe::Fields<InspectionIntervalInput>& f);
std::string_view describe(describe::Fields<InspectionIntervalAnswer>& f);
std::string_view describe(describe::Fields<GroupedCount>& f);
std::string_view describe(describe::Fields<FailureTrendInput>& f);
std::string_view describe(describe::Fields<FailureTrendAnswer>& f);

}  // namespace wm::reliability
