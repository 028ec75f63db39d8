// site.toml broken in one way each.
#include "app/broken_input.h"

namespace rimehaul::testing {

namespace {

Break site(const std::string& from, const std::string& to) {
  return changed("site.toml", {from, to});
}

/// Text at the very end of the file, where a key belongs to the last table.
Break site_and(const std::string& more) {
  return [more](const TinySite& tiny) { tiny.write("site.toml", tiny.text("site.toml") + more); };
}

std::string many_tables() {
  std::string text = "a";
  for (int i = 0; i < 2500; ++i) {
    text += ".a";
  }
  return text;
}

}  // namespace

std::vector<BrokenFile> broken_site_files() {
  const std::string name = "name = \"Tiny Fell\"";
  return {
      {"no site.toml",
       removed("site.toml"),
       {"site.toml", "", "does not exist", "write it, or correct its name where it is named"}},
      {"text without quotes",
       site(name, "name = Tiny Fell"),
       {"site.toml", "line N, column 8", "Error while parsing boolean: expected 'true', saw 'T'",
        kCorrectToml}},
      {"text without an end",
       site(name, "name = \"Tiny Fell"),
       {"site.toml", "line N, column 18",
        "Error while parsing string: unescaped control characters other than TAB (U+0009) are "
        "explicitly prohibited",
        kCorrectToml}},
      {"a table without an end",
       site("[files]", "[files"),
       {"site.toml", "line N, column 7",
        "Error while parsing table header: expected ']', saw '\\n'", kCorrectToml}},
      {"a key twice",
       site(name, name + "\n" + name),
       {"site.toml", "line N, column 8",
        "Error while parsing key-value pair: cannot redefine existing string 'name'",
        kCorrectToml}},
      {"a list as table and the other way round",
       site("[[heights.error]]", "[heights.error]\na = 1\n[[heights.error]]"),
       {"site.toml", "line N, column 1",
        "Error while parsing table header: cannot redefine existing table 'heights.error' as "
        "array-of-tables",
        kCorrectToml}},
      {"a byte of 0",
       site(name, std::string("name = \"Tiny\0Fell\"", 18)),
       {"site.toml", "line N, column 13",
        "Error while parsing string: unescaped control characters other than TAB (U+0009) are "
        "explicitly prohibited",
        kCorrectToml}},
      {"Latin-1",
       site(name,
            "name = \"Gr\xe4"
            "ben\""),
       {"site.toml", "line N, column 10", "Encountered invalid utf-8 sequence", kCorrectToml}},
      {"half a letter at the end",
       site_and("# \xc3"),
       {"site.toml", "line N, column 2",
        "Encountered EOF during incomplete utf-8 code point sequence", kCorrectToml}},
      {"UTF-16",
       written("site.toml", std::string("\xff\xfes\0c\0h\0e\0m\0a\0", 14)),
       {"site.toml", "line N, column 1", "Encountered invalid utf-8 sequence", kCorrectToml}},
      {"a program",
       written("site.toml", std::string("\x7f"
                                        "ELF\2\1\1\0",
                                        8)),
       {"site.toml", "line N, column 1",
        "Error while parsing root table: expected keys, tables, whitespace or comments, saw "
        "'\\u007F'",
        kCorrectToml}},
      {"more than 1 MB",
       site_and(std::string(1'000'001, '\n')),
       {"site.toml", "", "is larger than 1 MB", "check that it is the right file"}},
      {"a line of 5000 bytes",
       site_and("# " + std::string(5000, 'x')),
       {"site.toml", "", "line N is longer than 4096 bytes", "break it into several lines"}},
      {"tables nested by dots",
       site_and(many_tables() + " = 1\n"),
       {"site.toml", "", "line N is longer than 4096 bytes", "break it into several lines"}},
      {"brackets nested",
       site_and("deep = " + std::string(2000, '[') + "\n"),
       {"site.toml", "line N, column 264",
        "Error while parsing value: exceeded maximum nested value depth of 256 "
        "(TOML_MAX_NESTED_VALUES)",
        kCorrectToml}},
      {"no schema",
       site("schema = 1\n", ""),
       {"site.toml", "line N (schema)", "is missing", "add it: schema = 1"}},
      {"a schema in quotes",
       site("schema = 1", "schema = \"1\""),
       {"site.toml", "line N (schema)", "is no schema of ours", "write schema = 1"}},
      {"a newer schema",
       site("schema = 1", "schema = 2"),
       {"site.toml", "line N (schema)", "schema 2 is newer than this program, which reads schema 1",
        "use a newer program"}},
      {"no name",
       site(name, ""),
       {"site.toml", "line N (name)", "is missing", "add it: text in quotes"}},
      {"an empty name",
       site(name, "name = \"\""),
       {"site.toml", "line N (name)", kNoLine, "write one short line of text"}},
      {"a name of two lines",
       site(name, R"(name = "Tiny\nFell")"),
       {"site.toml", "line N (name)", kNoLine, "write one short line of text"}},
      {"a name that colours the screen",
       site(name, R"(name = "\u001b[31mTiny")"),
       {"site.toml", "line N (name)", kNoLine, "write one short line of text"}},
      {"a name that turns the writing",
       site(name, R"(name = "\u202eyniT")"),
       {"site.toml", "line N (name)", kNoLine, "write one short line of text"}},
      {"a name of 201 bytes",
       site(name, "name = \"" + std::string(201, 'n') + "\""),
       {"site.toml", "line N (name)", kNoLine, "write one short line of text"}},
      {"a key that is none",
       site(name, name + "\naltitude = 3"),
       {"site.toml", "line N (altitude)", "is no key of this table",
        "remove it; docs/site-format.md names the keys"}},
      {"a key nearly right",
       site(name, name + "\nsnap = 3"),
       {"site.toml", "line N (snap)", "is no key of this table", "did you mean \"snap_m\"?"}},
      {"a day longer than 24 hours",
       site("utc_offset_minutes = 0", "utc_offset_minutes = 841"),
       {"site.toml", "line N (utc_offset_minutes)", "841 is out of range",
        "write a whole number from -720 to 840"}},
      {"an offset in words",
       site("utc_offset_minutes = 0", "utc_offset_minutes = \"UTC\""),
       {"site.toml", "line N (utc_offset_minutes)", "is text",
        "write a whole number from -720 to 840"}},
      {"ends joined across a valley",
       site(name, name + "\nsnap_m = 200"),
       {"site.toml", "line N (snap_m)", "200 is out of range", "write a number from 0 to 20"}},
      {"no trails named",
       site("trails = [\"trails.geojson\"]\n", ""),
       {"site.toml", "line N (files.trails)", "is missing", "add it: a list of texts"}},
      {"an empty list of trails",
       site("[\"trails.geojson\"]", "[]"),
       {"site.toml", "line N (files.trails)", "is an empty list", "name at least one"}},
      {"trails as text",
       site("[\"trails.geojson\"]", "\"trails.geojson\""),
       {"site.toml", "line N (files.trails)", "is text", "write a list of texts"}},
      {"an unheard-of map",
       site("EPSG:32605", "EPSG:99999999"),
       {"site.toml", "map_frame", "the reference system \"EPSG:99999999\" is not known",
        "give a code such as \"EPSG:32605\""}},
      {"a map in degrees",
       site("EPSG:32605", "EPSG:4326"),
       {"site.toml", "map_frame", "the map frame is not a projected reference system",
        "set map_frame in site.toml to a projected system in metres made for the area, such as its "
        "UTM zone"}},
      {"a map in a file",
       site("EPSG:32605", "/etc/hostname"),
       {"site.toml", "map_frame", "the reference system \"/etc/hostname\" is not known",
        "give a code such as \"EPSG:32605\""}},
      {"no datum",
       site("vertical_datum = \"Tiny datum\"\n", ""),
       {"heights.asc", "", "it does not say from what level its heights count",
        "declare heights.vertical_datum in site.toml"}},
      {"no unit",
       site("unit = \"metres\"\n", ""),
       {"heights.asc", "", "it does not say in what unit its heights are",
        "declare heights.unit in site.toml"}},
      {"a unit misspelt",
       site("unit = \"metres\"", "unit = \"meters\""),
       {"site.toml", "line N (heights.unit)", "\"meters\" is not known here",
        "did you mean \"metres\"?"}},
      {"nobody measured the heights",
       site("source = \"made up for a test\"\n", ""),
       {"site.toml", "line N (heights.source)", "is missing", "add it: text in quotes"}},
      {"no error at all",
       site("sd_m = 0.05", "sd_m = 0"),
       {"site.toml", "line N (heights.error.sd_m)", "0 is out of range",
        "write a number above 0, up to 50"}},
      {"an error that is no number",
       site("sd_m = 0.05", "sd_m = nan"),
       {"site.toml", "line N (heights.error.sd_m)", "nan is out of range",
        "write a number above 0, up to 50"}},
      {"an error without a length",
       site("correlation_m = 20\n", ""),
       {"site.toml", "line N (heights.error.correlation_m)", "is missing",
        "add it: a number from 0 to 100000"}},
      {"hidden steepness beyond all",
       site("deg = 0.5", "deg = 61"),
       {"site.toml", "line N (heights.sub_cell.deg)", "61 is out of range",
        "write a number from 0 to 60"}},
      {"hidden steepness of no standing",
       site("standing = \"estimate\"", "standing = \"guess\""),
       {"site.toml", "line N (heights.sub_cell.standing)", "\"guess\" is not known here",
        "write one of: maker, published, site_measured, site_limit, estimate"}},
      {"plausible heights the wrong way round",
       site("unit = \"metres\"", "unit = \"metres\"\nlowest_m = 3000\nhighest_m = 2000"),
       {"site.toml", "line N (heights.lowest_m)", "is not below highest_m", "correct one of them"}},
  };
}

}  // namespace rimehaul::testing
