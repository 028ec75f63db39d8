#include "ports/gdal/rounded_heights.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <utility>
#include <vector>

#include "units/slope.h"

namespace rimehaul::ports::gdal {

namespace {

std::string decimals(double value, const char* form) {
  std::array<char, 48> text{};
  std::snprintf(text.data(), text.size(), form, value);
  return text.data();
}

std::string metres_text(units::Metres length) {
  return decimals(length.value(), "%.4g m");
}

/// Rounded up: it is a bound.
std::string degrees_text(units::Slope slope) {
  return decimals(std::ceil(slope.degrees() * 10.0) / 10.0, "%.1f");
}

constexpr std::size_t kFewest = 64;
constexpr std::int64_t kWindow = 48;

bool are_multiples(std::span<const double> values, double step) {
  // 32-bit numbers carry a height of 4000 to a 4000th of a unit.
  constexpr double kOff = 1e-3;
  return std::ranges::all_of(values, [&](double value) {
    return std::abs(value - std::round(value / step) * step) <= kOff;
  });
}

/// Which of three columns and rows of windows.
struct Third {
  int along = 0;
  int down = 0;
};

terrain::CellWindow sampled(const RasterFile& file, Third third) {
  const auto cut = [](std::int64_t size, int which) {
    const std::int64_t kept = std::min(size, kWindow);
    return std::pair{(size - kept) * which / 2, kept};
  };
  const auto [column, columns] = cut(file.size().column, third.along);
  const auto [row, rows] = cut(file.size().row, third.down);
  return {{column, row}, {columns, rows}};
}

}  // namespace

std::optional<double> step_of(std::span<const double> values) {
  // Values that hardly differ would pass for multiples of almost anything.
  const auto differs = [&](double value) { return value != values.front(); };
  if (values.size() < kFewest || std::ranges::count_if(values, differs) < 16) {
    return std::nullopt;
  }
  constexpr std::array<double, 11> kSteps{100, 50, 20, 10, 5, 2, 1, 0.5, 0.25, 0.2, 0.1};
  const auto* const found =
      std::ranges::find_if(kSteps, [&](double step) { return are_multiples(values, step); });
  return found == kSteps.end() ? std::nullopt : std::optional{*found};
}

std::optional<units::Metres> quantum_of(const RasterFile& file) {
  std::vector<double> values;
  for (const int down : {0, 1, 2}) {
    for (const int along : {0, 1, 2}) {
      for (const double height_m : file.read(sampled(file, {along, down}))) {
        if (!std::isnan(height_m)) {
          values.push_back(height_m / file.metres_per_unit());
        }
      }
    }
  }
  const std::optional<double> step = step_of(values);
  return step.has_value() ? std::optional{units::Metres{*step * file.metres_per_unit()}}
                          : std::nullopt;
}

std::optional<Complaint> complaint_of_steps(const RoundedOn& heights) {
  if (!heights.quantum.has_value()) {
    return std::nullopt;
  }
  // One step of the heights from one cell to the next: how far a slope between two may be off.
  const units::Slope off = units::Slope::from_ratio(*heights.quantum / heights.cell);
  if (off <= units::Slope::from_degrees(1.0)) {
    return std::nullopt;
  }
  return Complaint{"the heights look rounded to " + metres_text(*heights.quantum) +
                       ", so that slopes from cell to cell may be off by up to " +
                       degrees_text(off) + " degrees",
                   "use heights that were not rounded; until then every slope bears that error"};
}

}  // namespace rimehaul::ports::gdal
