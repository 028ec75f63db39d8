// Works a printed formula out from named numbers, as a person with a pocket calculator would.
//
// What stands side by side is multiplied; / divides what stands before it by the next thing alone;
// |x| is the size of x. Slopes are tangents: along(G) and sin(G) are G / sqrt(1 + G^2).
#pragma once

#include <algorithm>
#include <cctype>
#include <cmath>
#include <functional>
#include <map>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace rimehaul::testing {

/// What a name stands for; throws std::out_of_range for one that is not shown.
using Names = std::function<double(const std::string&)>;

class Formula {
 public:
  Formula(std::string_view text, const Names& names) : text_{text}, names_{names} {}

  double value() {
    const double all = sum();
    if (skip_space(); at_ != text_.size()) {
      throw std::runtime_error{"formula not understood from: " + std::string{text_.substr(at_)}};
    }
    return all;
  }

 private:
  double sum() {
    double all = product();
    while (true) {
      if (take('+')) {
        all += product();
      } else if (take('-')) {
        all -= product();
      } else {
        return all;
      }
    }
  }

  double product() {
    double all = power();
    while (true) {
      if (take('/')) {
        all /= power();
      } else if (starts_something()) {
        all *= power();
      } else {
        return all;
      }
    }
  }

  double power() {
    if (take('-')) {
      return -power();
    }
    const double base = thing();
    return take('^') ? std::pow(base, thing()) : base;
  }

  double thing() {
    if (take('(')) {
      const double inside = sum();
      expect(')');
      return inside;
    }
    if (take('|')) {
      ++sizes_open_;
      const double inside = sum();
      expect('|');
      --sizes_open_;
      return std::abs(inside);
    }
    skip_space();
    if (at_ < text_.size() && std::isdigit(static_cast<unsigned char>(text_[at_])) != 0) {
      std::size_t length = 0;
      const double number = std::stod(std::string{text_.substr(at_)}, &length);
      at_ += length;
      return number;
    }
    const std::string name = word();
    return at_ < text_.size() && text_[at_] == '(' ? function(name) : names_(name);
  }

  double function(const std::string& name) {
    expect('(');
    std::vector<double> given{sum()};
    while (take(',')) {
      given.push_back(sum());
    }
    expect(')');
    const double first = given.front();
    if (name == "max" || name == "min") {
      return name == "max" ? *std::ranges::max_element(given) : *std::ranges::min_element(given);
    }
    if (name == "sqrt") {
      return std::sqrt(std::max(0.0, first));
    }
    if (name == "hypot") {
      return std::hypot(first, given.at(1));
    }
    if (name == "along" || name == "sin") {
      return first / std::sqrt(1 + first * first);
    }
    if (name == "atan" || name == "tan" || name == "cos") {
      return name == "atan" ? std::atan(first) : name == "tan" ? std::tan(first) : std::cos(first);
    }
    throw std::runtime_error{"no function is called " + name};
  }

  std::string word() {
    std::string name;
    for (; at_ < text_.size() && is_letter(text_[at_]); ++at_) {
      name += text_[at_];
    }
    if (name.empty()) {
      throw std::runtime_error{"formula not understood at: " + std::string{text_.substr(at_)}};
    }
    return name;
  }

  static bool is_letter(char letter) {
    return std::isalnum(static_cast<unsigned char>(letter)) != 0 || letter == '_';
  }

  bool starts_something() {
    skip_space();
    if (at_ == text_.size()) {
      return false;
    }
    const char next = text_[at_];
    return is_letter(next) || next == '(' || (next == '|' && sizes_open_ == 0);
  }

  bool take(char wanted) {
    skip_space();
    const bool there = at_ < text_.size() && text_[at_] == wanted;
    at_ += there ? 1 : 0;
    return there;
  }

  void expect(char wanted) {
    if (!take(wanted)) {
      throw std::runtime_error{std::string{"formula lacks "} + wanted};
    }
  }

  void skip_space() {
    while (at_ < text_.size() && text_[at_] == ' ') {
      ++at_;
    }
  }

  std::string_view text_;
  const Names& names_;
  std::size_t at_ = 0;
  int sizes_open_ = 0;
};

/// Parts of a text between `separator`, but for those within brackets.
inline std::vector<std::string> parts_of(const std::string& text, char separator) {
  std::vector<std::string> parts{""};
  int depth = 0;
  for (const char letter : text) {
    depth += letter == '(' ? 1 : letter == ')' ? -1 : 0;
    if (letter == separator && depth == 0) {
      parts.emplace_back();
    } else {
      parts.back() += letter;
    }
  }
  return parts;
}

/// "demand <= capacity, symbol = ..., symbol = ...", worked out.
struct Comparison {
  double demand = 0.0;
  double capacity = 0.0;
};

/// `shown`: every number that stands beside the formula. Where a formula says how a symbol comes
/// about, that is worked out, whether or not the symbol is shown too. Of several comparisons set
/// apart by ';' the first counts whose symbols are all there.
inline Comparison worked_out(std::string formula, const std::map<std::string, double>& shown) {
  std::map<std::string, double> numbers;
  std::vector<std::string> with_spaces;
  for (const auto& [name, value] : shown) {
    std::string joined = name;
    std::ranges::replace(joined, ' ', '_');
    numbers[joined] = value;
    if (joined != name) {
      with_spaces.push_back(name);
    }
  }
  std::ranges::sort(with_spaces, {}, [](const std::string& name) { return -int(name.size()); });
  for (const std::string& name : with_spaces) {
    std::string joined = name;
    std::ranges::replace(joined, ' ', '_');
    for (std::size_t at = formula.find(name); at != std::string::npos; at = formula.find(name)) {
      formula.replace(at, name.size(), joined);
    }
  }
  const std::vector<std::string> parts = parts_of(formula, ',');
  std::map<std::string, std::string> definitions;
  for (std::size_t i = 1; i < parts.size(); ++i) {
    const std::size_t equals = parts[i].find(" = ");
    const std::size_t start = parts[i].find_first_not_of(' ');
    definitions[parts[i].substr(start, equals - start)] = parts[i].substr(equals + 3);
  }
  Names names = [&](const std::string& name) -> double {
    const auto definition = definitions.find(name);
    return definition == definitions.end() ? numbers.at(name)
                                           : Formula{definition->second, names}.value();
  };
  for (const std::string& one : parts_of(parts.front(), ';')) {
    const std::size_t sign = one.find("<=");
    if (sign == std::string::npos) {
      break;
    }
    try {
      return {Formula{one.substr(0, sign), names}.value(),
              Formula{one.substr(sign + 2), names}.value()};
    } catch (const std::out_of_range&) {
      continue;
    }
  }
  throw std::out_of_range{"a symbol of this formula is not shown: " + formula};
}

}  // namespace rimehaul::testing
