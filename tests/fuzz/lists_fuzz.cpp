// people.toml, routes.toml and a list of errands of any bytes: what stays of them is whole.
#include "fuzz/expect.h"
#include "fuzz/input_folder.h"
#include "ports/toml/errands_file.h"
#include "ports/toml/people_file.h"
#include "ports/toml/routes_file.h"

namespace {

using namespace rimehaul;
using fuzz::expect;
using fuzz::expect_within;

void look_at_people(const std::vector<day::Person>& people, bool has_fault) {
  expect(has_fault == people.empty(), "a list of people is whole, or nobody decides");
  for (const day::Person& person : people) {
    fuzz::expect_name(person.name);
  }
}

void look_at_routes(const std::vector<day::NamedRoute>& routes, bool has_fault) {
  expect(has_fault || !routes.empty(), "a list of routes without a fault has one");
  for (const day::NamedRoute& route : routes) {
    fuzz::expect_name(route.name);
    fuzz::expect_name(route.rig);
    expect(route.stations.size() >= 2, "a route goes from one station to another");
    expect_within(route.bed.value(), 0, 10'000, "the load");
    expect_within(route.towed.value(), 0, 10'000, "the towed load");
    expect_within(route.passengers, 0, 20, "the passengers");
  }
}

void look_at_errands(const day::Round& round, bool has_fault) {
  expect(has_fault || !round.errands.empty(), "a list of errands without a fault has one");
  expect(has_fault || !round.start.empty(), "a round without a fault starts somewhere");
  for (const day::Errand& errand : round.errands) {
    fuzz::expect_name(errand.what);
    expect(errand.from != errand.to, "an errand goes from one station to another");
    expect_within(errand.bed.value(), 0, 10'000, "the load");
    expect_within(errand.towed.value(), 0, 10'000, "the towed load");
    expect_within(errand.passengers, 0, 20, "the passengers");
    expect(errand.bed.value() + errand.towed.value() + errand.passengers > 0,
           "an errand takes something along");
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  static const fuzz::InputFolder folder;
  folder.write("list.toml", fuzz::text_of(bytes, size));
  const ports::toml::TextFile file{folder.file("list.toml"), "list.toml"};
  fuzz::try_to_read([&] { return ports::toml::read_people(file); }, look_at_people);
  fuzz::try_to_read([&] { return ports::toml::read_routes(file); }, look_at_routes);
  fuzz::try_to_read([&] { return ports::toml::read_errands(file); }, look_at_errands);
  return 0;
}
