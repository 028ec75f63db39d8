#include "base/one_line.h"

namespace rimehaul::base {

namespace {

struct Bounds {
  unsigned char least;
  unsigned char most;
};

bool within(unsigned char byte, Bounds bounds) {
  return bounds.least <= byte && byte <= bounds.most;
}

/// How many bytes of the text's beginning are one control; 0: none.
std::size_t control_at_start(std::string_view text) {
  const auto byte = [text](std::size_t at) {
    return at < text.size() ? static_cast<unsigned char>(text[at]) : static_cast<unsigned char>(0);
  };
  if (within(byte(0), {0x00, 0x1f}) || byte(0) == 0x7f) {
    return 1;
  }
  if (byte(0) == 0xc2 && within(byte(1), {0x80, 0x9f})) {
    return 2;
  }
  const bool turns_or_breaks =
      byte(0) == 0xe2 && ((byte(1) == 0x80 && within(byte(2), {0xa8, 0xae})) ||
                          (byte(1) == 0x81 && within(byte(2), {0xa6, 0xa9})));
  return turns_or_breaks ? 3 : 0;
}

}  // namespace

bool has_controls(std::string_view text) {
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (control_at_start(text.substr(at)) > 0) {
      return true;
    }
  }
  return false;
}

bool is_one_line(std::string_view text) {
  constexpr std::size_t kMostBytes = 200;
  return text.find_first_not_of(' ') != std::string_view::npos && text.size() <= kMostBytes &&
         !has_controls(text);
}

std::string one_line(std::string_view text) {
  std::string line;
  line.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t control = control_at_start(text.substr(at));
    line += control > 0 ? ' ' : text[at];
    at += control > 0 ? control : 1;
  }
  return line;
}

}  // namespace rimehaul::base
