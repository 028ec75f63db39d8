#include "ports/gdal/point_blob.h"

#include <bit>
#include <cmath>
#include <cstddef>

namespace rimehaul::ports::gdal {

namespace {

/// The header: "GP", version 0, flags: little end first, no envelope, not empty.
constexpr std::string_view kMagic{"GP\0\1", 4};
/// Well-known binary: little end first, type 1.
constexpr std::string_view kPoint{"\1\1\0\0\0", 5};
constexpr std::size_t kPointAt = 8;
constexpr std::size_t kEastAt = kPointAt + 5;
constexpr std::size_t kNorthAt = kEastAt + 8;
constexpr std::size_t kSize = kNorthAt + 8;

void append(std::string& bytes, std::uint64_t number, int count) {
  for (int i = 0; i < count; ++i) {
    bytes += static_cast<char>(number & 0xffU);
    number >>= 8U;
  }
}

double number_at(std::string_view bytes, std::size_t at) {
  std::uint64_t number = 0;
  for (std::size_t i = 8; i > 0; --i) {
    number = (number << 8U) | static_cast<unsigned char>(bytes[at + i - 1]);
  }
  return std::bit_cast<double>(number);
}

}  // namespace

std::string point_blob(geo::MapPoint point, ReferenceNumber frame) {
  std::string bytes{kMagic};
  append(bytes, static_cast<std::uint64_t>(frame.value), 4);
  bytes += kPoint;
  append(bytes, std::bit_cast<std::uint64_t>(point.east.value()), 8);
  append(bytes, std::bit_cast<std::uint64_t>(point.north.value()), 8);
  return bytes;
}

std::optional<geo::MapPoint> parse_point_blob(std::string_view blob) {
  if (blob.size() != kSize || !blob.starts_with(kMagic) ||
      blob.substr(kPointAt, kPoint.size()) != kPoint) {
    return std::nullopt;
  }
  const double east_m = number_at(blob, kEastAt);
  const double north_m = number_at(blob, kNorthAt);
  if (!std::isfinite(east_m) || !std::isfinite(north_m)) {
    return std::nullopt;
  }
  return geo::MapPoint{units::Metres{east_m}, units::Metres{north_m}};
}

}  // namespace rimehaul::ports::gdal
