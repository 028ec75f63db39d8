// The sites of the tests on real input: one per way of storing the same heights, made once.
#pragma once

#include <doctest/doctest.h>
#include <stdlib.h>

#include <array>
#include <cstdlib>
#include <filesystem>
#include <string>

namespace rimehaul::testing {

/// Runs a program of the system to its end; the test fails when it does.
inline void run_program(const std::string& command) {
  const int status = std::system((command + " > /dev/null").c_str());
  INFO(command);
  REQUIRE(status == 0);
}

/// A folder with the sites metric, feet, point, south_up, degrees and grid in it. It needs Debian's
/// python-matplotlib-data, python3-gdal and gdal-bin.
class RealSites {
 public:
  RealSites(const RealSites&) = delete;
  RealSites& operator=(const RealSites&) = delete;

  /// The one set of this run, made when it is first asked for.
  static const RealSites& made() {
    static const RealSites sites;
    return sites;
  }

  [[nodiscard]] std::string site(const std::string& name) const { return folder_ + "/" + name; }
  [[nodiscard]] std::string file(const std::string& name) const { return folder_ + "/" + name; }

 private:
  RealSites() {
    std::string pattern = (std::filesystem::temp_directory_path() / "rimehaul-XXXXXX").string();
    REQUIRE(mkdtemp(pattern.data()) != nullptr);
    folder_ = pattern;
    run_program("/usr/bin/python3 '" RIMEHAUL_ROOT "/tests/real/make_real_site.py' '" + folder_ +
                "'");
  }
  ~RealSites() {
    std::error_code trouble;
    std::filesystem::remove_all(folder_, trouble);
  }

  std::string folder_;
};

}  // namespace rimehaul::testing
