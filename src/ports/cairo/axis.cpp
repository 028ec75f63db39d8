#include "ports/cairo/axis.h"

#include <cmath>

namespace rimehaul::ports::cairo {

std::vector<double> marked_values(const Ends& ends, double step) {
  constexpr double kRounding = 1e-9;
  const double first = std::ceil(ends.from / step - kRounding);
  const double last = std::floor(ends.to / step + kRounding);
  const bool finite = std::isfinite(first) && std::isfinite(last);
  if (!(step > 0.0) || !finite || last < first) {
    return {};
  }
  std::vector<double> values(static_cast<std::size_t>(last - first) + 1);
  for (std::size_t i = 0; i < values.size(); ++i) {
    values[i] = (first + static_cast<double>(i)) * step;
  }
  return values;
}

}  // namespace rimehaul::ports::cairo
