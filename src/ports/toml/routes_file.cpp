// Reads routes.toml.
#include "ports/toml/routes_file.h"

#include <algorithm>
#include <utility>

#include "ports/toml/table_reader.h"

namespace rimehaul::ports::toml {

namespace {

using units::Kilograms;

constexpr Range kLoad{.from = 0, .to = 10'000};

day::NamedRoute read_route(TableReader in) {
  day::NamedRoute route;
  route.name = in.text("name").value_or("");
  route.stations = in.texts("stations", Presence::must);
  if (route.stations.size() == 1) {
    in.fault("stations", {"is a single station", "name two or more, in driving order"});
  }
  const auto same = std::ranges::adjacent_find(route.stations);
  if (same != route.stations.end()) {
    in.fault("stations", {"\"" + *same + "\" follows itself", "take one of the two out"});
  }
  route.rig = in.text("rig").value_or("");
  route.bed = in.may<Kilograms>("load_kg", kLoad).value_or(route.bed);
  route.towed = in.may<Kilograms>("towed_load_kg", kLoad).value_or(route.towed);
  route.passengers =
      in.whole("passengers", {.from = 0, .to = 20}, Presence::may).value_or(route.passengers);
  route.accompanied = in.yes_no("accompanied", Presence::may).value_or(route.accompanied);
  in.refuse_rest();
  return route;
}

}  // namespace

base::Reading<std::vector<day::NamedRoute>> read_routes(const TextFile& file) {
  FaultLog log{file.shown};
  const Node root = parse_file(file);
  TableReader top{root, "", log};
  top.expect_schema();
  std::vector<day::NamedRoute> routes;
  for (TableReader& table : top.tables("route")) {
    const std::size_t faults_before = log.count();
    day::NamedRoute route = read_route(table);
    const bool known =
        std::ranges::find(routes, route.name, &day::NamedRoute::name) != routes.end();
    if (known && log.count() == faults_before) {
      table.fault("name", {"is there twice", "give each route a name of its own"});
    }
    if (log.count() == faults_before) {
      routes.push_back(std::move(route));
    }
  }
  if (routes.empty() && log.count() == 0) {
    top.fault("route", {"there is none", "write the site's routes under [[route]]"});
  }
  top.refuse_rest();
  return {.data = std::move(routes), .faults = log.in_order()};
}

}  // namespace rimehaul::ports::toml
