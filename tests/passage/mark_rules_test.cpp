// Marks on a trail: what closes it there, and where a survey replaces the heights.
#include "passage/mark_rules.h"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <utility>

#include "near.h"
#include "passage/demo_scene.h"

namespace rimehaul::passage {

namespace {

using testing::place;
using units::Metres;

trails::Trail some_trail() {
  return testing::plain_trail("North Way", {place(0, 0), place(100, 0)});
}

Stand stand(const Finding& finding) {
  return stand_of(finding, 0.7);
}

trails::Mark mark_of(trails::MarkKind kind) {
  trails::Mark mark;
  mark.name = "M";
  mark.kind = kind;
  mark.trail = "North Way";
  mark.span = {Metres{20}, Metres{40}};
  return mark;
}

constexpr Metres kReach{1.5};

Finding judged(const trails::Mark& mark, const snow::SiteStatus& status = {}) {
  return judge_mark(mark, testing::plain_rules(),
                    {units::Kilograms{1000}, kReach, testing::mid_morning(), status});
}

/// Weather that ended so long before the hour of the question.
snow::SiteStatus weather_ended(std::int64_t seconds_before) {
  snow::SiteStatus status;
  status.last_weather = units::Instant{testing::mid_morning().seconds - seconds_before};
  return status;
}

snow::SiteStatus told(bool clear) {
  snow::SiteStatus status = weather_ended(3600);
  status.marks = {{"M", clear, std::nullopt}};
  return status;
}

TEST_CASE("what needs today's word is closed until it is told clear") {
  using trails::MarkKind;
  for (const MarkKind kind :
       {MarkKind::gate, MarkKind::blasting, MarkKind::winch_cable, MarkKind::radio_gate}) {
    const trails::Mark mark = mark_of(kind);
    CHECK(stand(judged(mark)) == Stand::missing);
    CHECK(stand(judged(mark, told(false))) == Stand::refused);
    CHECK(stand(judged(mark, told(true))) == Stand::passes);
  }
}

TEST_CASE("whatever is told not clear is closed; what needs no word is open without one") {
  const trails::Mark mark = mark_of(trails::MarkKind::piste_crossing);
  CHECK(stand(judged(mark)) == Stand::passes);
  CHECK(stand(judged(mark, told(false))) == Stand::refused);
}

TEST_CASE("a status holds until its time, that second included, and then counts as not said") {
  const trails::Mark mark = mark_of(trails::MarkKind::winch_cable);
  snow::SiteStatus status = told(true);
  status.marks[0].until = testing::mid_morning();
  CHECK(stand(judged(mark, status)) == Stand::passes);
  status.marks[0].until->seconds -= 1;
  CHECK(stand(judged(mark, status)) == Stand::missing);
  status.marks.push_back({"M", true, std::nullopt});
  CHECK(stand(judged(mark, status)) == Stand::passes);
  status.marks.push_back({"M", false, std::nullopt});
  CHECK(stand(judged(mark, status)) == Stand::refused);
}

TEST_CASE("a drop or a cornice needs its setback from the rig's side, the least of it allowed") {
  using trails::MarkKind;
  const Rules rules = testing::plain_rules();
  for (const auto& [kind, least] : {std::pair{MarkKind::drop, rules.setback},
                                    std::pair{MarkKind::cornice, rules.cornice_setback}}) {
    trails::Mark mark = mark_of(kind);
    CHECK(stand(judged(mark)) == Stand::missing);
    mark.room = least + kReach;
    CHECK(stand(judged(mark)) == Stand::passes);
    mark.room = *mark.room - Metres{0.001};
    CHECK(stand(judged(mark)) == Stand::refused);
    mark.room = Metres{std::nan("")};
    CHECK(stand(judged(mark)) == Stand::refused);
  }
  CHECK(rules.cornice_setback > rules.setback);
}

TEST_CASE("the page's cornice: a line at 12 m keeps 10.2 m, at 11.7 m no more than 9.9 m") {
  trails::Mark mark = mark_of(trails::MarkKind::cornice);
  const Metres reach = Metres{1.6} / 2 + Metres{1};
  const auto at = [&](double line_m) {
    mark.room = Metres{line_m};
    return stand(judge_mark(mark, default_rules(),
                            {units::Kilograms{1000}, reach, testing::mid_morning(), {}}));
  };
  CHECK(at(12) == Stand::passes);
  CHECK(at(11.7) == Stand::refused);
}

trails::Mark surveyed_bridge() {
  trails::Mark mark = mark_of(trails::MarkKind::bridge);
  mark.survey = trails::Survey{
      units::Slope::from_degrees(4), units::Slope::from_degrees(2), units::Slope::from_percent(1),
      *units::parse_instant("2026-01-20T00:00:00Z"), testing::mid_morning()};
  mark.most_mass = units::Kilograms{2000};
  return mark;
}

TEST_CASE("a bridge carries the rig only if surveyed, inspected and strong enough") {
  const snow::SiteStatus calm = weather_ended(3600);
  trails::Mark mark = surveyed_bridge();
  CHECK(stand(judged(mark, calm)) == Stand::passes);
  CHECK(judged(mark, calm).share == std::optional{0.5});
  mark.most_mass = units::Kilograms{1400};
  CHECK(stand(judged(mark, calm)) == Stand::exceeds);
  mark.most_mass.reset();
  CHECK(stand(judged(mark, calm)) == Stand::missing);
  mark = surveyed_bridge();
  mark.survey->inspected.reset();
  CHECK(stand(judged(mark, calm)) == Stand::missing);
  mark = surveyed_bridge();
  mark.survey->surveyed = *units::parse_instant("2026-02-02T00:00:00Z");
  CHECK(stand(judged(mark, calm)) == Stand::refused);
  mark.survey.reset();
  CHECK(stand(judged(mark, calm)) == Stand::missing);
}

TEST_CASE("an inspection counts only when it is proven later than the last weather") {
  const Rules rules = testing::plain_rules();
  trails::Mark mark = surveyed_bridge();
  const auto lies = [&](const snow::SiteStatus& status) {
    return surveyed_lie(mark, rules, {testing::mid_morning(), status.last_weather}).has_value();
  };
  CHECK(stand(judged(mark)) == Stand::missing);  // nobody said when the weather ended
  CHECK_FALSE(lies({}));
  CHECK(stand(judged(mark, weather_ended(1))) == Stand::passes);
  CHECK(lies(weather_ended(1)));
  CHECK(stand(judged(mark, weather_ended(0))) == Stand::refused);
  CHECK_FALSE(lies(weather_ended(0)));
  mark.survey->inspected->seconds -= 3600;
  CHECK(stand(judged(mark, weather_ended(3600))) == Stand::refused);
  CHECK(stand(judged(mark, weather_ended(3601))) == Stand::passes);
  mark.survey->inspected->seconds += 3601;  // after the hour of the question
  CHECK(stand(judged(mark, weather_ended(1))) == Stand::refused);
}

SurveyAsked calm() {
  return {testing::mid_morning(), weather_ended(3600).last_weather};
}

TEST_CASE("a survey stands for its slopes either way, k standard deviations added") {
  const Rules rules = testing::plain_rules();
  const auto lie = surveyed_lie(surveyed_bridge(), rules, calm());
  REQUIRE(lie.has_value());
  CHECK(testing::near_degrees(lie->found.grade_high, 4, 1e-9));
  CHECK(testing::near_degrees(lie->found.cross_low, -2, 1e-9));
  const double more = 1.645 * 0.01;
  CHECK(testing::near(lie->up_to.grade_low.ratio(), lie->found.grade_low.ratio() - more, 1e-12));
  CHECK(testing::near(lie->up_to.cross_high.ratio(), lie->found.cross_high.ratio() + more, 1e-12));
  trails::Mark mark = surveyed_bridge();
  mark.survey->steepest_cross = units::Slope::from_ratio(std::nan(""));
  CHECK_FALSE(surveyed_lie(mark, rules, calm()).has_value());
}

TEST_CASE("marks lie the other way round when a trail is driven against its drawing") {
  trails::Network network;
  network.trails = {some_trail()};
  network.marks = {mark_of(trails::MarkKind::gate)};
  const Stretch stretch{.trail = 0,
                        .span = {Metres{10}, Metres{90}},
                        .way = trails::Way::against,
                        .line = network.trails[0].line.part({Metres{10}, Metres{90}}).reversed()};
  const auto found = marks_on(network, stretch);
  REQUIRE(found.size() == 1);
  CHECK(found[0].span == geo::Span{Metres{50}, Metres{70}});
  network.marks[0].span = {Metres{95}, Metres{99}};
  CHECK(marks_on(network, stretch).empty());
  network.marks[0].span = {Metres{90}, Metres{99}};
  CHECK(marks_on(network, stretch).size() == 1);
}

TEST_CASE("snow over a creek needs a survey, a mass, today's word, and snow dry enough") {
  trails::Mark mark = surveyed_bridge();
  mark.kind = trails::MarkKind::creek_bridge;
  CHECK(stand(judged(mark)) == Stand::missing);
  CHECK(stand(judged(mark, told(true))) == Stand::passes);
  mark.most_mass = units::Kilograms{1400};
  CHECK(stand(judged(mark, told(true))) == Stand::exceeds);
  mark.survey.reset();
  CHECK(stand(judged(mark, told(true))) == Stand::missing);
  Rules rules = default_rules();
  const snow::SnowState dry{snow::Wetness::dry, snow::Surface::groomed};
  const snow::SnowState moist{snow::Wetness::moist, snow::Surface::groomed};
  CHECK(stand(judge_creek_bridge(mark, rules, dry)) == Stand::passes);
  CHECK(stand(judge_creek_bridge(mark, rules, moist)) == Stand::refused);
  rules.wettest_creek_bridge = snow::Wetness::moist;
  CHECK(stand(judge_creek_bridge(mark, rules, moist)) == Stand::passes);
}

TEST_CASE("surveyed slopes that are no sizes are as good as none, each by itself") {
  const double infinite = std::numeric_limits<double>::infinity();
  for (const auto slope : {&trails::Survey::steepest_grade, &trails::Survey::steepest_cross,
                           &trails::Survey::standard_deviation}) {
    for (const double bad : {std::nan(""), infinite, -0.001}) {
      CAPTURE(bad);
      trails::Mark mark = surveyed_bridge();
      (*mark.survey).*slope = units::Slope::from_ratio(bad);
      const Finding finding = judged(mark, weather_ended(3600));
      CHECK(stand(finding) == Stand::missing);
      CHECK(finding.missing == "surveyed slopes of bridge 'M'");
      CHECK_FALSE(surveyed_lie(mark, testing::plain_rules(), calm()).has_value());
    }
    trails::Mark mark = surveyed_bridge();
    (*mark.survey).*slope = units::Slope::from_ratio(0);
    CHECK(stand(judged(mark, weather_ended(3600))) == Stand::passes);
  }
}

TEST_CASE("a mark that ends before a stretch is not on it; one that ends where it begins is") {
  trails::Network network;
  network.trails = {some_trail()};
  network.marks = {mark_of(trails::MarkKind::gate)};
  const Stretch stretch{.trail = 0,
                        .span = {Metres{10}, Metres{90}},
                        .way = trails::Way::as_drawn,
                        .line = network.trails[0].line.part({Metres{10}, Metres{90}})};
  const auto count = [&](double from_m, double to_m) {
    network.marks[0].span = {Metres{from_m}, Metres{to_m}};
    return marks_on(network, stretch).size();
  };
  CHECK(count(0, 9.999) == 0);
  CHECK(count(0, 10) == 1);
  CHECK(marks_on(network, stretch)[0].span == geo::Span{Metres{-10}, Metres{0}});
  CHECK(count(std::nan(""), std::nan("")) == 1);  // it may be here
}

}  // namespace

}  // namespace rimehaul::passage
