// A site folder written for one test: a plane, two ways between two stations, a spur, two rigs.
#pragma once

#include <string>
#include <vector>

#include "app/outside.h"
#include "app/status.h"

namespace rimehaul::testing {

/// Lives as long as the test does; its folder is removed at the end.
class TinySite {
 public:
  /// Writes the whole site: Base and Top joined by Low Way and High Way, and a Spur from High Way
  /// to the Hut. The rig "solo" drives alone, "towing" has a sled. Everything open in dry snow.
  TinySite();
  ~TinySite();
  TinySite(const TinySite&) = delete;
  TinySite& operator=(const TinySite&) = delete;

  [[nodiscard]] const std::string& folder() const { return folder_; }
  [[nodiscard]] std::string path(const std::string& name) const { return folder_ + "/" + name; }
  [[nodiscard]] std::string text(const std::string& name) const;
  void write(const std::string& name, const std::string& text) const;
  /// What is replaced must be there: a test that changes nothing tests nothing.
  struct Change {
    std::string from;
    std::string to;
  };
  void change(const std::string& name, const Change& change) const;
  void remove(const std::string& name) const;

 private:
  std::string folder_;
};

/// What a command said and how it ended.
struct Ran {
  app::Status status = app::Status::our_fault;
  std::string out;
  std::string err;
};

/// Runs one command at 2026-02-01T09:00:00Z, which is the tiny site's local time too.
[[nodiscard]] Ran run_command(const std::vector<std::string>& arguments,
                              audit::WalkAgain rewalk = audit::rewalk);

/// `route SITE --rig solo --snow dry ... --from Base --to Top` with more options behind.
[[nodiscard]] std::vector<std::string> route_words(const TinySite& site,
                                                   const std::vector<std::string>& more = {});

}  // namespace rimehaul::testing
