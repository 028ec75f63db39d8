// Shares out the front of a card between map, grades, legs and what is to be minded on them.
#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

#include "ports/cairo/card_drawing.h"
#include "ports/cairo/card_parts.h"

namespace rimehaul::ports::cairo {

namespace {

/// Legs that one sheet is made for.
constexpr std::size_t kLegsOfASheet = 12;
constexpr double kPointsPerMillimetre = 72.0 / 25.4;
constexpr double kLeastWideMap_pt = 50 * kPointsPerMillimetre;
constexpr double kMostWideMap_pt = 130 * kPointsPerMillimetre;
constexpr double kLeastNarrowMap_pt = 45 * kPointsPerMillimetre;
constexpr double kMostNarrowMap_pt = 75 * kPointsPerMillimetre;

/// What the front takes beside the map and the rows.
double fixed_pt(Canvas& trial, const Box& body, const card::CardSheet& sheet, FigurePlace place) {
  return write_head(trial, body, sheet) - body.top_pt + figures_beside_map_pt(trial, sheet, place) +
         Table{trial, leg_columns(body.width_pt)}.head_height();
}

/// Height of every leg's row with so much of its notes.
std::vector<double> row_heights(Canvas& trial, const Box& body, const card::RouteCard& card,
                                LegNotes notes) {
  const Table table{trial, leg_columns(body.width_pt)};
  std::vector<double> heights;
  for (const card::CardLeg& leg : card.legs) {
    heights.push_back(table.height_of(leg_row(leg, notes)));
  }
  return heights;
}

double sum_of(const std::vector<double>& heights) {
  return std::accumulate(heights.begin(), heights.end(), 0.0);
}

/// Gives as many legs as there is room for the next degree of notes, those that need least room
/// first.
class Sharing {
 public:
  Sharing(std::vector<double> heights, double room_pt)
      : heights_{std::move(heights)}, room_pt_{room_pt - sum_of(heights_)} {}

  void offer(LegNotes degree, const std::vector<double>& heights, std::vector<LegNotes>& notes) {
    std::vector<std::size_t> order(heights.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto more = [&](std::size_t leg) { return heights[leg] - heights_[leg]; };
    std::ranges::stable_sort(order, {}, more);
    for (const std::size_t leg : order) {
      if (more(leg) <= room_pt_) {
        room_pt_ -= more(leg);
        heights_[leg] = heights[leg];
        notes[leg] = degree;
      }
    }
  }

  [[nodiscard]] double room_pt() const { return room_pt_; }

 private:
  std::vector<double> heights_;
  double room_pt_;
};

}  // namespace

CardPlan plan_card(const card::CardSheet& sheet) {
  const std::size_t legs = sheet.card.legs.size();
  CardPlan all_in_front{std::vector<LegNotes>(legs, LegNotes::in_front),
                        FigurePlace::one_below_the_other, kLeastWideMap_pt};
  if (legs > kLegsOfASheet) {
    all_in_front.map_pt = kMostWideMap_pt;
    return all_in_front;
  }
  Canvas trial{Form::pdf, {}, {"", "2026-01-01T00:00:00Z"}};  // drawn for its heights alone
  const Box body = Pages{trial, "", 0}.area();
  const auto heights = [&](LegNotes notes) { return row_heights(trial, body, sheet.card, notes); };
  const auto room_pt = [&](FigurePlace place) {
    return body.height_pt - fixed_pt(trial, body, sheet, place);
  };
  // What is left, then the limit. NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
  const auto fitted = [](CardPlan plan, double left_pt, double most_pt) {
    plan.map_pt = std::floor(std::min(plan.map_pt + std::max(left_pt, 0.0), most_pt));
    return plan;
  };
  const double left_pt =
      room_pt(all_in_front.figures) - all_in_front.map_pt - sum_of(heights(LegNotes::in_front));
  if (left_pt >= 0.0) {
    return fitted(all_in_front, left_pt, kMostWideMap_pt);
  }
  CardPlan plan{std::vector<LegNotes>(legs, LegNotes::behind), FigurePlace::side_by_side,
                kLeastNarrowMap_pt};
  Sharing sharing{heights(LegNotes::behind), room_pt(plan.figures) - plan.map_pt};
  for (const LegNotes degree : {LegNotes::warnings_in_front, LegNotes::in_front}) {
    sharing.offer(degree, heights(degree), plan.notes);
  }
  return fitted(plan, sharing.room_pt(), kMostNarrowMap_pt);
}

card::MapPaper card_map_paper(const card::CardSheet& sheet) {
  const CardPlan plan = plan_card(sheet);
  const auto metres = [](double points) {
    return units::Metres{points / kPointsPerMillimetre / 1000.0};
  };
  return {metres(map_width_pt(plan.figures)), metres(plan.map_pt)};
}

}  // namespace rimehaul::ports::cairo
