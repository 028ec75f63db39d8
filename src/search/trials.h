// Legs and turns judged for other loads, without the trailer, and in other snow; each once.
#pragma once

#include <bitset>
#include <map>
#include <memory>
#include <optional>
#include <vector>

#include "passage/remembering_judge.h"
#include "search/usable.h"

namespace rimehaul::search {

/// A leg, or the turn into it, at the hour at which it is entered.
struct Place {
  trails::LegId leg{};
  std::optional<trails::LegId> turn_from;
  units::Instant entry;

  friend auto operator<=>(const Place&, const Place&) = default;
};

/// Every leg and turn of a way, as if each were entered at one hour.
[[nodiscard]] std::vector<Place> places_along(const std::vector<trails::LegId>& way,
                                              units::Instant entry);

enum class Trailer { left_behind, hitched };

/// What is on the rig, and the snow where it is not the day's own.
struct Trial {
  units::Kilograms bed;
  units::Kilograms towed;
  Trailer trailer = Trailer::left_behind;
  std::optional<snow::SnowState> snow{};

  friend auto operator<=>(const Trial&, const Trial&) = default;
};

using Checks = std::bitset<passage::kCheckCount>;

/// Whether each of these checks depends on the load, so that another one may lift it.
[[nodiscard]] bool load_may_lift(const Checks& closing);

/// How a trial came out: which checks close the place, and which ask for a decision that nobody
/// has taken.
struct Outcome {
  Checks closed;
  Checks asks;
};

/// Remembers what it has judged: the same trial answers for a leg, for a cause and for a whole way.
class Trials {
 public:
  /// Holds a reference: the judge must outlive it.
  Trials(const passage::Judge& judge, Permission permission);

  [[nodiscard]] Trial as_it_stands() const;
  /// The trial that a rig differing from the judge's in its load alone, or in having no trailer,
  /// stands for.
  [[nodiscard]] static Trial trial_of(const rig::Rig& rig);

  const Outcome& outcome(const Place& place, const Trial& trial);
  /// All checks that close any of these places.
  [[nodiscard]] Checks closing(const std::vector<Place>& places, const Trial& trial);
  /// What is asked at all of these places together, up to and with the first that is closed.
  [[nodiscard]] Outcome outcome_along(const std::vector<Place>& places, const Trial& trial);
  /// Everything that does not pass as it stands, in order of Check.
  [[nodiscard]] std::vector<passage::Finding> not_passing(const Place& place);
  /// The judge of a trial, for a search of its own. Holds references: this must outlive it.
  [[nodiscard]] passage::RememberingJudge judge_of(const Trial& trial);

 private:
  struct Variant;

  const Variant& variant_for(const Trial& trial);
  [[nodiscard]] std::vector<passage::Finding> findings(const Place& place, const Trial& trial);

  const passage::Judge* judge_;
  Permission permission_;
  std::map<Trial, std::shared_ptr<const Variant>> variants_;
  std::map<Trailer, passage::GroundMemory> ground_;
  std::map<std::pair<Place, Trial>, Outcome> outcomes_;
};

}  // namespace rimehaul::search
