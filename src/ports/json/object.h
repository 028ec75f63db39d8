// A JSON object being filled: the one place where values become JSON.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "geo/point.h"

namespace rimehaul::ports::json {

enum class Truth { no, yes };

/// Keys are kept sorted by byte. What is not known is written as null, never as NaN, and its key is
/// told in the list "missing" of the same object.
class Object {
 public:
  Object();
  ~Object();
  Object(const Object& other);
  Object& operator=(const Object& other);
  Object(Object&&) noexcept;
  Object& operator=(Object&&) noexcept;

  /// A number in the unit that the key ends with; not finite is null.
  Object& number(std::string_view key, double value);
  Object& number(std::string_view key, std::optional<double> value);
  Object& whole(std::string_view key, std::int64_t value);
  Object& text(std::string_view key, std::string_view value);
  Object& texts(std::string_view key, const std::vector<std::string>& values);
  Object& truth(std::string_view key, Truth value);
  Object& object(std::string_view key, const Object& value);
  Object& list(std::string_view key, const std::vector<Object>& values);
  /// A GeoJSON position (RFC 7946, 3.1.1): longitude, latitude; to 7 decimals, a centimetre or so.
  Object& position(std::string_view key, geo::GlobePoint place);
  Object& positions(std::string_view key, const std::vector<geo::GlobePoint>& places);
  /// Null, and the key among "missing".
  Object& unknown(std::string_view key);
  /// One more entry of "missing", in words.
  Object& missing(std::string_view words);

  /// Canonical: UTF-8, keys sorted, no white space, numbers in a short form that reads back the
  /// same. Bytes that are no UTF-8 become U+FFFD.
  [[nodiscard]] std::string bytes() const;

 private:
  struct Tree;
  std::unique_ptr<Tree> tree_;
};

}  // namespace rimehaul::ports::json
