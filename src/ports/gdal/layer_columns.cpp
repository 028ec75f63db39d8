#include "ports/gdal/layer_columns.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <string_view>

#include "base/nearest_name.h"
#include "base/one_line.h"

namespace rimehaul::ports::gdal {

namespace {

constexpr std::string_view kBlanks = " \t\r\n\f\v";

std::optional<double> number_of(const std::string& text) {
  double number = 0.0;
  const char* end = text.data() + text.size();
  const auto [rest, error] = std::from_chars(text.data(), end, number);
  if (error != std::errc{} || rest != end || !std::isfinite(number)) {
    return std::nullopt;
  }
  return number;
}

}  // namespace

std::string trimmed(const std::string& text) {
  const auto first = text.find_first_not_of(kBlanks);
  if (first == std::string::npos) {
    return "";
  }
  return text.substr(first, text.find_last_not_of(kBlanks) - first + 1);
}

std::string small_letters(std::string text) {
  std::ranges::transform(text, text.begin(), [](char letter) {
    return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
  });
  return text;
}

std::string list_of(const std::vector<std::string>& words) {
  std::string list;
  for (std::size_t i = 0; i < words.size(); ++i) {
    list += (i == 0 ? "" : i + 1 == words.size() ? " or " : ", ") + words[i];
  }
  return list;
}

Said pairs_in(const std::string& text) {
  Said said;
  std::size_t start = 0;
  while (start < text.size()) {
    const std::size_t end = std::min(text.find_first_of(";\r\n", start), text.size());
    const std::string piece = text.substr(start, end - start);
    start = end + 1;
    const std::size_t equals = piece.find('=');
    if (equals == std::string::npos) {
      continue;  // free text for people
    }
    const std::string key = small_letters(trimmed(piece.substr(0, equals)));
    const std::string value = trimmed(piece.substr(equals + 1));
    if (!base::is_one_line(key) || value.empty()) {
      continue;
    }
    const auto [known, is_new] = said.try_emplace(key, value);
    if (!is_new && known->second != value) {
      known->second += " and " + value;
    }
  }
  return said;
}

std::optional<std::string> Columns::text(const std::string& column) const {
  const auto found = said_.find(column);
  return found == said_.end() ? std::nullopt : std::optional{found->second};
}

std::optional<double> Columns::number(const std::string& column, Allowed allowed) const {
  const auto said = text(column);
  if (!said) {
    return std::nullopt;
  }
  const auto found = number_of(*said);
  if (found && allowed.least <= *found && *found <= allowed.most) {
    return found;
  }
  misfit({column, *said}, allowed.words);
  return std::nullopt;
}

std::optional<int> Columns::whole_number(const std::string& column, Allowed allowed) const {
  const auto found = number(column, allowed);
  if (found && *found != std::floor(*found)) {
    misfit({column, *text(column)}, allowed.words);
    return std::nullopt;
  }
  return found ? std::optional{static_cast<int>(*found)} : std::nullopt;
}

std::optional<bool> Columns::yes_no(const std::string& column) const {
  const auto said = text(column);
  if (!said) {
    return std::nullopt;
  }
  const std::string word = small_letters(*said);
  for (const char* yes : {"yes", "true", "1", "y", "t"}) {
    if (word == yes) {
      return true;
    }
  }
  for (const char* no : {"no", "false", "0", "n", "f"}) {
    if (word == no) {
      return false;
    }
  }
  misfit({column, *said}, "yes or no");
  return std::nullopt;
}

std::optional<units::TimeOfDay> Columns::time(const std::string& column) const {
  const auto said = text(column);
  // Formats with a type for times add seconds of their own.
  const bool has_seconds = said && said->size() == 8 && said->ends_with(":00");
  const auto found = said
                         ? units::parse_time_of_day(said->substr(0, has_seconds ? 5 : said->size()))
                         : std::nullopt;
  if (said && !found) {
    misfit({column, *said}, "a time of day HH:MM, 00:00 to 24:00");
  }
  return found;
}

std::optional<units::Instant> Columns::moment(const std::string& column,
                                              DateAlone date_alone) const {
  const auto said = text(column);
  if (!said) {
    return std::nullopt;
  }
  const bool is_date = said->find('T') == std::string::npos;
  if (is_date && date_alone == DateAlone::misfits) {
    misfit({column, *said}, "a moment with its zone, like 2026-01-31T07:30:00Z");
    return std::nullopt;
  }
  const auto found = units::parse_instant(is_date ? *said + "T00:00:00Z" : *said);
  if (!found) {
    misfit({column, *said}, date_alone == DateAlone::misfits
                                ? "a moment with its zone, like 2026-01-31T07:30:00Z"
                                : "a date like 2026-01-31, or a moment with its zone");
  }
  return found;
}

void Columns::fault(Complaint complaint) const {
  faults_->push_back({.file = where_.file,
                      .place = where_.place,
                      .problem = std::move(complaint.problem),
                      .remedy = std::move(complaint.remedy)});
}

void Columns::doubt(Complaint complaint) const {
  fault(std::move(complaint));
  faults_->back().weight = base::Weight::doubt;
}

void Columns::unknown_word(const Entry& entry, const std::vector<std::string>& known) const {
  const auto meant = base::nearest_name(small_letters(entry.said), known);
  fault({entry.column + " is \"" + entry.said + "\", which is not known",
         meant ? "did you mean " + *meant + "?" : "give " + list_of(known)});
}

void Columns::misfit(const Entry& entry, const std::string& wanted) const {
  fault({entry.column + " is \"" + entry.said + "\" and counts as not given", "give " + wanted});
}

}  // namespace rimehaul::ports::gdal
