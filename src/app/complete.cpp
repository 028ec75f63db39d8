#include "app/complete.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <utility>

#include "app/input_files.h"
#include "app/names.h"
#include "app/shell_words.h"
#include "app/value_kinds.h"
#include "base/fault.h"
#include "ports/gdal/layer_names.h"
#include "ports/toml/people_file.h"
#include "ports/toml/rig_sheets.h"
#include "ports/toml/routes_file.h"
#include "ports/toml/site_file.h"

namespace rimehaul::app {

namespace {

using ports::gdal::LayerFile;

/// The line up to the word at its end, as far as it is understood.
struct Typed {
  bool is_first = true;  ///< only the program's name stands before the word at the end
  const Verb* verb = nullptr;
  std::vector<std::string> given;     ///< options
  std::vector<std::string> alone;     ///< words that belong to no option
  const CLI::Option* open = nullptr;  ///< the option that wants a value next
  std::string word;                   ///< at the end
};

const CLI::Option* option_called(const CLI::App& verb, const std::string& name) {
  return name.starts_with('-') ? verb.get_option_no_throw(name) : nullptr;
}

bool takes_value(const CLI::Option* option) {
  return option != nullptr && option->get_items_expected() != 0;
}

const Verb* verb_called(const CommandLine& line, const std::string& name) {
  const auto found = std::ranges::find_if(
      line.verbs(), [&](const Verb& verb) { return verb.app->get_name() == name; });
  return found == line.verbs().end() ? nullptr : &*found;
}

/// Reads a word that is complete.
void read_word(const std::string& word, Typed& typed) {
  if (typed.open != nullptr) {
    typed.open = nullptr;
    return;
  }
  const std::size_t equals = word.find('=');
  const std::string name = word.substr(0, equals);
  if (const CLI::Option* option = option_called(*typed.verb->app, name)) {
    typed.given.push_back(name);
    typed.open = takes_value(option) && equals == std::string::npos ? option : nullptr;
  } else if (!word.starts_with('-')) {
    typed.alone.push_back(word);
  }
}

Typed read_line(const CommandLine& line, std::string_view text) {
  Typed typed;
  std::vector<std::string> words = words_of_line(text);
  typed.word = words.back();
  words.pop_back();
  typed.is_first = words.size() < 2;
  typed.verb = typed.is_first ? nullptr : verb_called(line, words[1]);
  for (std::size_t i = 2; typed.verb != nullptr && i < words.size(); ++i) {
    read_word(words[i], typed);
  }
  const std::size_t equals = typed.word.find('=');
  if (typed.verb != nullptr && typed.open == nullptr && equals != std::string::npos) {
    const CLI::Option* option = option_called(*typed.verb->app, typed.word.substr(0, equals));
    if (takes_value(option)) {
      typed.open = option;
      typed.word.erase(0, equals + 1);
    }
  }
  return typed;
}

/// The names that a site gives to what is asked for.
std::vector<std::string> names_at(const std::string& folder, Value value) {
  const auto site = ports::toml::read_site_file(folder).data;
  std::vector<std::string> names;
  if (value == Value::rig) {
    for (const rig::Rig& rig :
         ports::toml::read_rigs({path_of({site.folder, site.rigs}), site.rigs}).data) {
      names.push_back(rig.name);
    }
    return names;
  }
  if (value == Value::person && !site.people.empty()) {
    return names_of(
        ports::toml::read_people({path_of({site.folder, site.people}), site.people}).data);
  }
  if (value == Value::named_route && !site.routes.empty()) {
    return names_of(
        ports::toml::read_routes({path_of({site.folder, site.routes}), site.routes}).data);
  }
  if (value == Value::person || value == Value::named_route) {
    return names;
  }
  const bool stations = value == Value::station;
  for (const std::string& file : stations ? site.stations : site.trails) {
    const LayerFile layer{site.folder, file};
    std::ranges::move(
        stations ? ports::gdal::station_names(layer) : ports::gdal::trail_names(layer),
        std::back_inserter(names));
  }
  return names;
}

Completion values_for(const CLI::Option& option, const Typed& typed) {
  const auto value = value_of(option);
  if (!value) {
    return {};
  }
  switch (*value) {
    case Value::folder:
      return {Completion::Kind::folders, {}};
    case Value::file:
      return {Completion::Kind::files, {}};
    case Value::rig:
    case Value::station:
    case Value::trail:
    case Value::person:
    case Value::named_route:
      return {Completion::Kind::words, typed.alone.empty() ? std::vector<std::string>{}
                                                           : names_at(typed.alone.front(), *value)};
    default:
      return {Completion::Kind::words, words_of(*value)};
  }
}

bool may_be_given(const CLI::Option& option, const Typed& typed) {
  const bool again = option.get_multi_option_policy() == CLI::MultiOptionPolicy::TakeAll;
  return !option.get_positional() &&
         (again || std::ranges::find(typed.given, option.get_name()) == typed.given.end());
}

/// The next thing when no option wants a value: the site, or an option that is not yet there.
Completion next_for(const Typed& typed) {
  Completion next;
  for (const CLI::Option* option : typed.verb->app->get_options()) {
    if (option->get_positional() && typed.alone.empty() && !typed.word.starts_with('-')) {
      return values_for(*option, typed);
    }
    if (may_be_given(*option, typed)) {
      next.words.push_back(option->get_name());
    }
  }
  return next;
}

Completion any_for(const CommandLine& line, const Typed& typed) {
  if (typed.is_first) {
    return {Completion::Kind::words, typed.word.starts_with('-')
                                         ? std::vector<std::string>{"--help", "--version"}
                                         : line.verb_names()};
  }
  if (typed.verb == nullptr) {
    return {};
  }
  return typed.open != nullptr ? values_for(*typed.open, typed) : next_for(typed);
}

}  // namespace

Completion complete(const CommandLine& line, std::string_view typed) {
  try {
    const Typed read = read_line(line, typed);
    Completion completion = any_for(line, read);
    std::erase_if(completion.words,
                  [&](const std::string& word) { return !word.starts_with(read.word); });
    return completion;
  } catch (const base::BadInput&) {
    return {};
  }
}

std::string completion_text(const CommandLine& line, AtCursor at) {
  const Completion completion = complete(line, at.typed);
  std::string text = completion.kind == Completion::Kind::words   ? "words\n"
                     : completion.kind == Completion::Kind::files ? "files\n"
                                                                  : "folders\n";
  // The shell breaks words at letters like ":" too; what stands before that stays on the line.
  const std::string word = words_of_line(at.typed).back();
  const std::string last = words_of_line(at.last).back();
  const std::size_t equals = word.starts_with("--") ? word.find('=') : std::string::npos;
  const std::string value = equals == std::string::npos ? word : word.substr(equals + 1);
  const std::size_t kept = value.ends_with(last) ? value.size() - last.size() : 0;
  for (const std::string& each : completion.words) {
    text += each.substr(kept) + "\n";
  }
  return text;
}

}  // namespace rimehaul::app
