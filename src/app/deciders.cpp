#include "app/deciders.h"

#include "app/names.h"
#include "app/status.h"

namespace rimehaul::app {

namespace {

const day::Person& listed(const LoadedSite& site, const std::string& name) {
  if (site.people.empty()) {
    throw WrongUsage{
        "this site lists nobody; write people.toml with names and roles, and name it in site.toml "
        "under [files] as people = \"people.toml\""};
  }
  const day::Person* person = day::person_named(site.people, name);
  if (person == nullptr) {
    throw WrongUsage{no_such({"person", names_of(site.people)}, name)};
  }
  return *person;
}

}  // namespace

day::Done decided_by(const LoadedSite& site, const std::string& person, const Outside& outside) {
  const auto role = day::deciding_role(listed(site, person));
  if (!role) {
    throw WrongUsage{person +
                     " is neither planner nor officer in people.toml, and decides nothing"};
  }
  return {.at = outside.now, .by = person, .role = key_of(*role)};
}

day::Done driven_by(const LoadedSite& site, const std::string& person, const Outside& outside) {
  if (!listed(site, person).has(day::Role::driver)) {
    throw WrongUsage{person + " is no driver in people.toml, and takes no card"};
  }
  return {.at = outside.now, .by = person, .role = key_of(day::Role::driver)};
}

day::Done told_by(const LoadedSite& site, const std::string& person, const Outside& outside) {
  const auto role = day::telling_role(listed(site, person));
  return {.at = outside.now, .by = person, .role = role ? key_of(*role) : ""};
}

}  // namespace rimehaul::app
