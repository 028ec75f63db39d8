// site.toml of any bytes: what passes names its files within the folder and trusts the heights for
// something.
#include "fuzz/expect.h"
#include "fuzz/input_folder.h"
#include "ports/toml/site_file.h"

namespace {

using namespace rimehaul;
using fuzz::expect;
using fuzz::expect_within;

void look_at_names(const std::vector<std::string>& names) {
  for (const std::string& name : names) {
    fuzz::expect_name(name);
    expect(!name.starts_with('/'), "a file of the site is named from its folder", name);
    for (const auto& part : std::filesystem::path{name}) {
      expect(part != "..", "a file of the site lies in its folder", name);
    }
  }
}

void look_at_heights(const ports::toml::HeightsDeclared& heights) {
  expect(!heights.files.empty(), "a site names its heights");
  fuzz::expect_name(heights.source);
  expect(heights.lowest < heights.highest, "plausible heights have a range");
  for (const terrain::HeightError& error : heights.trust.errors) {
    expect(error.standard_deviation > units::Metres{0}, "an error of heights is above 0");
    expect_within(error.standard_deviation.value(), 0, 50, "an error of heights");
    expect_within(error.correlation_length.value(), 0, 100'000, "how far an error stays alike");
  }
  if (heights.trust.sub_cell) {
    expect_within(heights.trust.sub_cell->degrees(), 0, 60.0001, "steepness between the cells");
  }
}

void look_at(const ports::toml::SiteFile& site, bool has_fault) {
  look_at_names(site.trails);
  look_at_names(site.stations);
  look_at_names(site.zones);
  look_at_names(site.marks);
  look_at_names(site.heights.files);
  look_at_names({site.rigs, site.rules});
  if (has_fault) {
    return;
  }
  fuzz::expect_name(site.name);
  expect(!site.trails.empty(), "a site names its trails");
  expect_within(site.snap.value(), 0, 20, "how near ends are joined");
  expect_within(site.utc_offset_minutes.value_or(0), -720, 840, "the offset of local time");
  look_at_heights(site.heights);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  static const fuzz::InputFolder folder;
  folder.write("site.toml", fuzz::text_of(bytes, size));
  fuzz::try_to_read([] { return ports::toml::read_site_file(folder.path()); }, look_at);
  return 0;
}
