// Who may decide what: the site's own list of people and their roles.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rimehaul::day {

/// A planner sets what is allowed and signs for it, an officer audits and may do so too, a driver
/// takes cards.
enum class Role { planner, officer, driver };
[[nodiscard]] const char* key_of(Role role);  ///< "planner", as in files and records
[[nodiscard]] std::optional<Role> role_named(std::string_view key);

struct Person {
  std::string name;
  std::vector<Role> roles;

  [[nodiscard]] bool has(Role role) const;
};

/// The person of that name; nothing when the list has none.
[[nodiscard]] const Person* person_named(const std::vector<Person>& people,
                                         const std::string& name);

/// The role in which somebody signs or gives orders: planner before officer. Nothing: no role of
/// theirs lets them.
[[nodiscard]] std::optional<Role> deciding_role(const Person& person);

/// The role in which somebody tells what they saw or measured, which anybody may: planner before
/// officer before driver. Nothing: they have none.
[[nodiscard]] std::optional<Role> telling_role(const Person& person);

}  // namespace rimehaul::day
