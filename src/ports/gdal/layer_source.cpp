#include "ports/gdal/layer_source.h"

#include <cpl_string.h>
#include <ogr_api.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <iterator>
#include <utility>

#include "base/nearest_name.h"
#include "base/one_line.h"
#include "ports/gdal/layer_file.h"
#include "ports/gdal/layer_shape.h"
#include "ports/gdal/utf8.h"

namespace rimehaul::ports::gdal {

namespace {

/// Free text that may hold `key=value` pairs, where a format has no columns of its own.
constexpr std::array<const char*, 3> kFreeText{"desc", "cmt", "description"};

template <std::size_t Count>
bool is_among(const std::array<const char*, Count>& names, const std::string& name) {
  return std::ranges::any_of(names, [&name](const char* known) { return name == known; });
}

std::string date_text(OGRFeatureH feature, int column, OGRFieldType type) {
  int year = 0;
  int month = 0;
  int day = 0;
  int hour = 0;
  int minute = 0;
  float second = 0.0F;
  int zone = 0;
  OGR_F_GetFieldAsDateTimeEx(feature, column, &year, &month, &day, &hour, &minute, &second, &zone);
  std::array<char, 64> text{};
  if (type == OFTDate) {
    std::snprintf(text.data(), text.size(), "%04d-%02d-%02d", year, month, day);
    return text.data();
  }
  if (type == OFTTime) {
    const char* form = second == 0.0F ? "%02d:%02d" : "%02d:%02d:%02.0f";
    std::snprintf(text.data(), text.size(), form, hour, minute, static_cast<double>(second));
    return text.data();
  }
  // OGR tells zones in quarters of an hour from 100, which is UTC; 0 and 1 say none.
  std::array<char, 16> offset{};
  if (zone > 1) {
    const int minutes = (zone - 100) * 15;
    std::snprintf(offset.data(), offset.size(), "%c%02d:%02d", minutes < 0 ? '-' : '+',
                  std::abs(minutes) / 60, std::abs(minutes) % 60);
  }
  std::snprintf(text.data(), text.size(), "%04d-%02d-%02dT%02d:%02d:%02d%s", year, month, day, hour,
                minute, static_cast<int>(second), offset.data());
  return text.data();
}

std::string text_of_field(OGRFeatureH feature, int column) {
  const OGRFieldType type = OGR_Fld_GetType(OGR_F_GetFieldDefnRef(feature, column));
  if (type == OFTDate || type == OFTTime || type == OFTDateTime) {
    return date_text(feature, column, type);
  }
  return trimmed(OGR_F_GetFieldAsString(feature, column));
}

/// All columns that say something; free text that may hold pairs is kept apart.
struct Heard {
  Said columns;
  Said pairs;
  std::vector<std::string> garbled;  ///< columns whose text is not UTF-8, which say nothing
};

/// What is read of a feature is for people: as in a TOML file, one short line.
constexpr const char* kNoLine = " is longer than 200 bytes or holds control characters";
constexpr const char* kWriteALine = "write one short line of text";

Heard heard_of(const Source& source, OGRFeatureH feature) {
  Heard heard;
  for (int i = 0; i < OGR_F_GetFieldCount(feature); ++i) {
    if (OGR_F_IsFieldSetAndNotNull(feature, i) == 0) {
      continue;
    }
    const std::string column = small_letters(OGR_Fld_GetNameRef(OGR_F_GetFieldDefnRef(feature, i)));
    const std::string text = text_of_field(feature, i);
    if (!is_utf8(text)) {
      heard.garbled.push_back(column);
    } else if (source.has_pairs() && is_among(kFreeText, column)) {
      for (const auto& [key, value] : pairs_in(text)) {
        heard.pairs.try_emplace(key, value);
      }
    } else if (!text.empty()) {
      heard.columns.emplace(column, text);
    }
  }
  return heard;
}

/// One feature being read: where it is and what is wrong with it.
class FeatureReader {
 public:
  FeatureReader(const Source& source, const Wanted& wanted, const Transformation& to_map)
      : source_{&source}, wanted_{&wanted}, to_map_{&to_map} {}

  void read(OGRFeatureH feature, base::Reading<std::vector<LayerFeature>>& reading) const {
    std::vector<base::Fault>& faults = reading.faults;
    LayerFeature found = heard_from(feature, faults);
    const auto add = [&](const std::string& trouble, const std::string& remedy) {
      faults.push_back({source_->shown, found.place, trouble, remedy, base::Weight::fault});
    };
    const PlainShape plain = plain_shape(OGR_F_GetGeometryRef(feature));
    if (!plain.trouble.empty()) {
      return add(plain.trouble, plain.remedy);
    }
    if (std::ranges::find(wanted_->kinds, plain.kind) == wanted_->kinds.end()) {
      return add(std::string{"it is "} + words_for(plain.kind) + " where " +
                     words_for_kinds(*wanted_) + " is wanted",
                 "draw it so, or take it out of this file");
    }
    MapShape placed = map_shape(plain, *to_map_);
    if (!placed.trouble.empty()) {
      return add(placed.trouble, placed.remedy);
    }
    found.kind = plain.kind;
    found.shape = std::move(placed.shape);
    reading.data.push_back(std::move(found));
  }

 private:
  /// The feature with what it says, but not yet its shape.
  [[nodiscard]] LayerFeature heard_from(OGRFeatureH feature,
                                        std::vector<base::Fault>& faults) const {
    LayerFeature found;
    const Heard heard = heard_of(*source_, feature);
    const auto name = heard.columns.find("name");
    found.name = name == heard.columns.end() ? "" : name->second;
    const bool has_fit_name = base::is_one_line(found.name);
    const bool is_named =
        !found.name.empty() || std::ranges::find(heard.garbled, "name") != heard.garbled.end();
    const std::string number = wanted_->one + " number " + std::to_string(OGR_F_GetFID(feature));
    found.place = has_fit_name ? wanted_->one + " " + found.name : number;
    found.said = merged(heard, found.place, faults);
    if (is_named && !has_fit_name) {
      found.name = number;
      found.has_unfit_name = true;
    }
    for (const std::string& column : heard.garbled) {
      faults.push_back(
          {source_->shown, found.place,
           (base::is_one_line(column) && is_utf8(column) ? column : "a column") + " is not UTF-8",
           "store the file as UTF-8, or give a Shapefile its .cpg", base::Weight::fault});
    }
    return found;
  }

  /// Takes out what is wanted but is no line for people.
  void refuse_what_is_no_line(Said& said, const std::string& place,
                              std::vector<base::Fault>& faults) const {
    for (const std::string& column : wanted_->columns) {
      const auto found = said.find(column);
      if (found != said.end() && !base::is_one_line(found->second)) {
        faults.push_back(
            {source_->shown, place, column + kNoLine, kWriteALine, base::Weight::fault});
        said.erase(found);
      }
    }
  }

  /// Columns and pairs as one; what is said differently in both is not said.
  [[nodiscard]] Said merged(const Heard& heard, const std::string& place,
                            std::vector<base::Fault>& faults) const {
    Said said = heard.columns;
    for (const auto& [key, value] : heard.pairs) {
      if (std::ranges::find(wanted_->columns, key) == wanted_->columns.end()) {
        const auto meant = base::nearest_name(key, wanted_->columns);
        faults.push_back(
            {source_->shown, place, key + " is not known and not read",
             meant ? "did you mean " + *meant + "?" : "take it out if it is not needed",
             base::Weight::doubt});
        continue;
      }
      const auto [known, is_new] = said.try_emplace(key, value);
      if (!is_new && known->second != value && key != "name") {
        known->second += " and " + value;
      }
    }
    refuse_what_is_no_line(said, place, faults);
    return said;
  }

  const Source* source_;
  const Wanted* wanted_;
  const Transformation* to_map_;
};

/// Every feature of a layer; nothing of one that cannot be read to its end, of which only that is
/// told: what else is wrong with its features may follow from it.
base::Reading<std::vector<LayerFeature>> features_of(LayerHandle layer, const FeatureReader& reader,
                                                     const std::string& shown) {
  base::Reading<std::vector<LayerFeature>> reading;
  const ErrorScope errors;
  OGR_L_ResetReading(layer);
  while (const Feature feature{OGR_L_GetNextFeature(layer)}) {
    reader.read(feature.get(), reading);
  }
  if (!errors.failure().empty()) {
    return {{},
            {{.file = shown,
              .place = "",
              .problem = "it cannot be read to its end (" + errors.failure() + ")",
              .remedy = "mend the file or write it anew"}}};
  }
  return reading;
}

}  // namespace

base::Reading<std::vector<LayerFeature>> read_features(const LayerFile& file,
                                                       const geo::MapFrame& frame,
                                                       const Wanted& wanted) {
  const Source source = open_source(file);
  base::Reading<std::vector<LayerFeature>> reading;
  for (LayerHandle layer : layers_of(source, wanted)) {
    const Transformation to_map = to_map_of(source, layer, frame);
    std::ranges::move(column_doubts(source, layer, wanted), std::back_inserter(reading.faults));
    auto part = features_of(layer, FeatureReader{source, wanted, to_map}, source.shown);
    for (base::Fault& fault : part.faults) {
      // A file that breaks off does so for each of its layers.
      if (std::ranges::find(reading.faults, fault) == reading.faults.end()) {
        reading.faults.push_back(std::move(fault));
      }
    }
    std::ranges::move(part.data, std::back_inserter(reading.data));
  }
  return reading;
}

}  // namespace rimehaul::ports::gdal
