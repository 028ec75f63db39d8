#include "day/people.h"

#include <algorithm>
#include <array>

namespace rimehaul::day {

namespace {

constexpr std::array<Role, 3> kRoles{Role::planner, Role::officer, Role::driver};

}  // namespace

const char* key_of(Role role) {
  switch (role) {
    case Role::planner:
      return "planner";
    case Role::officer:
      return "officer";
    case Role::driver:
      break;
  }
  return "driver";
}

std::optional<Role> role_named(std::string_view key) {
  const auto* role = std::ranges::find_if(kRoles, [&](Role each) { return key == key_of(each); });
  return role == kRoles.end() ? std::nullopt : std::optional{*role};
}

bool Person::has(Role role) const {
  return std::ranges::find(roles, role) != roles.end();
}

const Person* person_named(const std::vector<Person>& people, const std::string& name) {
  const auto person = std::ranges::find(people, name, &Person::name);
  return person == people.end() ? nullptr : &*person;
}

std::optional<Role> deciding_role(const Person& person) {
  const std::optional<Role> role = telling_role(person);
  return role == Role::driver ? std::nullopt : role;
}

std::optional<Role> telling_role(const Person& person) {
  const auto* role = std::ranges::find_if(kRoles, [&](Role each) { return person.has(each); });
  return role == kRoles.end() ? std::nullopt : std::optional{*role};
}

}  // namespace rimehaul::day
