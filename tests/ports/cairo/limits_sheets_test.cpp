// The sheets of limits and of rigs: one page that grows, or more pages, so that no word is cut.
#include <doctest/doctest.h>

#include <cstdlib>
#include <string>

#include "ports/cairo/envelope_sheet.h"
#include "ports/cairo/read_back.h"
#include "ports/cairo/rig_page.h"

namespace rimehaul::ports::cairo {

namespace {

using testing::pages_of;
using units::Kilograms;
using units::Metres;

constexpr double kA4_pt = 841.890;

rig::Rig bare_rig() {
  rig::Rig rig;
  rig.name = "Tester";
  rig.driver_level = "seasoned";
  rig::Carrier& carrier = rig.carrier;
  carrier.name = "Carrier";
  carrier.empty = {Kilograms{450}, {Metres{1.1}, Metres{0}, Metres{0.55}}};
  carrier.contact_length = Metres{2.2};
  carrier.gauge = Metres{1.0};
  carrier.contact_area = units::SquareMetres{1.0};
  carrier.bed_rating = carrier.payload_rating = Kilograms{200};
  carrier.fuel_density = units::KilogramsPerCubicMetre{800};
  carrier.support = {{Metres{0}, Metres{-0.5}},
                     {Metres{2.2}, Metres{-0.5}},
                     {Metres{2.2}, Metres{0.5}},
                     {Metres{0}, Metres{0.5}}};
  return rig;
}

card::LimitsReport closed_report() {
  const passage::Rules rules = passage::default_rules();
  const rig::Rig rig = bare_rig();  // without any rating: closed
  return card::limits_report({.rig = rig,
                              .rules = rules,
                              .classes = {snow::Wetness::dry, snow::Wetness::slush},
                              .surfaces = {snow::Surface::groomed}});
}

/// Height of an SVG's page as its first line says, points.
double height_of(const std::string& svg) {
  const std::string key = "height=\"";
  const std::size_t at = svg.find(key);
  REQUIRE(at != std::string::npos);
  return std::strtod(svg.c_str() + at + key.size(), nullptr);
}

std::string long_words() {
  std::string words;
  for (int i = 0; i < 1500; ++i) {
    words += "long words ";
  }
  return words;
}

}  // namespace

TEST_CASE("a sheet of limits is A4, and longer where its words need more") {
  card::LimitsReport report = closed_report();
  CHECK(height_of(envelope_sheet(report, Form::svg).bytes) == doctest::Approx(kA4_pt));
  report.estimates = {long_words()};
  CHECK(height_of(envelope_sheet(report, Form::svg).bytes) > 1.5 * kA4_pt);
}

TEST_CASE("a rig that is closed in all snow is drawn all the same, and the figure says closed") {
  const card::Printed printed = envelope_sheet(closed_report(), Form::pdf);
  REQUIRE(printed.figure_words.size() == 1);
  CHECK(printed.figure_words.front().find("dry closed; slush closed;") != std::string::npos);
}

TEST_CASE("a rig sheet goes on over A4 pages as a PDF, and grows as an SVG") {
  card::RigSheet sheet = card::rig_sheet(bare_rig(), passage::default_rules());
  CHECK(pages_of(rig_page(sheet, Form::pdf).bytes) == 1);
  CHECK(height_of(rig_page(sheet, Form::svg).bytes) == doctest::Approx(kA4_pt));
  sheet.estimates.assign(40,
                         "an estimate that somebody has made of something on this rig, told "
                         "at such length that one page will not hold all of them together");
  for (int i = 0; i < 60; ++i) {
    sheet.carrier.masses.push_back({"box", {Kilograms{1}, {Metres{1}, Metres{0}, Metres{1}}}});
  }
  CHECK(pages_of(rig_page(sheet, Form::pdf).bytes) > 1);
  CHECK(height_of(rig_page(sheet, Form::svg).bytes) > 1.2 * kA4_pt);
}

TEST_CASE("a rig that is overloaded is told so at the head of its printed sheet") {
  rig::Rig rig = bare_rig();
  CHECK(testing::words_of(rig_page(card::rig_sheet(rig, passage::default_rules()), Form::pdf).bytes)
            .find("OVERLOADED") == std::string::npos);
  rig.load.bed = Kilograms{100'000};
  const std::string words =
      testing::words_of(rig_page(card::rig_sheet(rig, passage::default_rules()), Form::pdf).bytes);
  const auto headline = words.find("OVERLOADED, not driven");
  REQUIRE(headline != std::string::npos);
  CHECK(headline < words.find("A planning aid"));
  CHECK(headline < words.find("From above"));
}

TEST_CASE("the same sheet gives the same bytes") {
  const card::LimitsReport report = closed_report();
  const card::RigSheet sheet = card::rig_sheet(bare_rig(), passage::default_rules());
  // Of a PDF this holds from run to run; within one, its library counts fonts on.
  const bool same_limits =
      envelope_sheet(report, Form::svg).bytes == envelope_sheet(report, Form::svg).bytes;
  const bool same_rig = rig_page(sheet, Form::svg).bytes == rig_page(sheet, Form::svg).bytes;
  CHECK(same_limits);
  CHECK(same_rig);
}

}  // namespace rimehaul::ports::cairo
