// Who may decide at a site.
#include "day/people.h"

#include <doctest/doctest.h>

namespace rimehaul::day {

TEST_CASE("a role is named by its key and by nothing else") {
  for (const Role role : {Role::planner, Role::officer, Role::driver}) {
    CHECK(role_named(key_of(role)) == role);
  }
  CHECK_FALSE(role_named("Planner").has_value());
  CHECK_FALSE(role_named("").has_value());
}

TEST_CASE("planners and officers decide, drivers do not, whatever else they drive") {
  const std::vector<Person> people{{"P. Example", {Role::driver, Role::planner}},
                                   {"O. Example", {Role::officer}},
                                   {"D. Example", {Role::driver}}};
  CHECK(deciding_role(*person_named(people, "P. Example")) == Role::planner);
  CHECK(deciding_role(*person_named(people, "O. Example")) == Role::officer);
  CHECK_FALSE(deciding_role(*person_named(people, "D. Example")).has_value());
  CHECK(telling_role(*person_named(people, "P. Example")) == Role::planner);
  CHECK(telling_role(*person_named(people, "O. Example")) == Role::officer);
  CHECK(telling_role(*person_named(people, "D. Example")) == Role::driver);
  CHECK_FALSE(telling_role({"G. Example", {}}).has_value());
  CHECK_FALSE(deciding_role({"G. Example", {}}).has_value());
  CHECK(person_named(people, "p. example") == nullptr);
  CHECK(person_named({}, "P. Example") == nullptr);
}

}  // namespace rimehaul::day
