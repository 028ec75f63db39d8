#include "base/digest.h"

namespace rimehaul::base {

namespace {

constexpr std::string_view kDigits = "0123456789abcdef";

}  // namespace

std::string Digest::hex() const {
  std::string text;
  text.reserve(2 * bytes.size());
  for (const std::uint8_t byte : bytes) {
    text += kDigits[byte >> 4U];
    text += kDigits[byte & 0x0fU];
  }
  return text;
}

std::optional<Digest> parse_digest(std::string_view hex) {
  Digest digest;
  if (hex.size() != 2 * digest.bytes.size()) {
    return std::nullopt;
  }
  for (std::size_t i = 0; i < hex.size(); ++i) {
    const std::size_t value = kDigits.find(hex[i]);
    if (value == std::string_view::npos) {
      return std::nullopt;
    }
    std::uint8_t& byte = digest.bytes[i / 2];
    byte = static_cast<std::uint8_t>((std::size_t{byte} << 4U) | value);
  }
  return digest;
}

}  // namespace rimehaul::base
