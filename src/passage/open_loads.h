// Which loads open what is closed as the rig stands: judged load by load, because some ballast can
// be needed.
#pragma once

#include <utility>
#include <vector>

#include "passage/judge.h"

namespace rimehaul::passage {

/// An interval of load in whole kilograms, both ends judged and every judged step between them
/// open.
struct LoadInterval {
  units::Kilograms from;
  units::Kilograms to;

  friend bool operator==(const LoadInterval&, const LoadInterval&) = default;
};

/// Which load is varied.
enum class LoadPlace { bed, towed };

/// A bed load and a towed load that go together: every judged pair of the two intervals is open.
struct LoadPair {
  LoadInterval bed;
  LoadInterval towed;

  friend bool operator==(const LoadPair&, const LoadPair&) = default;
};

/// The question whether something is open for a rig whose load alone is another.
class OpenWith {
 public:
  virtual ~OpenWith() = default;
  [[nodiscard]] virtual bool operator()(const rig::Rig& rig) const = 0;
};

/// A function as such a question.
template <class Function>
class OpenIf final : public OpenWith {
 public:
  explicit OpenIf(Function function) : function_{std::move(function)} {}
  [[nodiscard]] bool operator()(const rig::Rig& rig) const override { return function_(rig); }

 private:
  Function function_;
};

/// What is varied, and in which steps; above 0 (OurFault otherwise).
struct LoadSteps {
  LoadPlace place = LoadPlace::bed;
  units::Kilograms each{25};
};

/// Loads between 0 and the rating for which something is open. Judged are every step, the rating's
/// last whole kilogram, and between a step that is open and one that is not every kilogram that
/// halving the gap asks for; nothing is assumed monotone, and what was not judged open is no end.
/// No interval when the rating is no mass or over 10 000 steps, or for towed loads without a
/// trailer.
[[nodiscard]] std::vector<LoadInterval> open_loads(const rig::Rig& rig, const LoadSteps& steps,
                                                   const OpenWith& open);

/// The loads that open something, printed with it when it is restricted to them.
struct OpenLoads {
  std::vector<LoadInterval> bed;    ///< the towed load as it stands
  std::vector<LoadInterval> towed;  ///< the bed load as it stands
  std::vector<LoadPair> both;       ///< at most one, asked for where neither alone opens it

  [[nodiscard]] bool any() const { return !bed.empty() || !towed.empty() || !both.empty(); }
  friend bool operator==(const OpenLoads&, const OpenLoads&) = default;
};

/// In steps of 25 kg, or a multiple of that so large that a rating has no more than 16 of them; for
/// both loads at once in steps twice as large, the pair of intervals that holds most judged pairs.
[[nodiscard]] OpenLoads loads_that_open(const rig::Rig& rig, const OpenWith& open);

/// Whether a check reads the load, or a speed that follows from it. Where one that does not closes,
/// no load needs to be tried. (Snow that changes while a heavier and slower rig is still on its way
/// could let such a check pass for a lighter one; not to try it leaves closed what is closed.)
[[nodiscard]] bool depends_on_load(Check check);
/// Whether some load may open what these findings close, decisions left aside: each that closes
/// depends on it.
[[nodiscard]] bool load_may_open(const std::vector<Finding>& findings, double allowed_share);

/// Whether a leg is open, or is once a named person has decided. Measures the ground once, as it
/// does not depend on the load; the judge must outlive it.
class LegOpenWith final : public OpenWith {
 public:
  LegOpenWith(const Judge& judge, trails::LegId leg, units::Instant entry);
  [[nodiscard]] bool operator()(const rig::Rig& rig) const override;

 private:
  const Judge* judge_;
  Stretch stretch_;
  std::vector<Footfall> ground_;
  units::Instant entry_;
};

struct PlaceOnStretch {
  const Stretch& stretch;
  const std::vector<Footfall>& footfalls;  ///< of all the stretch
  std::size_t footfall = 0;                ///< index of the one
};

/// Whether one place of a stretch is, likewise. Judge and place must outlive it.
class PlaceOpenWith final : public OpenWith {
 public:
  PlaceOpenWith(const Judge& judge, const PlaceOnStretch& place, units::Instant when);
  [[nodiscard]] bool operator()(const rig::Rig& rig) const override;

 private:
  const Judge* judge_;
  PlaceOnStretch place_;
  units::Instant when_;
};

/// The verdict with loads reckoned: closed as it stands, but open with some load, is restricted.
/// For people only: a search drives nothing on the strength of a load that the rig does not carry.
[[nodiscard]] Verdict verdict_with_loads(Verdict as_it_stands, const OpenLoads& loads);

}  // namespace rimehaul::passage
