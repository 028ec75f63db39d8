// Stations, zones and marks that cannot be used, in one way each.
#include "app/broken_input.h"
#include "ports/gdal/layer_maker.h"

namespace rimehaul::testing {

namespace {

Break stations(const std::string& from, const std::string& to) {
  return changed("stations.geojson", {from, to});
}

/// The site has one more layer: "zones" or "marks", in degrees.
Break layer(const std::string& kind, const std::string& feature) {
  return [kind, feature](const TinySite& site) {
    site.change("site.toml", {"[files]", "[files]\n" + kind + " = [\"" + kind + ".geojson\"]"});
    site.write(kind + ".geojson", geojson({feature}));
  };
}

Break mark(const std::string& properties) {
  return layer("marks",
               feature({"Point", "[-153.0, 46.0553744]", R"("name": "M", )" + properties}));
}

}  // namespace

std::vector<BrokenFile> broken_places() {
  const std::string corners =
      "[[[-153.0, 46.0], [-152.99, 46.01], [-152.99, 46.0], [-153.0, 46.01], [-153.0, 46.0]]]";
  return {
      {"a station of no kind",
       stations("\"kind\":\"hut\",", ""),
       {"stations.geojson", "station Base", "it does not say its kind", "fill in the column kind"}},
      {"a station of unknown kind",
       stations("\"kind\":\"hut\"", "\"kind\":\"hutt\""),
       {"stations.geojson", "station Base", "kind is \"hutt\", which is not known",
        "did you mean hut?"}},
      {"a station twice",
       stations("\"Hut\"", "\"Base\""),
       {"stations.geojson", "station Base", "the name is used twice in this file",
        "give each its own name"}},
      {"less than no room to turn",
       stations("\"turning_m\":15", "\"turning_m\":-15"),
       {"stations.geojson", "station Base", "turning_m is \"-15\" and counts as not given",
        "give a number of 0 or more"}},
      {"a station of several points",
       stations("\"Point\",\"coordinates\":[500000,5100300]",
                "\"MultiPoint\",\"coordinates\":[[500000,5100300],[500000,5100200]]"),
       {"stations.geojson", "station Hut", "it has several points",
        "make each a feature of its own"}},
      {"lines for stations",
       changed("site.toml", {"[\"stations.geojson\"]", "[\"trails.geojson\"]"}),
       {"trails.geojson", "", "no feature in it is a point",
        "give a file whose features are the stations"}},
      {"a zone of no kind",
       layer("zones", area_feature(R"("name": "Z")")),
       {"zones.geojson", "zone Z", "it does not say its kind, and counts as forbidden",
        "fill in the column kind"}},
      {"a zone of unknown kind",
       layer("zones", area_feature(R"("name": "Z", "kind": "forbiden")")),
       {"zones.geojson", "zone Z", "kind is \"forbiden\", which is not known",
        "did you mean forbidden?"}},
      {"a zone with no name",
       layer("zones", area_feature(R"("kind": "forbidden")")),
       {"zones.geojson", "zone number 0", "it has no name", "fill in the column name"}},
      {"a zone of two corners",
       layer("zones", feature({"Polygon", "[[[-153.0, 46.0], [-153.0, 46.1], [-153.0, 46.0]]]",
                               R"("name": "Z", "kind": "runout")"})),
       {"zones.geojson", "zone Z", "one of its outlines has fewer than three corners",
        "draw it anew"}},
      {"a forbidden zone that crosses itself",
       layer("zones", feature({"Polygon", corners, R"("name": "Z", "kind": "forbidden")"})),
       {"zones.geojson", "zone Z",
        "its outline is not valid (Self-intersection[500387.126688065 5094603.10121117]); it is "
        "forbidden ground, so no trail of the site is known to keep out of it",
        "draw its outline anew, without crossing itself"}},
      {"a speed of nothing",
       layer("zones", area_feature(R"("name": "Z", "kind": "speed_limit", "speed_kmh": 0)")),
       {"zones.geojson", "zone Z", "speed_kmh is \"0\" and counts as not given",
        "give a number above 0"}},
      {"a mark on no trail",
       mark(R"("kind": "gate")"),
       {"marks.geojson", "mark M", "it does not say on which trail it lies",
        "fill in the column trail"}},
      {"a mark on an unknown trail",
       mark(R"("kind": "gate", "trail": "Low Weigh")"),
       {"marks.geojson", "mark M", "there is no trail Low Weigh to lie on",
        "give the name of a trail of this site"}},
      {"a mark far from its trail",
       layer("marks", point_feature(R"("name": "M", "kind": "gate", "trail": "Spur")")),
       {"marks.geojson", "mark M", "it lies 5477 m away from its trail Spur",
        "draw it on its trail, or name the trail that it lies on"}},
      {"a mark of unknown kind",
       mark(R"("kind": "gates", "trail": "Spur")"),
       {"marks.geojson", "mark M", "kind is \"gates\", which is not known", "did you mean gate?"}},
  };
}

}  // namespace rimehaul::testing
