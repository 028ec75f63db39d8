#include "ports/json/object.h"

#include <cmath>
#include <nlohmann/json.hpp>
#include <utility>

namespace rimehaul::ports::json {

struct Object::Tree {
  nlohmann::json value = nlohmann::json::object();
};

namespace {

nlohmann::json position_of(geo::GlobePoint place) {
  constexpr double kSevenDecimals = 1e7;
  const auto rounded = [](double degrees) {
    return std::round(degrees * kSevenDecimals) / kSevenDecimals + 0.0;
  };
  return nlohmann::json::array({rounded(place.longitude_deg), rounded(place.latitude_deg)});
}

}  // namespace

Object::Object() : tree_{std::make_unique<Tree>()} {}
Object::~Object() = default;
Object::Object(const Object& other) : tree_{std::make_unique<Tree>(*other.tree_)} {}
Object& Object::operator=(const Object& other) {
  if (this != &other) {
    tree_ = std::make_unique<Tree>(*other.tree_);
  }
  return *this;
}
Object::Object(Object&&) noexcept = default;
Object& Object::operator=(Object&&) noexcept = default;

Object& Object::number(std::string_view key, double value) {
  if (!std::isfinite(value)) {
    return unknown(key);
  }
  // Adding 0 turns -0 into 0, so that equal numbers give equal bytes.
  tree_->value[std::string{key}] = value + 0.0;
  return *this;
}

Object& Object::number(std::string_view key, std::optional<double> value) {
  return value ? number(key, *value) : unknown(key);
}

Object& Object::whole(std::string_view key, std::int64_t value) {
  tree_->value[std::string{key}] = value;
  return *this;
}

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): a key and its text
Object& Object::text(std::string_view key, std::string_view value) {
  tree_->value[std::string{key}] = std::string{value};
  return *this;
}

Object& Object::texts(std::string_view key, const std::vector<std::string>& values) {
  tree_->value[std::string{key}] = values;
  return *this;
}

Object& Object::truth(std::string_view key, Truth value) {
  tree_->value[std::string{key}] = value == Truth::yes;
  return *this;
}

Object& Object::object(std::string_view key, const Object& value) {
  tree_->value[std::string{key}] = value.tree_->value;
  return *this;
}

Object& Object::list(std::string_view key, const std::vector<Object>& values) {
  nlohmann::json list = nlohmann::json::array();
  for (const Object& value : values) {
    list.push_back(value.tree_->value);
  }
  tree_->value[std::string{key}] = std::move(list);
  return *this;
}

Object& Object::position(std::string_view key, geo::GlobePoint place) {
  tree_->value[std::string{key}] = position_of(place);
  return *this;
}

Object& Object::positions(std::string_view key, const std::vector<geo::GlobePoint>& places) {
  nlohmann::json list = nlohmann::json::array();
  for (const geo::GlobePoint& place : places) {
    list.push_back(position_of(place));
  }
  tree_->value[std::string{key}] = std::move(list);
  return *this;
}

Object& Object::unknown(std::string_view key) {
  tree_->value[std::string{key}] = nullptr;
  return missing(key);
}

Object& Object::missing(std::string_view words) {
  tree_->value["missing"].push_back(std::string{words});
  return *this;
}

std::string Object::bytes() const {
  return tree_->value.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

}  // namespace rimehaul::ports::json
