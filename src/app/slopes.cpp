#include "app/slopes.h"

#include <algorithm>
#include <filesystem>
#include <system_error>
#include <utility>

#include "app/answer.h"
#include "app/crew_on_cores.h"
#include "app/folder_to_fill.h"
#include "app/fresh_file.h"
#include "app/input_files.h"
#include "app/progress.h"
#include "app/question.h"
#include "app/slope_layers.h"
#include "app/versions.h"
#include "card/rating_words.h"
#include "card/slopes_report.h"
#include "passage/estimates.h"
#include "ports/json/slopes_json.h"
#include "units/rounding.h"

namespace rimehaul::app {

namespace {

namespace fs = std::filesystem;
using ports::gdal::RasterAnswer;
using ports::gdal::RasterTerms;

/// A rig in a snow, and where it may head on any ground.
struct JudgedRig {
  card::SlopeRig told;
  passage::HeadingTable headings;
};

std::vector<LayerFacts> layers_asked(const SlopesOptions& options) {
  const bool has_rig = options.wetness.has_value();
  std::vector<LayerFacts> asked;
  for (const LayerFacts& facts : slope_layers()) {
    const bool named =
        std::ranges::find(options.layers, std::string{facts.word}) != options.layers.end();
    if (named && is_of_a_rig(facts.layer) && !has_rig) {
      throw WrongUsage{"the layer " + std::string{facts.word} +
                       " is of a rig; say --rig RIG and --snow CLASS"};
    }
    if (named || (options.layers.empty() && (has_rig || !is_of_a_rig(facts.layer)))) {
      asked.push_back(facts);
    }
  }
  return asked;
}

std::optional<JudgedRig> judged_rig(const LoadedSite& site, const SlopesOptions& options) {
  if (!options.wetness) {  // the parser sees to it that rig and snow come together
    return std::nullopt;
  }
  const passage::Scene& scene = *site.scene;
  RigOptions asked = options.rig;
  asked.towed_kg = asked.towed_kg.value_or(0.0);
  const rig::Rig rig = rig_as_loaded(site, asked);
  const passage::SlopeQuestion question{
      .rig = rig,
      .rules = scene.rules,
      .snow = {wetness_typed(*options.wetness), surface_typed(options.surface)}};
  const units::Metres gauge =
      rig.trailer ? std::min(rig.carrier.gauge, rig.trailer->gauge) : rig.carrier.gauge;
  const std::optional<units::Slope> tolerance = passage::slope_tolerance(scene, gauge);
  const passage::ShareTable shares{question};
  constexpr double kUnknown = std::numeric_limits<double>::quiet_NaN();
  return JudgedRig{.told = {.name = rig.name,
                            .load = rig.load,
                            .towing = rig.trailer ? rig.trailer->name : "",
                            .snow = question.snow,
                            .allowed_share = shares.allowed_share(),
                            .tolerance = tolerance,
                            .closed = passage::PlaneJudge{question}.closed(),
                            .ratings = card::rating_lines(rig)},
                   .headings = {shares, tolerance.value_or(units::Slope::from_ratio(kUnknown))}};
}

std::unique_ptr<FreshFile> fresh_file(const std::string& path) {
  std::optional<fs::path> place = place_of(path);
  if (!place) {
    throw base::BadInput{
        {path, "", "cannot be written: it is no regular file", "name another folder", {}}};
  }
  return std::make_unique<FreshFile>(path, std::move(*place));
}

/// One raster on its way: the file that gets its name, the plain one that a COG is made of, and
/// what is written to first.
struct RasterToMake {
  LayerFacts facts;
  std::unique_ptr<FreshFile> file;
  std::unique_ptr<FreshFile> before;  ///< null where a plain raster is wanted
  std::unique_ptr<RasterAnswer> answer;
};

std::vector<std::pair<std::string, std::string>> notes_of(const card::SlopesReport& report,
                                                          const LayerFacts& facts) {
  std::vector<std::pair<std::string, std::string>> notes{
      {"TIFFTAG_SOFTWARE", report.made_from.versions.front()},
      {"TIFFTAG_IMAGEDESCRIPTION", facts.meaning},
      {"SITE", report.site},
      {"CAUTION", card::slopes_caution()},
      {"MADE", units::text_of(report.made_from.made)}};
  std::string heights;
  for (const card::InputFile& input : report.made_from.inputs) {
    if (input.what == "heights") {
      heights += (heights.empty() ? "" : "; ") + input.name + " sha256:" + input.digest.hex();
    }
  }
  notes.emplace_back("HEIGHTS", heights);
  if (report.rig && is_of_a_rig(facts.layer)) {
    const card::SlopeRig& rig = *report.rig;
    notes.emplace_back("RIG", rig.name);
    notes.emplace_back(
        "SNOW", std::string{snow::key_of(rig.snow.wetness)} + " " + snow::key_of(rig.snow.surface));
    notes.emplace_back("ALLOWED_SHARE_PERCENT",
                       units::text_of(100.0 * rig.allowed_share, 1, units::Round::down));
  }
  return notes;
}

RasterToMake raster_to_make(const LayerFacts& facts, const LoadedSite& site,
                            const SlopesOptions& options, const card::SlopesReport& report) {
  const std::string path = path_of({options.into, file_of(facts)});
  RasterToMake raster{.facts = facts, .file = fresh_file(path), .before = {}, .answer = {}};
  if (!options.plain) {
    raster.before = fresh_file(path);
  }
  const RasterTerms terms{
      .size = report.size,
      .grid = site.heights_source->frame(),
      .reference = site.scene->frame.horizontal,
      .kind = facts.kind,
      .nodata = facts.nodata,
      .overview = facts.overview,
      .title = facts.word,
      .unit = facts.unit,
      .notes = notes_of(report, facts),
      .colours = colours_of(facts.layer, report.rig ? report.rig->allowed_share : 1.0)};
  raster.answer = std::make_unique<RasterAnswer>(
      ports::gdal::AnswerFile{(options.plain ? raster.file : raster.before)->path(), path}, terms);
  return raster;
}

/// The site's own source and as many more as there are cores, or blocks.
std::vector<std::unique_ptr<terrain::BlockSource>> more_sources(const LoadedSite& site,
                                                                std::size_t blocks) {
  const std::size_t workers = std::min(blocks, hands());
  std::vector<std::unique_ptr<terrain::BlockSource>> more;
  for (std::size_t worker = 1; worker < workers; ++worker) {
    more.push_back(heights_again(site));
  }
  return more;
}

card::SlopesReport blank_report(const LoadedSite& site, const std::optional<JudgedRig>& judged,
                                const Outside& outside) {
  const passage::Scene& scene = *site.scene;
  card::SlopesReport report;
  report.site = site.name;
  report.map_frame = scene.frame.horizontal_name;
  report.size = site.heights_source->size();
  report.cell = site.heights_source->frame().larger_step();
  report.sigma = terrain::window_sigma(site.heights_source->frame(), scene.trust,
                                       terrain::WindowEstimate::horn);
  report.heights_notes = site.heights_notes;
  report.made_from = made_from(site.inputs, outside);
  report.local_clock = site.local_clock;
  if (judged) {
    report.rig = judged->told;
    report.estimates = passage::estimates_in(
        {.rules = scene.rules,
         .towing = judged->told.towing.empty() ? passage::Towing::no : passage::Towing::yes,
         .snow = {judged->told.snow}});
  }
  return report;
}

/// Fills all rasters in one sweep, and makes COGs of them where they are wanted.
void fill(std::vector<RasterToMake>& rasters, const LoadedSite& site,
          const std::optional<JudgedRig>& judged, const Outside& outside,
          card::SlopesReport& report) {
  terrain::BlockSource& own = *site.heights_source;
  const terrain::Sweep blocks{terrain::cut_to_sweep({own.size(), own.kept_together()})};
  constexpr double kUnknown = std::numeric_limits<double>::quiet_NaN();
  SlopeSweep sweep{
      .terms = {own.frame(), report.sigma.value_or(units::Slope::from_ratio(kUnknown))},
      .headings = judged ? &judged->headings : nullptr,
      .layers = {},
      .path = terrain::vector_paths().back()};
  std::size_t parts = blocks.count();
  for (const RasterToMake& raster : rasters) {
    sweep.layers.push_back({raster.facts.layer, raster.answer.get()});
    parts += raster.before ? blocks.count() : 0;
  }
  const auto more = more_sources(site, blocks.count());
  std::vector<terrain::BlockSource*> sources{&own};
  std::ranges::transform(more, std::back_inserter(sources),
                         [](const auto& source) { return source.get(); });
  Progress progress{outside, "writing slopes"};
  progress.parts_to_come(parts);
  const SweepTally tally = sweep_slopes(sources, blocks, sweep, progress);
  for (RasterToMake& raster : rasters) {
    if (raster.before) {
      ports::gdal::write_cog(*raster.answer, raster.file->path(), progress, blocks.count());
      raster.before.reset();
    }
    raster.answer.reset();
  }
  report.known = tally.slopes.known;
  report.open = tally.open;
  if (tally.slopes.known > 0) {
    report.steepest = units::Slope::from_degrees(static_cast<double>(tally.slopes.steepest_deg));
  }
}

}  // namespace

Status slopes(const SlopesOptions& options, const Outside& outside) {
  const std::vector<LayerFacts> layers = layers_asked(options);
  const LoadedSite site = load_usable_site(options.common.site);
  const std::optional<JudgedRig> judged = judged_rig(site, options);
  card::SlopesReport report = blank_report(site, judged, outside);
  FolderToFill folder{options.into};
  std::vector<RasterToMake> rasters;
  for (const LayerFacts& facts : layers) {
    rasters.push_back(raster_to_make(facts, site, options, report));
    report.rasters.push_back(
        {facts.word, path_of({options.into, file_of(facts)}), facts.meaning, facts.unit});
  }
  fill(rasters, site, judged, outside, report);
  Answer answer{.text = card::text_of(report, kColumns), .json = ports::json::slopes_json(report)};
  for (RasterToMake& raster : rasters) {
    answer.made.push_back(std::move(raster.file));
  }
  give_answer(std::move(answer), options.common, outside);
  folder.keep();
  return judged && report.open == 0 ? Status::honest_no : Status::yes;
}

}  // namespace rimehaul::app
