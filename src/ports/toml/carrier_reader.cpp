// Reads the sheet of a carrier.
#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "ports/toml/machine_reader.h"
#include "ports/toml/provenance_reader.h"
#include "rig/rig.h"
#include "units/spread.h"

namespace rimehaul::ports::toml {

namespace {

using rig::BodyPoint;
using rig::Carrier;
using units::Kilograms;
using units::Litres;
using units::Metres;
using units::MetresPerSecond;
using units::Newtons;

constexpr std::array<Word<rig::CarrierKind>, 2> kKinds{
    {{"skis_and_tracks", rig::CarrierKind::skis_and_tracks},
     {"twin_track", rig::CarrierKind::twin_track}}};

constexpr Range kAlong{.from = -10, .to = 10};
constexpr Range kUp{.from = 0, .to = 5};
constexpr std::array<Range, 3> kPlace{kAlong, kAlong, kUp};
constexpr std::array<Range, 2> kCorner{kAlong, kAlong};
constexpr Range kForce{.from = 0, .to = 1'000'000};
constexpr std::size_t kMostCorners = 12;
constexpr std::size_t kMostSeats = 12;

BodyPoint place_of(const std::vector<double>& numbers) {
  return {.forward = Metres{numbers[0]}, .left = Metres{numbers[1]}, .up = Metres{numbers[2]}};
}

std::vector<BodyPoint> read_seats(TableReader& in) {
  std::vector<BodyPoint> seats;
  for (const auto& row : in.rows("seats_at_m", kPlace, Presence::may)) {
    seats.push_back(place_of(row));
  }
  if (seats.size() > kMostSeats) {
    in.fault("seats_at_m", {"names more than 12 seats", "check the list"});
  }
  return seats;
}

/// Whether every corner lies on or within every edge, seen counter-clockwise. NaN does not.
bool is_convex(const std::vector<rig::SupportPoint>& polygon) {
  constexpr Metres kRounding{1e-9};
  return std::ranges::all_of(polygon, [&](const rig::SupportPoint& corner) {
    const BodyPoint above{.forward = corner.forward, .left = corner.left, .up = Metres{1}};
    return std::ranges::all_of(rig::tip_edges(polygon, above),
                               [&](const rig::TipEdge& edge) { return edge.inside >= -kRounding; });
  });
}

std::vector<rig::SupportPoint> read_support(TableReader& in) {
  const std::size_t faults_before = in.faults();
  std::vector<rig::SupportPoint> polygon;
  for (const auto& row : in.rows("support_m", kCorner)) {
    polygon.push_back({.forward = Metres{row[0]}, .left = Metres{row[1]}});
  }
  if (in.faults() != faults_before) {
    return polygon;
  }
  if (polygon.size() < 3 || polygon.size() > kMostCorners) {
    in.fault("support_m", {"has " + std::to_string(polygon.size()) + " corners",
                           "give 3 to 12, counter-clockwise seen from above"});
  } else if (!is_convex(polygon)) {
    in.fault("support_m", {"is not a convex polygon, counter-clockwise seen from above",
                           "start at the rear right corner and go forward"});
  }
  return polygon;
}

rig::SlopeRatings read_ratings(TableReader in) {
  rig::SlopeRatings ratings{.climb = read_rating(in, "climb"),
                            .descent = read_rating(in, "descent"),
                            .cross = read_rating(in, "cross")};
  in.refuse_rest();
  return ratings;
}

/// Fills in one carrier, group by group.
class CarrierSheet {
 public:
  explicit CarrierSheet(const NamedReader& sheet) : in_{sheet.reader} {
    carrier_.name = sheet.name;
  }

  [[nodiscard]] std::optional<Carrier> read();

 private:
  void read_masses();
  void read_shape();
  void read_hitch();
  void calibrate_fuel();
  void read_drive();
  void read_all_ratings();

  TableReader in_;
  Carrier carrier_;
};

void CarrierSheet::read_all_ratings() {
  TableReader ratings = in_.table("ratings");
  carrier_.solo_empty = read_ratings(ratings.table("solo_empty"));
  carrier_.solo_loaded = read_ratings(ratings.table("solo_loaded"));
  carrier_.towing = read_ratings(ratings.table("towing"));
  ratings.refuse_rest();
}

void CarrierSheet::read_masses() {
  carrier_.empty = {.mass = in_.must<Kilograms>("mass_kg", {.above = 0, .to = 20'000}),
                    .at = read_place(in_, "centre_m")};
  carrier_.driver_mass = in_.must<Kilograms>("driver_kg", {.from = 40, .to = 250});
  carrier_.driver_at = read_place(in_, "driver_at_m");
  carrier_.seats = read_seats(in_);
  carrier_.bed_at = read_place(in_, "bed_at_m");
  carrier_.bed_rating = in_.must<Kilograms>("bed_kg", {.from = 0, .to = 10'000});
  carrier_.payload_rating = in_.must<Kilograms>("payload_kg", {.from = 0, .to = 10'000});
}

void CarrierSheet::read_shape() {
  carrier_.support = read_support(in_);
  carrier_.contact_length = in_.must<Metres>("contact_length_m", {.above = 0, .to = 15});
  carrier_.gauge = in_.must<Metres>("gauge_m", {.above = 0, .to = 6});
  carrier_.overall_length = in_.must<Metres>("length_m", {.above = 0, .to = 20});
  carrier_.overall_width = in_.must<Metres>("width_m", {.above = 0, .to = 6});
  carrier_.contact_area = in_.must<units::SquareMetres>("contact_area_m2", {.above = 0, .to = 30});
  carrier_.track_weight_share = in_.must<double>("track_weight_share", {.above = 0, .to = 1});
  carrier_.turning_radius = in_.must<Metres>("turning_radius_m", {.from = 0, .to = 50});
  if (carrier_.gauge > carrier_.overall_width) {
    in_.fault("gauge_m", {"is more than width_m", "correct one of them"});
  }
  if (carrier_.contact_length > carrier_.overall_length) {
    in_.fault("contact_length_m", {"is more than length_m", "correct one of them"});
  }
  const double ground_m2 = carrier_.contact_length.value() * carrier_.gauge.value();
  if (carrier_.contact_area.value() > ground_m2) {
    in_.fault("contact_area_m2",
              {"is more than contact_length_m times gauge_m", "give it in square metres"});
  }
}

void CarrierSheet::read_hitch() {
  carrier_.hitch_at = read_place(in_, "hitch_at_m");
  carrier_.hitch_vertical_rating =
      in_.must<Kilograms>("hitch_vertical_kg", {.from = 0, .to = 5'000});
  carrier_.towed_mass_rating = in_.must<Kilograms>("towed_kg", {.from = 0, .to = 20'000});
}

void CarrierSheet::calibrate_fuel() {
  if (!in_.has("fills_l")) {
    return;
  }
  constexpr Range kLitres{.above = 0, .to = 10'000};
  constexpr std::array<Range, 2> kReckonedAndFilled{kLitres, kLitres};
  const std::size_t faults_before = in_.faults();
  std::vector<double> ratios;
  for (const std::vector<double>& fill : in_.rows("fills_l", kReckonedAndFilled)) {
    ratios.push_back(fill.back() / fill.front());
  }
  if (in_.faults() != faults_before) {
    return;  // it is told already
  }
  const auto spread = units::spread_of(ratios);
  if (!spread) {
    in_.fault("fills_l", {"are too few to tell by", "log five fills or more, or leave it out"});
    return;
  }
  carrier_.fuel_log = rig::FuelLog{.fills = spread->count, .factor = spread->high};
  carrier_.consumption = carrier_.consumption * spread->high;
  carrier_.idle_consumption = carrier_.idle_consumption * spread->high;
}

void CarrierSheet::read_drive() {
  constexpr double kWattsPerKilowatt = 1000.0;
  constexpr double kKilometresPerHour = 3.6;  // of one metre per second
  carrier_.engine_power =
      in_.must<units::Watts>("power_kw", {.above = 0, .to = 1'000}) * kWattsPerKilowatt;
  carrier_.driveline_efficiency = in_.must<double>("driveline_efficiency", {.above = 0, .to = 1});
  carrier_.consumption =
      in_.must<units::GramsPerKilowattHour>("consumption_g_per_kwh", {.from = 100, .to = 2'000});
  carrier_.idle_consumption = in_.must<units::LitresPerHour>("idle_l_per_h", {.from = 0, .to = 50});
  calibrate_fuel();
  carrier_.tank = in_.must<Litres>("tank_l", {.above = 0, .to = 1'000});
  carrier_.tank_at = read_place(in_, "tank_at_m");
  carrier_.fuel_density =
      in_.must<units::KilogramsPerCubicMetre>("fuel_kg_per_m3", {.from = 600, .to = 1'000});
  carrier_.brake_force = in_.must<Newtons>("brake_force_n", kForce);
  carrier_.parking_brake_force = in_.must<Newtons>("parking_brake_force_n", kForce);
  carrier_.top_speed =
      in_.must<MetresPerSecond>("top_speed_kmh", {.above = 0, .to = 100}) / kKilometresPerHour;
}

std::optional<Carrier> CarrierSheet::read() {
  const std::size_t faults_before = in_.faults();
  const auto kind = in_.word("kind", kKinds);
  const auto provenance = read_provenance(in_, Estimates::taken);
  read_masses();
  read_shape();
  read_hitch();
  read_drive();
  std::size_t faults = in_.faults() - faults_before;
  read_all_ratings();
  // A rating with a fault counts as not given, so what needs it is closed and the sheet still
  // serves.
  const std::size_t faults_with_ratings = in_.faults();
  in_.refuse_rest();
  faults += in_.faults() - faults_with_ratings;
  if (faults > 0 || !kind || !provenance) {
    return std::nullopt;
  }
  carrier_.kind = *kind;
  carrier_.provenance = *provenance;
  return carrier_;
}

}  // namespace

BodyPoint read_place(TableReader& in, std::string_view key) {
  const std::vector<double> unknown(kPlace.size(), std::nan(""));
  return place_of(in.numbers(key, kPlace).value_or(unknown));
}

std::optional<Carrier> read_carrier(const NamedReader& sheet) {
  return CarrierSheet{sheet}.read();
}

}  // namespace rimehaul::ports::toml
