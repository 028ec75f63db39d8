// Reads people.toml.
#include "ports/toml/people_file.h"

#include <utility>

#include "ports/toml/table_reader.h"

namespace rimehaul::ports::toml {

namespace {

day::Person read_person(TableReader in, const std::vector<day::Person>& before) {
  day::Person person{.name = in.text("name").value_or(""), .roles = {}};
  if (!person.name.empty() && day::person_named(before, person.name) != nullptr) {
    in.fault("name", {"is there twice", "list each person once, with all roles"});
  }
  for (const std::string& word : in.texts("roles", Presence::must)) {
    if (const auto role = day::role_named(word)) {
      person.roles.push_back(*role);
    } else {
      in.fault("roles", {"\"" + word + "\" is no role", "write planner, officer or driver"});
    }
  }
  in.refuse_rest();
  return person;
}

}  // namespace

base::Reading<std::vector<day::Person>> read_people(const TextFile& file) {
  FaultLog log{file.shown};
  const Node root = parse_file(file);
  TableReader top{root, "", log};
  top.expect_schema();
  std::vector<day::Person> people;
  for (TableReader& person : top.tables("person")) {
    people.push_back(read_person(person, people));
  }
  if (people.empty() && log.count() == 0) {
    top.fault("person", {"there is nobody", "list people under [[person]]"});
  }
  top.refuse_rest();
  if (log.count() > 0) {
    people.clear();
  }
  return {.data = std::move(people), .faults = log.in_order()};
}

}  // namespace rimehaul::ports::toml
