#include "ports/gdal/settled_heights.h"

#include <cmath>
#include <utility>

namespace rimehaul::ports::gdal {

namespace {

base::Fault fault_of_site(const char* key, Complaint complaint) {
  return {.file = "site.toml",
          .place = key,
          .problem = std::move(complaint.problem),
          .remedy = std::move(complaint.remedy)};
}

std::optional<Complaint> settle_unit(RasterFile& file, const VerticalDeclared& declared) {
  const std::optional<double> said = file.vertical().metres_per_unit;
  const std::optional<double> stated = declared.metres_per_unit;
  if (!said.has_value() && !stated.has_value()) {
    return Complaint{"it does not say in what unit its heights are",
                     "declare heights.unit in site.toml"};
  }
  if (said.has_value() && stated.has_value() && !agree({*said, *stated})) {
    return Complaint{
        "it says heights in " + name_of_unit(*said) + ", site.toml says " + name_of_unit(*stated),
        "find out which is true and correct the other"};
  }
  file.read_as(stated.value_or(said.value_or(1.0)), declared.range);
  return std::nullopt;
}

void settle_units(std::vector<RasterFile>& files, const VerticalDeclared& declared,
                  std::vector<base::Fault>& faults) {
  const double stated = declared.metres_per_unit.value_or(1.0);
  if (!(std::isfinite(stated) && stated > 0)) {
    faults.push_back(fault_of_site(
        "heights.unit", {"the unit of the heights is no length", "declare metres or feet"}));
    return;
  }
  for (RasterFile& file : files) {
    if (std::optional<Complaint> complaint = settle_unit(file, declared)) {
      faults.push_back(bad_file(file.shown(), std::move(*complaint)).fault());
    }
  }
}

/// The datum that the files name, "" when none does.
std::string datum_in(const std::vector<RasterFile>& files, std::vector<base::Fault>& faults) {
  std::string datum;
  for (const RasterFile& file : files) {
    const std::string& said = file.vertical().datum;
    if (!datum.empty() && !said.empty() && said != datum) {
      std::string problem = "its heights count from ";
      problem.append(said).append(", those of others from ").append(datum);
      faults.push_back(
          bad_file(file.shown(), {problem, "bring all heights to one vertical datum first"})
              .fault());
    }
    if (datum.empty()) {
      datum = said;
    }
  }
  return datum;
}

}  // namespace

base::Reading<std::string> settled_vertical(std::vector<RasterFile>& files,
                                            const VerticalDeclared& declared) {
  base::Reading<std::string> settled;
  settle_units(files, declared, settled.faults);
  settled.data = datum_in(files, settled.faults);
  if (settled.data.empty() && declared.datum.empty() && !files.empty()) {
    settled.faults.push_back(
        bad_file(files.front().shown(), {"it does not say from what level its heights count",
                                         "declare heights.vertical_datum in site.toml"})
            .fault());
  }
  if (!settled.data.empty() && !declared.datum.empty() && settled.data != declared.datum) {
    settled.faults.push_back(
        fault_of_site("heights.vertical_datum",
                      {"it says " + declared.datum + ", the rasters say " + settled.data,
                       "check that both mean one level; the name in the rasters is used"}));
    settled.faults.back().weight = base::Weight::doubt;
  }
  if (settled.data.empty()) {
    settled.data = declared.datum;
  }
  return settled;
}

}  // namespace rimehaul::ports::gdal
