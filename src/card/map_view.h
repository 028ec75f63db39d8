// The map of a sheet as plain data: what lies where, at which scale, before anyone draws it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "audit/audited_place.h"
#include "passage/judgement.h"
#include "passage/scene.h"
#include "terrain/relief.h"

namespace rimehaul::card {

/// A line on the map.
struct MapWay {
  std::vector<geo::MapPoint> points;
  std::string name;                         ///< of its trail
  std::optional<passage::Verdict> verdict;  ///< nothing: only beside the matter
  int number = 0;                           ///< of the leg; 0: none
  std::optional<double> share{};            ///< of a limit, where the map tells shares
  std::optional<audit::Band> band{};        ///< how the share comes out; drawn in place of verdict
};

enum class PlaceKind { station, refuge, turning_room, notice };

struct MapPlace {
  geo::MapPoint place;
  std::string name;
  PlaceKind kind = PlaceKind::station;
};

/// Whether a map fills its paper, or leaves what lies above and below its ways to others.
enum class PaperUse { all, height_needed };

/// Size on paper.
struct MapPaper {
  units::Metres width;
  units::Metres height;
  PaperUse use = PaperUse::all;
};

struct MapView {
  terrain::ReliefFrame frame;        ///< all that lies on the paper
  double scale = 0.0;                ///< 1 : scale
  MapPaper paper{};                  ///< that it takes
  terrain::ReliefFrame light_frame;  ///< the same ground in the pixels of its hillshade
  std::vector<double> light;         ///< hillshade, as terrain::hillshade gives it; empty: none
  std::vector<MapWay> ways;          ///< those beside the matter first
  std::vector<MapPlace> places;
  std::optional<double> north_off_deg;  ///< true north is so far clockwise of the map's north
  std::vector<std::string> heights_notes;
  std::optional<double> allowed_share{};  ///< where the map tells shares: names of trails stand too
};

/// A map of some ways, all other trails and the stations on it pale beside them, as large as the
/// paper allows at a round scale. Requires a way and a paper with sides above 0.
[[nodiscard]] MapView map_of(std::vector<MapWay> ways, const passage::Scene& scene, MapPaper paper);

/// The same ground and a pixel around it, at a pixel that suits both paper and grid, for the
/// hillshade.
[[nodiscard]] terrain::ReliefFrame relief_frame_of(const MapView& map,
                                                   const terrain::GridFrame& grid);

}  // namespace rimehaul::card
