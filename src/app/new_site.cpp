#include "app/new_site.h"

#include <filesystem>

#include "app/answer.h"
#include "app/check_site.h"
#include "app/own_facts.h"
#include "app/own_files.h"
#include "app/site_draft.h"
#include "card/new_site.h"
#include "ports/json/answers.h"

namespace rimehaul::app {

namespace {

std::string name_of(const NewOptions& options, const std::filesystem::path& place) {
  std::string name = options.name.value_or(place.filename().string());
  if (!fits_site_file(name)) {
    throw WrongUsage{"--name is no short line of text; give 1 to 200 bytes on one line"};
  }
  return name;
}

OwnNames take_files(const NewOptions& options, Unfinished& folder) {
  OwnNames names;
  for (const std::string& file : options.heights) {
    names.heights.push_back(folder.take(file));
  }
  names.trails = folder.take(options.trails);
  if (options.stations) {
    names.stations = folder.take(*options.stations);
  }
  return names;
}

}  // namespace

Status make_site(const NewOptions& options, const Outside& outside) {
  const std::filesystem::path place = place_for_site(options.common.site);
  const std::string name = name_of(options, place);
  Unfinished folder{place};
  const OwnNames names = take_files(options, folder);
  const OwnFacts facts = own_facts(folder.folder(), names);
  folder.write("site.toml", site_draft(name, names, facts));
  folder.write("rigs.toml", rigs_draft());
  folder.write("rules.toml", rules_draft());
  folder.write("snow.toml", snow_draft());
  folder.finish();

  card::NewSite made;
  made.folder = options.common.site;
  made.files = {"site.toml", "rigs.toml", "rules.toml", "snow.toml"};
  made.files.insert(made.files.end(), names.heights.begin(), names.heights.end());
  made.files.push_back(names.trails);
  if (!names.stations.empty()) {
    made.files.push_back(names.stations);
  }
  made.found = facts_in_words(facts);
  made.to_say = still_to_say(names, facts);
  made.check = report_on(place.string(), outside);
  give_answer({.text = card::text_of(made, kColumns), .json = ports::json::new_site_json(made)},
              options.common, outside);
  return made.check.usable() ? Status::yes : Status::honest_no;
}

}  // namespace rimehaul::app
