#include "ports/gdal/height_raster.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

#include "ports/gdal/frame_choice.h"
#include "ports/gdal/height_mosaic.h"
#include "ports/gdal/metric_frame.h"
#include "ports/gdal/plain_heights.h"
#include "ports/gdal/rounded_heights.h"
#include "ports/gdal/settled_heights.h"
#include "ports/gdal/warped_heights.h"

namespace rimehaul::ports::gdal {

namespace {

bool is_fault(const base::Fault& fault) {
  return fault.weight == base::Weight::fault;
}

/// Opens the heights of one request step by step; stops adding data, not faults, once one is found.
class Opening {
 public:
  explicit Opening(const HeightRasterRequest& request) : request_{request} {}

  base::Reading<OpenedHeights> run();

 private:
  void open_files();
  void settle_vertical();
  void settle_frame();
  void note_rounding();
  void doubt_rounding();
  void build();
  void warp(std::vector<HeightMosaic> mosaics);
  void check_corners();
  void check_steps();
  std::vector<HeightMosaic> mosaics();
  void site_fault(const char* key, Complaint complaint, base::Weight weight = base::Weight::fault);
  void take(std::vector<base::Fault> faults);
  [[nodiscard]] bool is_spoilt() const { return std::ranges::any_of(faults_, is_fault); }

  const HeightRasterRequest& request_;
  std::vector<RasterFile> files_;
  Reference frame_;
  std::vector<base::Fault> faults_;
  OpenedHeights opened_;
};

void Opening::site_fault(const char* key, Complaint complaint, base::Weight weight) {
  faults_.push_back({.file = "site.toml",
                     .place = key,
                     .problem = std::move(complaint.problem),
                     .remedy = std::move(complaint.remedy),
                     .weight = weight});
}

void Opening::take(std::vector<base::Fault> faults) {
  std::ranges::move(faults, std::back_inserter(faults_));
}

void Opening::open_files() {
  if (request_.files.empty()) {
    site_fault("heights.files", {"no file of heights is named", "name at least one raster"});
  }
  for (const std::string& shown : request_.files) {
    try {
      base::Reading<std::optional<RasterFile>> reading = RasterFile::open(
          checked_file({request_.folder, shown, request_.shown_folder}, kLargestRasterBytes));
      take(std::move(reading.faults));
      if (reading.data.has_value()) {
        files_.push_back(std::move(*reading.data));
      }
    } catch (const base::BadInput& bad) {
      take({bad.fault()});
    }
  }
}

void Opening::settle_vertical() {
  base::Reading<std::string> settled =
      settled_vertical(files_, {.metres_per_unit = request_.metres_per_unit,
                                .datum = request_.vertical_datum.value_or(""),
                                .range = {request_.lowest, request_.highest}});
  take(std::move(settled.faults));
  HeightRasterFacts& facts = opened_.facts;
  facts.frame.vertical_name = settled.data;
  for (const RasterFile& file : files_) {
    if (file.metres_per_unit() != 1.0) {
      facts.notes.push_back(file.shown() + ": in " + name_of_unit(file.metres_per_unit()) +
                            ", brought to metres");
    }
  }
  if (!files_.empty()) {
    facts.metres_per_unit = files_.front().metres_per_unit();
    facts.says_unit = std::ranges::all_of(
        files_, [](const RasterFile& file) { return file.vertical().metres_per_unit.has_value(); });
  }
  facts.says_datum = std::ranges::any_of(
      files_, [](const RasterFile& file) { return !file.vertical().datum.empty(); });
}

void Opening::note_rounding() {
  std::optional<units::Metres>& coarsest = opened_.facts.quantum;
  for (const RasterFile& file : files_) {
    try {
      const std::optional<units::Metres> quantum = quantum_of(file);
      if (quantum.has_value() && coarsest.value_or(units::Metres{0}) < *quantum) {
        coarsest = quantum;
      }
    } catch (const base::BadInput& bad) {
      take({bad.fault()});
    }
  }
}

void Opening::doubt_rounding() {
  if (auto complaint = complaint_of_steps({opened_.facts.quantum, opened_.facts.narrowest_step})) {
    site_fault("heights.files", std::move(*complaint), base::Weight::doubt);
  }
}

std::vector<HeightMosaic> Opening::mosaics() {
  std::vector<std::vector<RasterFile>> groups;
  for (RasterFile& file : files_) {
    const auto same = std::ranges::find_if(groups, [&](const std::vector<RasterFile>& group) {
      return are_same({group.front().reference(), file.reference()});
    });
    if (same == groups.end()) {
      groups.emplace_back().push_back(std::move(file));
    } else {
      same->push_back(std::move(file));
    }
  }
  std::vector<HeightMosaic> made;
  for (std::vector<RasterFile>& group : groups) {
    base::Reading<std::optional<HeightMosaic>> reading = HeightMosaic::of(std::move(group));
    take(std::move(reading.faults));
    if (reading.data.has_value()) {
      made.push_back(std::move(*reading.data));
    }
  }
  return made;
}

void Opening::settle_frame() {
  geo::MapFrame& frame = opened_.facts.frame;
  if (files_.empty()) {
    if (request_.map_frame.has_value()) {
      base::Reading<geo::MapFrame> declared = declared_frame(*request_.map_frame);
      take(std::move(declared.faults));
      frame.horizontal = std::move(declared.data.horizontal);
      frame.horizontal_name = std::move(declared.data.horizontal_name);
    }
    return;
  }
  const RasterFile& first = files_.front();
  base::Reading<Reference> choice = chosen_frame(
      {first.reference(), outline_of(first.lattice(), first.size())}, request_.map_frame);
  const bool is_sound = choice.faults.empty();
  take(std::move(choice.faults));
  frame_ = std::move(choice.data);
  if (!is_sound) {
    return;
  }
  frame.horizontal = text_of(frame_);
  frame.horizontal_name = name_of(frame_);
}

void Opening::build() {
  note_rounding();
  std::vector<HeightMosaic> all = mosaics();
  if (is_spoilt()) {
    return;
  }
  const HeightMosaic& first = all.front();
  const std::optional<double> scale =
      all.size() == 1
          ? scale_between({first.reference(), frame_}, outline_of(first.lattice(), first.size()))
          : std::nullopt;
  if (scale.has_value()) {
    const terrain::GridFrame grid = first.lattice().scaled(*scale).as_metric();
    opened_.facts.narrowest_step = grid.smaller_step();
    opened_.facts.widest_step = grid.larger_step();
    opened_.source = std::make_unique<PlainHeights>(std::move(all.front()), grid);
  } else {
    warp(std::move(all));
  }
}

void Opening::warp(std::vector<HeightMosaic> mosaics) {
  HeightRasterFacts& facts = opened_.facts;
  const std::string from = name_of(mosaics.front().reference());
  std::unique_ptr<WarpedHeights> warped = WarpedHeights::make(std::move(mosaics), frame_);
  if (!warped) {
    site_fault("map_frame",
               {"no accurate transformation brings all heights into " + facts.frame.horizontal_name,
                "declare a map_frame on the datum of the heights, or install the "
                "transformation grid it needs"});
    return;
  }
  facts.warped = true;
  facts.narrowest_step = warped->narrowest_step();
  facts.widest_step = warped->widest_step();
  facts.notes.push_back("brought from " + from + " into " + facts.frame.horizontal_name +
                        ", bilinear");
  opened_.source = std::move(warped);
}

void Opening::check_corners() {
  const terrain::GridFrame grid = opened_.source->frame();
  const terrain::CellIndex last{opened_.source->size().column - 1, opened_.source->size().row - 1};
  std::vector<PlainPoint> corners;
  for (const terrain::CellIndex cell :
       {terrain::CellIndex{0, 0}, terrain::CellIndex{last.column, 0},
        terrain::CellIndex{0, last.row}, last}) {
    const geo::MapPoint corner = grid.centre_of(cell);
    corners.push_back({corner.east.value(), corner.north.value()});
  }
  if (std::optional<Complaint> trouble = trouble_with(frame_, corners)) {
    site_fault("map_frame", std::move(*trouble));
  }
}

void Opening::check_steps() {
  constexpr units::Metres kLeast{0.05};
  if (!(opened_.facts.narrowest_step >= kLeast)) {
    site_fault("heights.files", {"the cells are narrower than 0.05 m",
                                 "check the cell size, or bring the heights to wider cells"});
  }
}

base::Reading<OpenedHeights> Opening::run() {
  start_gdal();
  const bool has_range = request_.lowest < request_.highest;
  if (!has_range) {
    site_fault("heights.lowest_m", {"the plausible range of heights is empty",
                                    "give heights.lowest_m below heights.highest_m"});
  }
  open_files();
  settle_vertical();
  settle_frame();
  if (!is_spoilt()) {
    try {
      build();
    } catch (const base::BadInput& bad) {
      take({bad.fault()});
    }
  }
  if (opened_.source != nullptr) {
    check_corners();
    check_steps();
    doubt_rounding();
  }
  if (is_spoilt()) {
    opened_.source = nullptr;
  }
  return {std::move(opened_), std::move(faults_)};
}

}  // namespace

base::Reading<OpenedHeights> open_heights(const HeightRasterRequest& request) {
  return Opening{request}.run();
}

base::Reading<geo::MapFrame> declared_frame(const std::string& map_frame) {
  start_gdal();
  base::Reading<Reference> declared = reference_declared(map_frame);
  if (!declared.faults.empty()) {
    return {{}, std::move(declared.faults)};
  }
  geo::MapFrame frame;
  frame.horizontal = text_of(declared.data);
  frame.horizontal_name = name_of(declared.data);
  return {frame, {}};
}

}  // namespace rimehaul::ports::gdal
