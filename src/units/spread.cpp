#include "units/spread.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

namespace rimehaul::units {

namespace {

/// Student's t, 95 % on one side, for 4 to 20 degrees of freedom; rounded up in the third decimal.
constexpr std::array<double, 17> kStudent{2.132, 2.016, 1.944, 1.895, 1.860, 1.834,
                                          1.813, 1.796, 1.783, 1.771, 1.762, 1.754,
                                          1.746, 1.740, 1.735, 1.730, 1.725};

double student(std::size_t degrees) {
  constexpr std::size_t kFirst = kFewest - 1;
  return kStudent.at(std::min(degrees - kFirst, kStudent.size() - 1));
}

}  // namespace

std::optional<Spread> spread_of(const std::vector<double>& numbers) {
  const bool enough = numbers.size() >= static_cast<std::size_t>(kFewest);
  if (!enough || !std::ranges::all_of(numbers, [](double x) { return std::isfinite(x); })) {
    return std::nullopt;
  }
  const auto count = static_cast<double>(numbers.size());
  const double mean = std::accumulate(numbers.begin(), numbers.end(), 0.0) / count;
  double squares = 0.0;
  for (const double number : numbers) {
    squares += (number - mean) * (number - mean);
  }
  const double deviation = std::sqrt(squares / (count - 1.0));
  const double reach = student(numbers.size() - 1) * deviation * std::sqrt(1.0 + 1.0 / count);
  return Spread{static_cast<int>(numbers.size()), mean, deviation, mean - reach, mean + reach};
}

}  // namespace rimehaul::units
