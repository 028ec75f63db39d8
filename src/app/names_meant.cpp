#include "app/names_meant.h"

#include <algorithm>
#include <utility>

#include "app/names.h"
#include "base/nearest_name.h"

namespace rimehaul::app {

namespace {

/// What a name is used for, and where.
struct Use {
  std::string file;
  std::string place;
  std::string kind;
};

class Names {
 public:
  explicit Names(std::vector<std::string> known) : known_{std::move(known)} {}

  void expect(const std::string& name, const Use& use, std::vector<base::Fault>& faults) const {
    if (name.empty() || std::ranges::find(known_, name) != known_.end()) {
      return;
    }
    const auto meant = base::nearest_name(name, known_);
    faults.push_back({.file = use.file,
                      .place = use.place,
                      .problem = "this site has no " + use.kind + " '" + name + "'",
                      .remedy = meant ? "did you mean '" + *meant + "'?"
                                      : "give the name of a " + use.kind + " of this site"});
  }

 private:
  std::vector<std::string> known_;
};

}  // namespace

std::vector<base::Fault> unknown_names(const snow::SnowReport& report, const std::string& file,
                                       const trails::Network& network) {
  std::vector<base::Fault> faults;
  const Names marks{names_of(network.marks)};
  for (const snow::MarkStatus& said : report.weather.site.marks) {
    marks.expect(said.mark, {file, "[[status]] mark", "mark"}, faults);
  }
  const Names trails{names_of(network.trails)};
  for (const snow::Grooming& said : report.weather.site.grooming) {
    trails.expect(said.trail, {file, "[[groomed]] trails", "trail"}, faults);
  }
  return faults;
}

std::vector<base::Fault> unknown_names(const passage::Rules& rules, const std::string& file,
                                       const std::vector<rig::Rig>& rigs) {
  std::vector<base::Fault> faults;
  Names{names_of(rigs)}.expect(rules.tow_out.rig, {file, "tow_out.rig", "rig"}, faults);
  return faults;
}

std::vector<base::Fault> unknown_names(const std::vector<day::NamedRoute>& routes,
                                       const std::string& file, const RouteNames& names) {
  std::vector<base::Fault> faults;
  const Names stations{names_of(names.network.stations)};
  const Names rigs{names_of(names.rigs)};
  for (const day::NamedRoute& route : routes) {
    const std::string place = "route \"" + route.name + "\" ";
    for (const std::string& station : route.stations) {
      stations.expect(station, {file, place + "stations", "station"}, faults);
    }
    rigs.expect(route.rig, {file, place + "rig", "rig"}, faults);
  }
  return faults;
}

std::vector<base::Fault> unknown_names(const day::Round& round, const std::string& file,
                                       const trails::Network& network) {
  std::vector<base::Fault> faults;
  const Names stations{names_of(network.stations)};
  stations.expect(round.start, {file, "start", "station"}, faults);
  stations.expect(round.end, {file, "end", "station"}, faults);
  for (const day::Errand& errand : round.errands) {
    const std::string place = "errand \"" + errand.what + "\" ";
    stations.expect(errand.from, {file, place + "from", "station"}, faults);
    stations.expect(errand.to, {file, place + "to", "station"}, faults);
  }
  return faults;
}

}  // namespace rimehaul::app
