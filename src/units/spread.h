// What a few measured numbers say of the next one.
#pragma once

#include <optional>
#include <vector>

namespace rimehaul::units {

/// Numbers measured one after another.
struct Spread {
  int count = 0;
  double mean = 0.0;
  double deviation = 0.0;  ///< standard deviation of the sample
  double low = 0.0;        ///< the next one is no less, with 95 % confidence
  double high = 0.0;       ///< the next one is no more, with 95 % confidence
};

/// Fewer numbers than this say nothing.
inline constexpr int kFewest = 5;

/// One-sided prediction limits of a normal sample: mean -+ t s sqrt(1 + 1/n), with Student's t of
/// 95 % and n - 1 degrees of freedom (table in NIST/SEMATECH, e-Handbook of Statistical Methods,
/// 1.3.6.7.2; for more than 20 degrees its value of 20, which is the more cautious). Nothing with
/// fewer than kFewest numbers, or one that is not finite.
[[nodiscard]] std::optional<Spread> spread_of(const std::vector<double>& numbers);

}  // namespace rimehaul::units
