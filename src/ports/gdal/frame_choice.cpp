#include "ports/gdal/frame_choice.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "ports/gdal/metric_frame.h"

namespace rimehaul::ports::gdal {

namespace {

base::Fault fault_of_site(Complaint complaint) {
  return {.file = "site.toml",
          .place = "map_frame",
          .problem = std::move(complaint.problem),
          .remedy = std::move(complaint.remedy)};
}

Reference own_frame(const HeightsLie& heights) {
  if (!is_projected(heights.reference)) {
    return utm_around(heights.reference, heights.places[heights.places.size() / 2]);
  }
  // Counting the same map in metres moves no cell, so nothing has to be resampled.
  return metres_per_map_unit(heights.reference) == 1.0 ? horizontal_part(heights.reference.get())
                                                       : in_metres(heights.reference);
}

}  // namespace

base::Reading<Reference> reference_declared(const std::string& map_frame) {
  base::Reading<Reference> declared;
  declared.data = reference_from(map_frame);
  if (!declared.data) {
    declared.faults.push_back(
        fault_of_site({"the reference system \"" + map_frame + "\" is not known",
                       "give a code such as \"EPSG:32605\""}));
  } else if (std::optional<Complaint> trouble = trouble_with(declared.data, {})) {
    declared.faults.push_back(fault_of_site(std::move(*trouble)));
  }
  return declared;
}

base::Reading<Reference> chosen_frame(const HeightsLie& heights,
                                      const std::optional<std::string>& declared) {
  base::Reading<Reference> choice;
  if (declared.has_value()) {
    choice = reference_declared(*declared);
  } else {
    choice.data = own_frame(heights);
    if (!choice.data) {
      choice.faults.push_back(
          fault_of_site({"no metric map can be chosen for heights in " + name_of(heights.reference),
                         "set map_frame to a projected system in metres made for the area"}));
    }
  }
  if (!choice.faults.empty()) {
    return choice;
  }
  const Transformation to_map = transformation_between({heights.reference, choice.data});
  if (!to_map) {
    choice.faults.push_back(fault_of_site(
        {"no accurate transformation brings the heights from " + name_of(heights.reference) +
             " into " + name_of(choice.data),
         "declare a map_frame on the datum of the heights, or install the transformation grid it "
         "needs"}));
    return choice;
  }
  std::vector<PlainPoint> places = heights.places;
  transform(to_map, places);
  if (std::optional<Complaint> trouble = trouble_with(choice.data, places)) {
    choice.faults.push_back(fault_of_site(std::move(*trouble)));
  }
  return choice;
}

std::optional<double> scale_between(const TwoReferences& two,
                                    const std::vector<PlainPoint>& places) {
  constexpr double kMillimetre = 1e-3;
  if (!is_projected(two.from) || !is_projected(two.to)) {
    return std::nullopt;
  }
  const Transformation transformation = transformation_between(two);
  if (!transformation) {
    return std::nullopt;
  }
  const double scale = metres_per_map_unit(two.from) / metres_per_map_unit(two.to);
  std::vector<PlainPoint> moved = places;
  transform(transformation, moved);
  for (std::size_t index = 0; index < places.size(); ++index) {
    const bool stays = std::hypot(moved[index].x - scale * places[index].x,
                                  moved[index].y - scale * places[index].y) <= kMillimetre;
    if (!stays) {
      return std::nullopt;
    }
  }
  return scale;
}

}  // namespace rimehaul::ports::gdal
