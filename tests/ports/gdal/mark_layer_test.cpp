// Marks find their place on the trail that they name, and keep what was said of them.
#include <doctest/doctest.h>

#include <cmath>
#include <string>
#include <vector>

#include "near.h"
#include "ports/gdal/layer_maker.h"
#include "ports/gdal/layers.h"

using rimehaul::base::Reading;
using rimehaul::ports::gdal::read_marks;
using rimehaul::ports::gdal::read_trails;
using rimehaul::testing::feature;
using rimehaul::testing::geojson;
using rimehaul::testing::holds;
using rimehaul::testing::line_feature;
using rimehaul::testing::lines_of;
using rimehaul::testing::near;
using rimehaul::testing::TempFolder;
using rimehaul::testing::test_frame;
using rimehaul::trails::Mark;
using rimehaul::trails::MarkKind;
using rimehaul::units::Metres;

namespace {

/// Marks on one trail that runs 1112 m north from 46 N 153 W.
Reading<std::vector<Mark>> marks_of(const std::vector<std::string>& features) {
  const TempFolder folder;
  folder.write("t.geojson", geojson({line_feature(R"("name": "North")")}));
  folder.write("m.geojson", geojson(features));
  const auto trails = read_trails({folder.path(), "t.geojson"}, test_frame());
  REQUIRE(trails.data.size() == 1);
  return read_marks({folder.path(), "m.geojson"}, test_frame(), trails.data);
}

std::string point_mark(const std::string& longitude, const std::string& said) {
  return feature({"Point", "[" + longitude + ", 46.005]", said});
}

}  // namespace

TEST_CASE("a mark beside its trail stands at the nearest place of it") {
  const auto reading = marks_of(
      {point_mark("-153.0002", R"("name": "Edge", "kind": "drop", "trail": "North", "room_m": 2.5,
                     "side": "left")")});
  INFO(lines_of(reading.faults));
  REQUIRE(reading.data.size() == 1);
  CHECK(reading.faults.empty());
  const Mark& mark = reading.data.front();
  CHECK(mark.kind == MarkKind::drop);
  CHECK(mark.trail == "North");
  CHECK(mark.span.from == mark.span.to);
  // Half of the trail's 0.01 degrees of latitude; its scale changes by under 1 in 10 000 on the
  // way.
  CHECK(near(mark.span.from, Metres{555.5}, Metres{0.5}));
  CHECK(mark.room == Metres{2.5});
  CHECK(mark.side == rimehaul::trails::Side::left);
}

TEST_CASE("a cornice whose side nobody told is doubted, and a side that is none is a fault") {
  const auto untold = marks_of({point_mark(
      "-153.0002", R"("name": "Lip", "kind": "cornice", "trail": "North", "room_m": 12)")});
  CHECK(holds(lines_of(untold.faults), "cards cannot tell on which side it is"));
  REQUIRE(untold.data.size() == 1);
  CHECK_FALSE(untold.data.front().side.has_value());
  const auto odd = marks_of({point_mark(
      "-153.0002",
      R"("name": "Lip", "kind": "cornice", "trail": "North", "room_m": 12, "side": "east")")});
  CHECK(holds(lines_of(odd.faults), "side is \"east\""));
}

TEST_CASE("a stretch runs from its first to its last place on the trail, however it was drawn") {
  const auto reading =
      marks_of({feature({"LineString", "[[-153.0001, 46.006], [-153.0, 46.004]]",
                         R"("name": "Gap", "kind": "dead_zone", "trail": "North")"})});
  INFO(lines_of(reading.faults));
  REQUIRE(reading.data.size() == 1);
  CHECK(near(reading.data.front().span.from, Metres{444.4}, Metres{0.5}));
  CHECK(near(reading.data.front().span.to, Metres{666.6}, Metres{0.5}));
}

TEST_CASE("what a mark is like today does not belong into its file") {
  const auto reading = marks_of({point_mark(
      "-153.0", R"("name": "G1", "kind": "gate", "trail": "North", "status": "clear")")});
  REQUIRE(reading.data.size() == 1);
  CHECK(holds(lines_of(reading.faults), "say it in the snow report: [[status]], mark and clear"));
}

TEST_CASE(
    "a creek bridge asks for a survey and a mass as a bridge does, a radio gate for neither") {
  const auto reading =
      marks_of({point_mark("-153.0", R"("name": "Ford", "kind": "creek_bridge", "trail": "North")"),
                point_mark("-153.0", R"("name": "Lane", "kind": "radio_gate", "trail": "North")")});
  const std::string lines = lines_of(reading.faults);
  INFO(lines);
  REQUIRE(reading.data.size() == 2);
  CHECK(reading.data[0].kind == MarkKind::creek_bridge);
  CHECK(reading.data[1].kind == MarkKind::radio_gate);
  CHECK(holds(lines, "its survey does not say grade_deg"));
  CHECK(holds(lines, "it does not say most_kg"));
  CHECK_FALSE(holds(lines, "Lane"));
}

TEST_CASE("a surveyed bridge keeps its angles, its date and its mass limit") {
  const auto reading = marks_of(
      {point_mark("-153.0", R"("name": "Span", "kind": "bridge", "trail": "North", "grade_deg": 4,
                   "cross_deg": 1.5, "sd_deg": 0.5, "surveyed": "2026-01-31", "inspected": "2026-02-01T06:30:00-10:00",
                   "most_kg": 3500)")});
  INFO(lines_of(reading.faults));
  REQUIRE(reading.data.size() == 1);
  CHECK(reading.faults.empty());
  const Mark& mark = reading.data.front();
  REQUIRE(mark.survey.has_value());
  CHECK(near(mark.survey->steepest_grade.degrees(), 4.0, 1e-9));
  CHECK(near(mark.survey->steepest_cross.degrees(), 1.5, 1e-9));
  CHECK(mark.survey->inspected == rimehaul::units::parse_instant("2026-02-01T16:30:00Z"));
  CHECK(rimehaul::units::text_of(mark.survey->surveyed) == "2026-01-31T00:00:00Z");
  REQUIRE(mark.most_mass.has_value());
  CHECK(mark.most_mass->value() == 3500.0);
}

TEST_CASE("an inspection by its date alone, or by yes, is none: of which hour would it be") {
  for (const char* said : {"2026-01-31", "yes"}) {
    CAPTURE(said);
    const auto reading =
        marks_of({point_mark("-153.0", R"("name": "Span", "kind": "bridge", "trail": "North",
                     "grade_deg": 4, "cross_deg": 1.5, "sd_deg": 0.5, "surveyed": "2026-01-31",
                     "most_kg": 3500, "inspected": ")" +
                                           std::string{said} + R"(")")});
    const std::string lines = lines_of(reading.faults);
    INFO(lines);
    CHECK(holds(lines, "a moment with its zone, like 2026-01-31T07:30:00Z"));
    REQUIRE(reading.data.size() == 1);
    REQUIRE(reading.data.front().survey.has_value());
    CHECK_FALSE(reading.data.front().survey->inspected.has_value());
  }
}

TEST_CASE("a survey's deviation in rise over run covers up to three deviations in degrees") {
  for (const double grade_deg : {0.0, 4.0, 20.0, 35.0}) {
    for (const double deviation_deg : {0.2, 0.5, 2.0}) {
      CAPTURE(grade_deg);
      CAPTURE(deviation_deg);
      const auto reading = marks_of(
          {point_mark("-153.0", R"("name": "B", "kind": "bench", "trail": "North", "cross_deg": 0,
                       "surveyed": "2026-01-31", "inspected": "2026-02-01T06:30:00Z", "grade_deg": )" +
                                    std::to_string(grade_deg) + R"(, "sd_deg": )" +
                                    std::to_string(deviation_deg))});
      REQUIRE(reading.data.size() == 1);
      REQUIRE(reading.data.front().survey.has_value());
      const auto& survey = *reading.data.front().survey;
      constexpr double kDegree = 3.14159265358979323846 / 180;
      for (const double k : {1.0, 1.645, 3.0}) {
        const double raised = survey.steepest_grade
                                  .raised_by(rimehaul::units::Slope::from_ratio(
                                      k * survey.standard_deviation.ratio()))
                                  .ratio();
        CHECK(raised >= std::tan((grade_deg + k * deviation_deg) * kDegree) - 1e-12);
      }
      // And no more than 60 % too much at worst, at 35 degrees and 2 degrees of deviation.
      const double exact =
          std::tan((grade_deg + deviation_deg) * kDegree) - std::tan(grade_deg * kDegree);
      CHECK(survey.standard_deviation.ratio() <= 1.6 * exact);
    }
  }
}

TEST_CASE("a bridge without its whole survey is closed and says what is missing") {
  const auto reading = marks_of({point_mark(
      "-153.0",
      R"("name": "Span", "kind": "bridge", "trail": "North", "grade_deg": 4, "sd_deg": 0)")});
  const std::string lines = lines_of(reading.faults);
  INFO(lines);
  REQUIRE(reading.data.size() == 1);
  CHECK_FALSE(reading.data.front().survey.has_value());
  CHECK(holds(lines, "its survey does not say cross_deg, sd_deg, surveyed or inspected"));
  CHECK(holds(lines, "it does not say most_kg"));
  CHECK(holds(lines, "sd_deg is \"0\" and counts as not given"));
}

TEST_CASE("a mark of unknown kind counts as a gate that nobody cleared") {
  const auto reading =
      marks_of({point_mark("-153.0", R"("name": "X", "kind": "winch", "trail": "North")")});
  REQUIRE(reading.data.size() == 1);
  CHECK(reading.data.front().kind == MarkKind::gate);
}

TEST_CASE("a mark 30 m from its trail still belongs to it, one at 31 m does not") {
  // At 46 N one degree of longitude is about 77 466 m on the WGS 84 ellipsoid.
  const auto mark_at = [](double metres) {
    return marks_of({point_mark(std::to_string(-153.0 - metres / 77'466.0),
                                R"("name": "M", "kind": "refuge", "trail": "North")")});
  };
  CHECK(mark_at(29.9).data.size() == 1);
  const auto far = mark_at(31.0);
  CHECK(far.data.empty());
  CHECK(holds(lines_of(far.faults), "it lies 31 m away from its trail North"));
}
