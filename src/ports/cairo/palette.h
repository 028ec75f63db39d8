// The colours of everything printed. Colour comes second: lines tell verdicts apart without it.
#pragma once

namespace rimehaul::ports::cairo {

/// Red, green and blue from 0 to 1.
struct Colour {
  double red = 0.0;
  double green = 0.0;
  double blue = 0.0;
};

/// From the usual six digits.
constexpr Colour colour_of(unsigned rgb) {
  return {static_cast<double>((rgb >> 16U) & 0xffU) / 255.0,
          static_cast<double>((rgb >> 8U) & 0xffU) / 255.0,
          static_cast<double>(rgb & 0xffU) / 255.0};
}

inline constexpr Colour kInk = colour_of(0x1f2430);
inline constexpr Colour kPaper = colour_of(0xffffff);
inline constexpr Colour kQuiet = colour_of(0x6b7280);  ///< for what is only beside the matter
inline constexpr Colour kHair = colour_of(0xb9bfc9);   ///< thin rules
inline constexpr Colour kIce = colour_of(0xe8f1f2);
inline constexpr Colour kOpen = colour_of(0x1b6e6a);
inline constexpr Colour kRestricted = colour_of(0xb7791f);
inline constexpr Colour kClosed = colour_of(0x7a1f5c);
inline constexpr Colour kUnknown = colour_of(0x8a8f98);

/// Colour of a share: pale ice at 0, teal just under the allowed share, plum from just over it.
/// Grey when there is none.
struct ShareScale {
  double allowed = 0.7;
};
[[nodiscard]] Colour colour_of(double share, ShareScale scale);

}  // namespace rimehaul::ports::cairo
