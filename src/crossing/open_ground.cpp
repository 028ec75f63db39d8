// One zone of open ground as a rig finds it in one snow and hour: what may be driven, which way.
#include "crossing/open_ground.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "base/require.h"
#include "crossing/turning.h"
#include "passage/avalanche.h"
#include "passage/share_penalty.h"
#include "passage/snow_under.h"
#include "passage/turning.h"
#include "passage/zone_rules.h"
#include "terrain/gradient.h"
#include "terrain/stretch.h"

namespace rimehaul::crossing {

using passage::Footfall;
using passage::Stand;
using terrain::HeadingArc;
using units::Bearing;
using units::Metres;

namespace {

constexpr Metres kWidestPitch{20.0};
constexpr double kClosed = std::numeric_limits<double>::infinity();
/// The corners of a strip are looked for on a circle of so many places.
constexpr int kPlacesAround = 16;

HeadingArc arc_of(Heading heading) {
  const Sector sector = sector_of(heading);
  return HeadingArc{sector.from}.reaching(sector.from.turn_to(sector.to));
}

/// The cells that a move sweeps: both ends and, of a knight's move, the two that it passes.
std::vector<Cell> swept_by(State state) {
  const CellStep step = step_of(state.heading);
  std::vector<Cell> cells{state.cell, state.cell + step};
  if (std::abs(step.columns) == 2) {
    const std::int32_t half = step.columns / 2;
    cells.push_back(state.cell + CellStep{half, 0});
    cells.push_back(state.cell + CellStep{half, step.rows});
  } else if (std::abs(step.rows) == 2) {
    const std::int32_t half = step.rows / 2;
    cells.push_back(state.cell + CellStep{0, half});
    cells.push_back(state.cell + CellStep{step.columns, half});
  }
  return cells;
}

Lattice lattice_over(const geo::Region& region, Metres pitch) {
  const auto& outline = region.rings.front();
  geo::MapPoint low = outline.front();
  geo::MapPoint high = outline.front();
  for (const geo::MapPoint& point : outline) {
    low = {std::min(low.east, point.east), std::min(low.north, point.north)};
    high = {std::max(high.east, point.east), std::max(high.north, point.north)};
  }
  const auto cells = [&](Metres extent) {
    return static_cast<std::int32_t>(std::ceil(extent / pitch)) + 1;
  };
  return {.north_west = {low.east, high.north},
          .pitch = pitch,
          .columns = cells(high.east - low.east),
          .rows = cells(high.north - low.north)};
}

Metres half_of_rig(const rig::Rig& rig) {
  Metres half = std::max(rig.carrier.gauge, rig.carrier.contact_length) / 2.0;
  if (rig.trailer.has_value()) {
    half = std::max(half, std::max(rig.trailer->gauge, rig.trailer->contact_length) / 2.0);
  }
  return half;
}

/// A short line across a cell, for questions that are asked of lines.
geo::Polyline line_across(geo::MapPoint centre, Metres pitch) {
  const Bearing east = Bearing::from_degrees(90);
  return geo::Polyline{
      {geo::moved(centre, east, pitch / -2.0), geo::moved(centre, east, pitch / 2.0)}};
}

}  // namespace

std::optional<Metres> pitch_for(const rig::Rig& rig, Metres width, double allowed_share) {
  const Metres least = passage::least_radius(rig);
  if (!(least > Metres{0}) || !std::isfinite(least.value()) || !(allowed_share > 0.0)) {
    return std::nullopt;
  }
  constexpr double kStep = 1.05;
  for (Metres pitch = least_pitch(least); pitch <= kWidestPitch; pitch = kStep * pitch) {
    const passage::Bend bend{
        .at = Metres{0}, .radius = smallest_radius(pitch), .window = rig.carrier.overall_length};
    const auto passes = [&](const passage::Finding& finding) {
      return passage::stand_of(finding, allowed_share) == Stand::passes;
    };
    if (passes(passage::judge_turning(rig, bend)) &&
        passes(passage::judge_off_tracking(rig, bend, width))) {
      return pitch;
    }
  }
  return std::nullopt;
}

OpenGround::OpenGround(const passage::Judge& judge, const trails::Zone& zone, Metres pitch,
                       units::Instant when)
    : judge_{&judge},
      zone_{&zone},
      when_{when},
      beside_{pitch / 2.0 + zone.crossing.line_error.value_or(Metres{0}) +
              half_of_rig(judge.rig())},
      prices_{all_barred(lattice_over(zone.region, pitch))} {
  base::require(trails::may_be_crossed(zone), "ground that may not be crossed");
  for (const trails::Zone& other : judge.scene().network.zones) {
    if (other.kind != trails::ZoneKind::open_ground) {
      zones_.push_back(other);
    }
  }
  cells_.resize(cell_count(lattice()));
  for (std::uint32_t index = 0; index < cell_count(lattice()); ++index) {
    look_at(cell_at(lattice(), index));
  }
  price_moves();
}

bool OpenGround::is_inside(geo::MapPoint place) const {
  const Metres half_width = *zone_->crossing.width / 2.0;
  if (!geo::contains(zone_->region, place)) {
    return false;
  }
  for (int i = 0; i < kPlacesAround; ++i) {
    const Bearing way = Bearing::from_degrees(360.0 * i / kPlacesAround);
    if (!geo::contains(zone_->region, geo::moved(place, way, half_width))) {
      return false;
    }
  }
  return true;
}

const passage::ShareTable& OpenGround::table_for(snow::SnowState snow) {
  const auto known = tables_.find(snow);
  if (known != tables_.end()) {
    return known->second;
  }
  const auto sunk = passage::sinkage_in_new_snow(judge_->snow().weather());
  const passage::SlopeQuestion question{judge_->rig(), judge_->scene().rules, snow,
                                        sunk.value_or(Metres{std::nan("")})};
  return tables_.emplace(snow, passage::ShareTable{question}).first->second;
}

void OpenGround::look_at(Cell cell) {
  const passage::Scene& scene = judge_->scene();
  const geo::MapPoint centre = centre_of(lattice(), cell);
  if (!is_inside(centre) || !judge_->tolerance()) {
    return;
  }
  const auto height = scene.heights.at(centre);
  const auto gradients =
      terrain::gradients_under(scene.heights, {centre, centre, beside_, beside_});
  const auto here = terrain::surface_gradient(scene.heights, centre);
  if (!height || !gradients || !here) {
    return;
  }
  const geo::Polyline across = line_across(centre, lattice().pitch);
  const geo::Span whole{Metres{0}, across.length()};
  if (stand_of(passage::judge_zones(zones_, across, beside_).finding, judge_->allowed_share()) !=
      Stand::passes) {
    return;
  }
  const terrain::AttitudeBox box = gradients->attitudes(HeadingArc{across.bearing_at(Metres{0})});
  const Footfall footfall{.span = whole,
                          .middle = centre,
                          .heading = across.bearing_at(Metres{0}),
                          .height = height,
                          .aspect = terrain::aspect_of(*here),
                          .carrier = box,
                          .trailer = box};
  Ground ground{*gradients, {}};
  for (const auto& state : passage::snow_under(
           footfall, {judge_->snow(), across, judge_->tolerance(), when_, /*groomed=*/false})) {
    if (!state) {
      return;
    }
    const hazard::Exposure exposure =
        judge_->steep_ground(state->wetness).exposure_of(across, {whole, beside_}, zones_);
    if (stand_of(passage::judge_avalanche(exposure, judge_->snow().weather().bulletin_level,
                                          state->wetness, scene.rules),
                 judge_->allowed_share()) != Stand::passes) {
      return;
    }
    ground.tables.push_back(&table_for(*state));
  }
  cells_[index_of(lattice(), cell)] = std::move(ground);
}

double OpenGround::share_on(Cell cell, const HeadingArc& headings) const {
  if (!holds(lattice(), cell)) {
    return kClosed;
  }
  const std::optional<Ground>& ground = cells_[index_of(lattice(), cell)];
  if (!ground || ground->tables.empty()) {
    return kClosed;
  }
  const terrain::AttitudeBox box =
      ground->gradients.attitudes(headings).widened(*judge_->tolerance());
  double share = 0.0;
  for (const passage::ShareTable* table : ground->tables) {
    share = std::max(share, table->share_over(box));
  }
  return share;
}

/// `shares` of every state, for its own cell.
std::uint8_t OpenGround::price_of_move(State state, const std::vector<double>& shares) const {
  double share = 0.0;
  for (const Cell cell : swept_by(state)) {
    share = std::max(share, holds(lattice(), cell)
                                ? shares[index_of(lattice(), State{cell, state.heading})]
                                : kClosed);
  }
  const double penalty = passage::share_penalty(share, judge_->allowed_share());
  const double ticks =
      std::ceil(length_of(state.heading, Metres{1.0}).value() * penalty * kTicksPerPitch);
  return ticks <= 255.0 ? static_cast<std::uint8_t>(ticks) : std::uint8_t{0};
}

void OpenGround::price_moves() {
  std::vector<double> shares(prices_.price.size());
  for (unsigned heading = 0; heading < kHeadings; ++heading) {
    const HeadingArc headings = arc_of(Heading{static_cast<std::uint8_t>(heading)});
    for (std::uint32_t cell = 0; cell < cell_count(lattice()); ++cell) {
      shares[std::size_t{cell} * kHeadings + heading] =
          share_on(cell_at(lattice(), cell), headings);
    }
  }
  for (std::uint32_t index = 0; index < prices_.price.size(); ++index) {
    prices_.price[index] = price_of_move(state_at(lattice(), index), shares);
  }
  for (std::size_t cell = 0; cell < cells_.size(); ++cell) {
    prices_.turns[cell] = cells_[cell] ? kEveryTurn : std::uint16_t{0};
  }
}

}  // namespace rimehaul::crossing
