// Additive quantities: one number each, of one unit each, that do not mix.
#pragma once

#include <compare>

namespace rimehaul::units {

/// A quantity of the unit that `Tag` names. Adds to its own kind only; scales by plain numbers.
template <class Tag>
class Quantity {
 public:
  constexpr Quantity() = default;
  constexpr explicit Quantity(double value) : value_{value} {}

  /// The number, in the unit the type is named after.
  [[nodiscard]] constexpr double value() const { return value_; }

  constexpr Quantity& operator+=(Quantity other) {
    value_ += other.value_;
    return *this;
  }
  constexpr Quantity& operator-=(Quantity other) {
    value_ -= other.value_;
    return *this;
  }

  friend constexpr Quantity operator+(Quantity lhs, Quantity rhs) {
    return Quantity{lhs.value_ + rhs.value_};
  }
  friend constexpr Quantity operator-(Quantity lhs, Quantity rhs) {
    return Quantity{lhs.value_ - rhs.value_};
  }
  friend constexpr Quantity operator-(Quantity a) { return Quantity{-a.value_}; }
  friend constexpr Quantity operator*(Quantity a, double factor) {
    return Quantity{a.value_ * factor};
  }
  friend constexpr Quantity operator*(double factor, Quantity a) {
    return Quantity{a.value_ * factor};
  }
  friend constexpr Quantity operator/(Quantity a, double divisor) {
    return Quantity{a.value_ / divisor};
  }
  friend constexpr double operator/(Quantity lhs, Quantity rhs) { return lhs.value_ / rhs.value_; }

  friend constexpr auto operator<=>(Quantity, Quantity) = default;

 private:
  double value_ = 0.0;
};

}  // namespace rimehaul::units
