#include "app/output_places.h"

#include <CLI/CLI.hpp>
#include <algorithm>

#include "app/errands.h"
#include "app/input_files.h"
#include "app/one_file.h"
#include "app/option_groups.h"
#include "app/own_files.h"
#include "app/print_card.h"
#include "app/slope_layers.h"
#include "app/status.h"
#include "app/value_kinds.h"
#include "base/fault.h"
#include "ports/gdal/records_database.h"

namespace rimehaul::app {

namespace {

namespace fs = std::filesystem;

/// A file that will be written.
struct Output {
  std::string option;  ///< that asks for it
  std::string path;
};

bool is_output(const CLI::Option& option) {
  return option.get_group() == kAnswerGroup && value_of(option) == Value::file;
}

/// Everything that the verb may write into the folder: rasters of layers, or cards of trips.
std::vector<Output> files_into(const CLI::App& verb, const CLI::Option& option) {
  std::vector<std::string> names;
  if (verb.get_name() == kErrandsVerb) {
    names = trip_files();
  } else {
    for (const LayerFacts& facts : slope_layers()) {
      names.push_back(file_of(facts));
    }
  }
  std::vector<Output> outputs;
  for (const std::string& folder : option.results()) {
    for (const std::string& name : names) {
      outputs.push_back({kIntoOption, path_of({folder, name})});
    }
  }
  return outputs;
}

std::vector<Output> outputs_of(const CLI::App& verb) {
  std::vector<Output> outputs;
  for (const CLI::Option* option : verb.get_options()) {
    if (option->get_name() == kIntoOption && value_of(*option) == Value::folder) {
      std::ranges::move(files_into(verb, *option), std::back_inserter(outputs));
    }
    if (!is_output(*option)) {
      continue;
    }
    for (const std::string& path : option->results()) {
      outputs.push_back({option->get_name(), path});
      if (option->get_name() == kCardOption) {
        outputs.push_back({option->get_name(), record_beside(path)});
      }
    }
  }
  return outputs;
}

/// Files given by name: a snow report, one's own files for a new site.
std::vector<std::string> given_files(const CLI::App& verb) {
  std::vector<std::string> files;
  for (const CLI::Option* option : verb.get_options()) {
    if (value_of(*option) != Value::file || is_output(*option)) {
      continue;
    }
    for (const std::string& given : option->results()) {
      std::ranges::move(with_siblings({"", given}), std::back_inserter(files));
    }
  }
  return files;
}

/// Files of the site as far as site.toml can be read (what is wrong with it is told by its reader),
/// and its records.
std::vector<std::string> files_of_site(const std::string& folder) {
  std::vector<std::string> files{path_of({folder, "site.toml"})};
  try {
    files = files_named(ports::toml::read_site_file(folder).data);
  } catch (const base::BadInput&) {
  }
  files.push_back(ports::gdal::RecordsPlace{.folder = folder}.shown());
  return files;
}

/// The folder that is made and the files in it.
std::vector<std::string> files_to_make(const std::string& folder,
                                       const std::vector<std::string>& given) {
  std::vector<std::string> files{folder};
  for (const std::string_view name : kOurNames) {
    files.push_back(path_of({folder, std::string{name}}));
  }
  for (const std::string& file : given) {
    files.push_back(path_of({folder, fs::path{file}.filename().string()}));
  }
  return files;
}

/// What no answer may be written over.
struct Kept {
  std::vector<std::string> read;
  std::vector<std::string> made;  ///< of a new site
};

Kept kept_files(const CLI::App& verb) {
  Kept kept{.read = given_files(verb), .made = {}};
  for (const CLI::Option* option : verb.get_options()) {
    if (value_of(*option) != Value::folder || option->get_name() == kIntoOption) {
      continue;
    }
    for (const std::string& folder : option->results()) {
      if (verb.get_name() == kNewVerb) {
        kept.made = files_to_make(folder, kept.read);
      } else {
        std::ranges::move(files_of_site(folder), std::back_inserter(kept.read));
      }
    }
  }
  return kept;
}

bool is_one_of(const std::vector<std::string>& files, const std::string& path) {
  return path != kOnStandardOutput && std::ranges::any_of(files, [&](const std::string& file) {
           return are_one_file(file, path);
         });
}

void expect_own_places(const std::vector<Output>& outputs) {
  for (std::size_t i = 0; i < outputs.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      const std::string both = outputs[j].option + " and " + outputs[i].option;
      if (outputs[i].path == kOnStandardOutput && outputs[j].path == kOnStandardOutput) {
        throw WrongUsage{both + " cannot both go to standard output; name a file for one"};
      }
      if (is_one_of({outputs[j].path}, outputs[i].path)) {
        throw WrongUsage{both + " would both be written to " + outputs[i].path +
                         "; name another file for one"};
      }
    }
  }
}

}  // namespace

void expect_free_places(const CLI::App& verb) {
  const std::vector<Output> outputs = outputs_of(verb);
  if (outputs.empty()) {
    return;
  }
  const Kept kept = kept_files(verb);
  for (const Output& output : outputs) {
    const std::string would = output.option + " would be written over " + output.path + ", which ";
    if (is_one_of(kept.read, output.path)) {
      throw WrongUsage{would + "this command reads; name another file"};
    }
    if (is_one_of(kept.made, output.path)) {
      throw WrongUsage{would + "this command makes; name another file"};
    }
    std::error_code trouble;
    const fs::file_status there = fs::status(output.path, trouble);
    if (output.option == kCardOption && fs::exists(there) && !fs::is_regular_file(there)) {
      throw WrongUsage{output.option + " " + output.path +
                       " is no file that the card's record could lie beside; name another"};
    }
    if (output.path == kOnStandardOutput && output.option == kCardOption) {
      throw WrongUsage{output.option +
                       " needs the name of a file, as the card's record is to lie beside it"};
    }
  }
  expect_own_places(outputs);
}

}  // namespace rimehaul::app
