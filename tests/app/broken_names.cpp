// Files of a site that are named, or lie there, in a way that a stranger might have thought of.
#include <sys/stat.h>
#include <unistd.h>

#include <filesystem>

#include "app/broken_input.h"

namespace rimehaul::testing {

namespace {

namespace fs = std::filesystem;

Break trails_named(const std::string& toml) {
  return changed("site.toml", {"trails = [\"trails.geojson\"]", "trails = [" + toml + "]"});
}

Break file_named(const std::string& key, const std::string& toml) {
  return changed("site.toml", {"[files]", "[files]\n" + key + " = " + toml});
}

/// A file of the site is put aside, and in its place comes something else.
Break in_place_of(const std::string& file, const std::function<void(const std::string&)>& put) {
  return [file, put](const TinySite& site) {
    site.remove(file);
    put(site.path(file));
  };
}

Break link_in_place_of(const std::string& file, const std::string& target) {
  return in_place_of(file, [target](const std::string& path) { fs::create_symlink(target, path); });
}

Break folder_in_place_of(const std::string& file) {
  return in_place_of(file, [](const std::string& path) { fs::create_directory(path); });
}

Break pipe_in_place_of(const std::string& file) {
  return in_place_of(file, [](const std::string& path) { ::mkfifo(path.c_str(), 0600); });
}

Break unreadable(const std::string& file) {
  return [file](const TinySite& site) { fs::permissions(site.path(file), fs::perms::none); };
}

std::string folders_up_to(const std::string& target) {
  std::string path;
  for (int i = 0; i < 12; ++i) {
    path += "../";
  }
  return path + target;
}

}  // namespace

std::vector<BrokenFile> broken_names() {
  return {
      {"a way out of the folder",
       trails_named("\"../trails.geojson\""),
       {"site.toml", "line N (files.trails)", "\"../trails.geojson\" leads out of the site folder",
        kLeadsOut}},
      {"a way out and in again",
       trails_named("\"a/../../site/trails.geojson\""),
       {"site.toml", "line N (files.trails)",
        "\"a/../../site/trails.geojson\" leads out of the site folder", kLeadsOut}},
      {"a way out to the system's files",
       trails_named("\"" + folders_up_to("etc/passwd") + "\""),
       {"site.toml", "line N (files.trails)",
        "\"../../../../../../../../../../../../etc/passwd\" leads out of the site folder",
        kLeadsOut}},
      {"a path from the root",
       trails_named("\"/etc/passwd\""),
       {"site.toml", "line N (files.trails)", "\"/etc/passwd\" leads out of the site folder",
        kLeadsOut}},
      {"rules from the root",
       file_named("rules", "\"/dev/stdin\""),
       {"site.toml", "line N (files.rules)", "\"/dev/stdin\" leads out of the site folder",
        kLeadsOut}},
      {"snow from above",
       changed("site.toml", {"snow = \"snow.toml\"", "snow = \"../snow.toml\""}),
       {"site.toml", "line N (files.snow)", "\"../snow.toml\" leads out of the site folder",
        kLeadsOut}},
      {"heights from above",
       changed("site.toml", {"[\"heights.asc\"]", "[\"../heights.asc\"]"}),
       {"site.toml", "line N (heights.files)", "\"../heights.asc\" leads out of the site folder",
        kLeadsOut}},
      {"a name of two lines",
       trails_named(R"("trails\n.geojson")"),
       {"site.toml", "line N (files.trails)", kNoLine, "write one short line of text"}},
      {"a name that colours the screen",
       trails_named(R"("\u001b[31mtrails.geojson")"),
       {"site.toml", "line N (files.trails)", kNoLine, "write one short line of text"}},
      {"a name with 8-bit controls",
       trails_named(R"("\u009b31mtrails.geojson")"),
       {"site.toml", "line N (files.trails)", kNoLine, "write one short line of text"}},
      {"a name that turns the writing",
       trails_named(R"("\u202enosjoeg.sliart")"),
       {"site.toml", "line N (files.trails)", kNoLine, "write one short line of text"}},
      {"a name that ends in a byte of 0",
       trails_named(R"("trails.geojson\u0000.txt")"),
       {"site.toml", "line N (files.trails)", kNoLine, "write one short line of text"}},
      {"a name of 5000 letters in pieces",
       trails_named("\"" + std::string(190, 't') + "/x\""),
       {std::string(190, 't') + "/x", "", "there is no such file", "check its name in site.toml"}},
      {"a name of 300 letters",
       trails_named("\"" + std::string(300, 't') + "\""),
       {"site.toml", "line N (files.trails)", kNoLine, "write one short line of text"}},
      {"an empty name",
       trails_named("\"\""),
       {"site.toml", "line N (files.trails)", kNoLine, "write one short line of text"}},
      {"the folder itself",
       trails_named("\".\""),
       {".", "", "this is no regular file", "name a file, not a folder or a device"}},
      {"an address",
       trails_named("\"https://127.0.0.1:9/trails.geojson\""),
       {"https://127.0.0.1:9/trails.geojson", "", "this is no file name within the site folder",
        "name a file by its path from the site folder"}},
      {"a file on the web by the library's own name",
       trails_named("\"/vsicurl/http://127.0.0.1:9/t.geojson\""),
       {"site.toml", "line N (files.trails)",
        "\"/vsicurl/http://127.0.0.1:9/t.geojson\" leads out of the site folder", kLeadsOut}},
      {"a database by its address",
       trails_named("\"PG:host=127.0.0.1\""),
       {"PG:host=127.0.0.1", "", "there is no such file", "check its name in site.toml"}},
      {"a layer given as a name",
       trails_named(R"("{\"type\":\"Point\",\"coordinates\":[0,0]}")"),
       {"{\"type\":\"Point\",\"coordinates\":[0,0]}", "", "there is no such file",
        "check its name in site.toml"}},
      {"a name with a leading dash",
       trails_named("\"-rf.geojson\""),
       {"-rf.geojson", "", "there is no such file", "check its name in site.toml"}},
      {"a name of blanks",
       trails_named("\"   \""),
       {"site.toml", "line N (files.trails)", kNoLine, "write one short line of text"}},
      {"trails as a link",
       link_in_place_of("trails.geojson", "stations.geojson"),
       {"trails.geojson", "", "the file is a link", "copy the file itself into the site folder"}},
      {"trails as a link to nowhere",
       link_in_place_of("trails.geojson", "/nowhere/at/all"),
       {"trails.geojson", "", "the file is a link", "copy the file itself into the site folder"}},
      {"trails as a link to themselves",
       link_in_place_of("trails.geojson", "trails.geojson"),
       {"trails.geojson", "", "the file is a link", "copy the file itself into the site folder"}},
      {"trails as a folder",
       folder_in_place_of("trails.geojson"),
       {"trails.geojson", "", "this is no regular file", "name a file, not a folder or a device"}},
      {"trails as a pipe",
       pipe_in_place_of("trails.geojson"),
       {"trails.geojson", "", "this is no regular file", "name a file, not a folder or a device"}},
      {"trails as a device",
       link_in_place_of("trails.geojson", "/dev/zero"),
       {"trails.geojson", "", "the file is a link", "copy the file itself into the site folder"}},
      {"heights as a pipe",
       pipe_in_place_of("heights.asc"),
       {"heights.asc", "", "this is no regular file", "name a file, not a folder or a device"}},
      {"heights as a link",
       link_in_place_of("heights.asc", "/etc/hostname"),
       {"heights.asc", "", "the file is a link", "copy the file itself into the site folder"}},
      {"the heights' reference system as a link",
       link_in_place_of("heights.prj", "/etc/hostname"),
       {"heights.asc", "", "its side-car file heights.prj is a link",
        "copy the side-car file itself into the site folder"}},
      {"rigs as a folder",
       folder_in_place_of("rigs.toml"),
       {"rigs.toml", "", "is no regular file inside its folder", "put the file itself there"}},
      {"rigs as a pipe",
       pipe_in_place_of("rigs.toml"),
       {"rigs.toml", "", "is no regular file inside its folder", "put the file itself there"}},
      {"rigs as a device",
       link_in_place_of("rigs.toml", "/dev/zero"),
       {"rigs.toml", "", "is no regular file inside its folder", "put the file itself there"}},
      {"rules as a link out of the folder",
       link_in_place_of("rules.toml", "/etc/hostname"),
       {"rules.toml", "", "is no regular file inside its folder", "put the file itself there"}},
      {"snow as a link to nowhere",
       link_in_place_of("snow.toml", "nowhere.toml"),
       {"snow.toml", "", "does not exist", "write it, or correct its name where it is named"}},
      {"the site file as a pipe",
       pipe_in_place_of("site.toml"),
       {"site.toml", "", "is no regular file inside its folder", "put the file itself there"}},
      {"the site file as a folder",
       folder_in_place_of("site.toml"),
       {"site.toml", "", "is no regular file inside its folder", "put the file itself there"}},
  };
}

std::vector<BrokenFile> unreadable_files() {
  return {
      {"site.toml",
       unreadable("site.toml"),
       {"site.toml", "", "cannot be read", "make it readable for the account that runs this"}},
      {"rigs",
       unreadable("rigs.toml"),
       {"rigs.toml", "", "cannot be read", "make it readable for the account that runs this"}},
      {"rules",
       unreadable("rules.toml"),
       {"rules.toml", "", "cannot be read", "make it readable for the account that runs this"}},
      {"snow",
       unreadable("snow.toml"),
       {"snow.toml", "", "cannot be read", "make it readable for the account that runs this"}},
      {"trails",
       unreadable("trails.geojson"),
       {"trails.geojson", "", "it cannot be read",
        "make it readable for the account that runs this"}},
      {"heights",
       unreadable("heights.asc"),
       {"heights.asc", "", "it cannot be read", "make it readable for the account that runs this"}},
      {"the folder",
       unreadable("."),
       {"site.toml", "", "cannot be looked at: Permission denied",
        "make its folder readable for the account that runs this"}},
  };
}

}  // namespace rimehaul::testing
