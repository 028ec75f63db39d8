// The SHA-256 of something, as a value. Computing one is a port's business.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace rimehaul::base {

/// 32 bytes of SHA-256 (FIPS 180-4).
struct Digest {
  std::array<std::uint8_t, 32> bytes{};

  /// 64 lower-case hexadecimal digits.
  [[nodiscard]] std::string hex() const;

  friend auto operator<=>(const Digest&, const Digest&) = default;
};

/// Reads 64 lower-case hexadecimal digits. Nothing when they are none.
[[nodiscard]] std::optional<Digest> parse_digest(std::string_view hex);

}  // namespace rimehaul::base
