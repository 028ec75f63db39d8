// What one check found at one place: demand against capacity, and what they were made of.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "base/require.h"
#include "passage/check.h"
#include "units/amount.h"

namespace rimehaul::passage {

/// Where an input of a finding came from.
enum class Origin {
  heights,
  trail,
  rig_sheet,
  load,
  grip,
  rules,
  snow_report,
  mark,
  physics,
  derived
};

/// One number that went into a finding, by the symbol of the check's page. The name is constant
/// text.
struct Input {
  std::string_view name;
  units::Amount value;
  Origin origin = Origin::derived;
};

/// A short list of inputs that needs no memory of its own: findings are made by the million.
class Inputs {
 public:
  /// Adds one; requires that there is room (kMost).
  Inputs& add(std::string_view name, units::Amount value, Origin origin) {
    if (count_ >= kMost) {
      base::require(/*holds=*/false, "a finding has room for no more than Inputs::kMost inputs");
    }
    // One by one: copied as a whole, each would first be put together elsewhere and read back.
    Input& next = items_[count_];
    next.name = name;
    next.value = value;
    next.origin = origin;
    ++count_;
    return *this;
  }
  [[nodiscard]] std::span<const Input> all() const { return {items_.data(), count_}; }

  static constexpr std::size_t kMost = 14;

 private:
  std::array<Input, kMost> items_{};
  std::size_t count_ = 0;
};

/// How a finding stands against an allowed share.
enum class Stand {
  passes,   ///< share known, at or under the allowed share
  asks,     ///< would pass once a named person has taken a decision
  exceeds,  ///< share known, over the allowed share
  refused,  ///< a rule, rating or mark says no, whatever the load
  missing,  ///< something needed is not known
};

/// What a finding is: a share of a limit, or a rule that is kept or not and has no share.
enum class Measure { share, rule };

/// Fuel aboard that a finding came out worst with.
enum class Tank { as_loaded, empty };

/// One check at one place.
struct Finding {
  Check check = Check::heights_known;
  Measure measure = Measure::share;
  units::Amount demand;  ///< of a rule: what must not exceed `capacity`, where it compares numbers
  units::Amount capacity;
  std::optional<double> share;  ///< demand / capacity; of a rule that is kept 0; nothing: closed
  std::string_view how;         ///< constant text: how a rule is kept where it compares no numbers
  std::string_view formula;     ///< constant text: where it is not the check's own
  Tank tank = Tank::as_loaded;
  std::string missing;  ///< what is not known; not empty: closed
  std::string refused;  ///< who or what says no; not empty: closed
  std::string asks;     ///< the decision that the site's rules ask for
  units::Metres at;     ///< chainage of the place along the stretch judged
  Inputs inputs;
};

/// A finding from demand and capacity. Capacity not above 0, or anything not finite: no share and
/// `missing` or `refused` says so. Otherwise demand not above 0: share 0.
[[nodiscard]] Finding compare(Check check, units::Amount demand, units::Amount capacity);
[[nodiscard]] Finding unknown(Check check, std::string what_is_missing);
[[nodiscard]] Finding refusal(Check check, std::string why);
/// A rule that is kept: share 0. `how`, constant text, tells by what where no numbers do.
[[nodiscard]] Finding kept(Check check, std::string_view how = "");
/// A rule that compares numbers: kept where demand <= capacity is proven, else refused. A demand
/// that is no number is never proven.
[[nodiscard]] Finding held_to(Check check, units::Amount demand, units::Amount capacity,
                              std::string why_refused);

/// Passes only if proven.
[[nodiscard]] Stand stand_of(const Finding& finding, double allowed_share);

/// Whether `a` binds before `b`: missing, then refused, then no share, then the larger share, then
/// a decision asked for. Of equals, the earlier place.
[[nodiscard]] bool binds_before(const Finding& a, const Finding& b);

/// Whether neither binds before the other but for its place, and `a` alone shows numbers.
[[nodiscard]] bool tells_more(const Finding& a, const Finding& b);

}  // namespace rimehaul::passage
