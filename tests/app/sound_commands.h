// Sound commands about the tiny site, to which words can be added that spoil them.
#pragma once

#include "app/broken_input.h"

namespace rimehaul::testing {

using Words = std::vector<std::string>;

/// A sound command of each kind, with more words behind.
inline Words with(Words words, const Words& more) {
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

inline Words route(const Words& more) {
  return with({"route", "FOLDER", "--rig", "solo", "--snow", "dry", "--load", "100", "--from",
               "Base", "--to", "Top"},
              more);
}
inline Words route_to(const std::string& to) {
  return {"route",  "FOLDER", "--rig",  "solo", "--snow", "dry",
          "--load", "100",    "--from", "Base", "--to",   to};
}
inline Words explain(const Words& more) {
  return with({"explain", "FOLDER", "--rig", "solo", "--snow", "dry"}, more);
}
inline Words snow_at(const Words& more) {
  return with({"snow", "FOLDER"}, more);
}
inline Words field_check(const Words& more) {
  return with({"field-check", "FOLDER", "--as", "N. Example"}, more);
}
inline Words measured(const Words& more) {
  return with({"field-check", "FOLDER", "--as", "N. Example", "--grade", "2", "--cross-slope", "0"},
              more);
}
inline Words board(const Words& more) {
  return with({"board", "FOLDER", "--rig", "solo"}, more);
}
inline Words limits(const Words& more) {
  return with({"limits", "FOLDER", "--rig", "solo"}, more);
}
inline Words slopes(const Words& more) {
  return with({"slopes", "FOLDER", "--into", "FOLDER/slopes"}, more);
}
inline Words audit(const Words& more) {
  return with({"audit", "FOLDER"}, more);
}
inline Words rig(const Words& more) {
  return with({"rig", "FOLDER", "--rig", "solo"}, more);
}
inline Words make(const Words& more) {
  return with({"new", "FOLDER-new"}, more);
}
inline Words make_of(const std::string& heights, const std::string& trails) {
  return make({"--heights", heights, "--trails", trails});
}

}  // namespace rimehaul::testing
