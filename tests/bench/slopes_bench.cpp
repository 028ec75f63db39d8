// `rimehaul slopes --plain` beside `gdaldem slope`: same heights, same plain GeoTIFF, both with 64
// MB of block cache, whole processes by turns.
//
//     build/tests/bench/bench_slopes            8192 x 8192, median of 5 pairs
//     build/tests/bench/bench_slopes 20000 3    20000 x 20000, median of 3 pairs, and the memory
//                                               of both sizes
//
// Prints ours over theirs: wall time, processor time, and what each took most of memory. The
// heights are a fractal made up here: float32, 5 m cells, tiles of 256, as they are and by DEFLATE
// with predictor 3. Nothing fails on a figure.
#include <fcntl.h>
#include <gdal.h>
#include <ogr_srs_api.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "ports/gdal/gdal_guard.h"

namespace {

namespace fs = std::filesystem;

/// A number from -1 to 1 that depends on a lattice point alone.
double noise_at(std::uint32_t column, std::uint32_t row, std::uint32_t seed) {
  std::uint32_t mixed = column * 0x9E3779B1U ^ row * 0x85EBCA77U ^ seed * 0xC2B2AE3DU;
  mixed = (mixed ^ mixed >> 15U) * 0x2C1B3C6DU;
  mixed = (mixed ^ mixed >> 12U) * 0x297A2D39U;
  mixed ^= mixed >> 15U;
  return static_cast<double>(mixed) / 2147483648.0 - 1.0;
}

double eased(double share) {
  return share * share * share * (share * (share * 6.0 - 15.0) + 10.0);
}

/// One row of heights: nine octaves of noise, each half as wide and as high as the one before.
void heights_of_row(int row, std::vector<float>& heights_m) {
  std::fill(heights_m.begin(), heights_m.end(), 1500.0F);
  double high_m = 700.0;
  std::uint32_t seed = 1;
  for (int wide = 2048; wide >= 8; wide /= 2, high_m *= 0.47, ++seed) {
    const auto top = static_cast<std::uint32_t>(row / wide);
    const double down = eased(static_cast<double>(row % wide) / wide);
    for (std::size_t first = 0; first < heights_m.size(); first += static_cast<std::size_t>(wide)) {
      const auto left = static_cast<std::uint32_t>(first / static_cast<std::size_t>(wide));
      const auto mixed = [&](std::uint32_t column) {
        return noise_at(column, top, seed) * (1.0 - down) + noise_at(column, top + 1, seed) * down;
      };
      const double from = mixed(left);
      const double to = mixed(left + 1);
      const std::size_t end = std::min(first + static_cast<std::size_t>(wide), heights_m.size());
      for (std::size_t column = first; column < end; ++column) {
        const double along = eased(static_cast<double>(column - first) / wide);
        heights_m[column] += static_cast<float>(high_m * (from * (1.0 - along) + to * along));
      }
    }
  }
}

void make_heights(const fs::path& path, int side, std::vector<const char*> options) {
  options.insert(options.end(),
                 {"TILED=YES", "BLOCKXSIZE=256", "BLOCKYSIZE=256", "BIGTIFF=IF_SAFER", nullptr});
  const rimehaul::ports::gdal::Dataset made{GDALCreate(GDALGetDriverByName("GTiff"), path.c_str(),
                                                       side, side, 1, GDT_Float32,
                                                       const_cast<char**>(options.data()))};
  std::array<double, 6> corners{500000.0, 5.0, 0.0, 5100000.0, 0.0, -5.0};
  GDALSetGeoTransform(made.get(), corners.data());
  const rimehaul::ports::gdal::Reference reference{OSRNewSpatialReference(nullptr)};
  OSRImportFromEPSG(reference.get(), 32605);
  GDALSetSpatialRef(made.get(), reference.get());
  GDALRasterBandH band = GDALGetRasterBand(made.get(), 1);
  GDALSetRasterNoDataValue(band, -9999.0);
  std::vector<float> heights_m(static_cast<std::size_t>(side));
  for (int row = 0; row < side; ++row) {
    heights_of_row(row, heights_m);
    if (GDALRasterIO(band, GF_Write, 0, row, side, 1, heights_m.data(), side, 1, GDT_Float32, 0,
                     0) != CE_None) {
      std::fprintf(stderr, "the heights cannot be written; is there room in %s?\n", path.c_str());
      std::exit(1);
    }
  }
}

/// The tiny demo of a site around heights that are there already.
void make_site(const fs::path& folder, const std::string& heights) {
  fs::create_directories(folder);
  const fs::path demo = fs::path{RIMEHAUL_ROOT} / "routes/marrowfell";
  for (const auto& entry : fs::directory_iterator{demo}) {
    if (entry.is_regular_file()) {
      fs::copy_file(entry.path(), folder / entry.path().filename(),
                    fs::copy_options::overwrite_existing);
    }
  }
  std::ifstream from{demo / "site.toml"};
  std::ofstream to{folder / "site.toml"};
  for (std::string line; std::getline(from, line);) {
    if (line.starts_with("files = ")) {
      line = "files = [\"" + heights + "\"]";
    } else if (line.starts_with("folder = ")) {
      line = "folder = \"..\"";
    }
    to << line << '\n';
  }
}

struct Cost {
  double wall_s = 0.0;
  double processor_s = 0.0;
  double most_mb = 0.0;
};

Cost run(const std::vector<std::string>& words) {
  const auto start = std::chrono::steady_clock::now();
  const pid_t child = ::fork();
  if (child == 0) {
    const int nowhere = ::open("/dev/null", O_WRONLY);
    ::dup2(nowhere, STDOUT_FILENO);
    std::vector<char*> arguments;
    for (const std::string& word : words) {
      arguments.push_back(const_cast<char*>(word.c_str()));
    }
    arguments.push_back(nullptr);
    ::execvp(arguments.front(), arguments.data());
    ::_exit(127);
  }
  int status = 0;
  rusage used{};
  ::wait4(child, &status, 0, &used);
  const std::chrono::duration<double> wall = std::chrono::steady_clock::now() - start;
  if (!WIFEXITED(status) || WEXITSTATUS(status) != 0) {
    std::fprintf(stderr, "%s did not end well\n", words.front().c_str());
    std::exit(1);
  }
  const auto seconds = [](const timeval& time) {
    return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_usec) / 1e6;
  };
  return {wall.count(), seconds(used.ru_utime) + seconds(used.ru_stime),
          static_cast<double>(used.ru_maxrss) / 1024.0};
}

template <class Part>
double median(std::vector<Cost> costs, Part part) {
  std::ranges::sort(costs, {}, part);
  return costs[costs.size() / 2].*part;
}

struct Pair {
  std::vector<Cost> ours;
  std::vector<Cost> theirs;
};

void print(const std::string& what, const Pair& pair) {
  const auto both = [&](auto part) {
    return std::array{median(pair.ours, part), median(pair.theirs, part)};
  };
  const auto wall = both(&Cost::wall_s);
  const auto processor = both(&Cost::processor_s);
  const auto memory = both(&Cost::most_mb);
  std::printf(
      "%-28s wall %.3f / %.3f s = %.2f   processor %.3f / %.3f s = %.2f   memory %.0f / "
      "%.0f MB\n",
      what.c_str(), wall[0], wall[1], wall[0] / wall[1], processor[0], processor[1],
      processor[0] / processor[1], memory[0], memory[1]);
  std::fflush(stdout);
}

void compare(const fs::path& folder, int side, int pairs) {
  const auto measure = [&](const std::string& kind, std::vector<const char*> options) {
    const std::string name = "heights-" + std::to_string(side) + "-" + kind + ".tif";
    const fs::path heights = folder / name;
    make_heights(heights, side, std::move(options));
    const fs::path site = folder / "site";
    make_site(site, name);
    const fs::path answer = folder / "ours";
    const fs::path theirs = folder / "theirs.tif";
    Pair pair;
    for (int turn = 0; turn <= pairs; ++turn) {
      fs::remove_all(answer);
      fs::remove(theirs);
      const Cost us = run({RIMEHAUL_PROGRAM, "slopes", site.string(), "--into", answer.string(),
                           "--layer", "slope", "--plain"});
      const Cost them = run({"gdaldem", "slope", "-q", heights.string(), theirs.string()});
      if (turn > 0) {  // the first warms the page cache
        pair.ours.push_back(us);
        pair.theirs.push_back(them);
      }
    }
    print(std::to_string(side) + " " + kind, pair);
    fs::remove(heights);
  };
  measure("uncompressed", {});
  measure("deflate", {"COMPRESS=DEFLATE", "PREDICTOR=3", "NUM_THREADS=ALL_CPUS"});
}

}  // namespace

int main(int count, char** words) {
  const int side = count > 1 ? std::atoi(words[1]) : 8192;
  const int pairs = count > 2 ? std::atoi(words[2]) : 5;
  ::setenv("GDAL_CACHEMAX", "64", 1);
  rimehaul::ports::gdal::start_gdal();
  const fs::path folder =
      fs::temp_directory_path() / ("rimehaul-slopes-" + std::to_string(::getpid()));
  fs::create_directories(folder);
  if (side > 8192) {
    compare(folder, 8192, pairs);
  }
  compare(folder, side, pairs);
  fs::remove_all(folder);
  return 0;
}
