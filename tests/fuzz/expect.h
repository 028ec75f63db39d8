// What must hold of everything that a reader says and gives, whatever it was fed.
#pragma once

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <span>
#include <string>
#include <vector>

#include "base/fault.h"
#include "base/one_line.h"
#include "geo/point.h"
#include "ports/gdal/utf8.h"

namespace rimehaul::fuzz {

/// Ends the program with the words, so that the fuzzer keeps the input.
inline void expect(bool holds, const char* words, const std::string& seen = "") {
  if (!holds) {
    std::fprintf(stderr, "not so: %s\n%s\n", words, seen.c_str());
    std::abort();
  }
}

/// A line for people: printable, of bearable length, with file, problem and remedy.
inline void expect_clear(const base::Fault& fault) {
  const std::string line = base::line_of(fault);
  constexpr std::size_t kBearable = 6000;  // a TOML key of a whole line, named twice
  expect(ports::gdal::is_utf8(line), "a fault's line is UTF-8", line);
  expect(!base::has_controls(line), "a fault's line holds no controls", line);
  expect(line.size() <= kBearable, "a fault's line is of bearable length", line);
  expect(!fault.file.empty() || !fault.place.empty(), "a fault says where", line);
  expect(!fault.problem.empty(), "a fault says what is wrong", line);
  expect(!fault.remedy.empty(), "a fault says what to do", line);
}

inline bool is_fault(const base::Fault& fault) {
  return fault.weight == base::Weight::fault;
}

/// Looks at all that was said; tells whether any of it is more than a doubt.
inline bool has_clear_faults(const std::vector<base::Fault>& faults) {
  bool any = false;
  for (const base::Fault& fault : faults) {
    expect_clear(fault);
    any = any || is_fault(fault);
  }
  return any;
}

inline void expect_name(const std::string& name) {
  expect(base::is_one_line(name) && ports::gdal::is_utf8(name), "a name is one short line", name);
}

inline void expect_finite(double number, const char* words) {
  expect(std::isfinite(number), words, std::to_string(number));
}

inline void expect_within(double number, double least, double most, const char* words) {
  expect(least <= number && number <= most, words, std::to_string(number));
}

inline void expect_on_map(geo::MapPoint place) {
  expect_finite(place.east.value(), "a place on the map has an east");
  expect_finite(place.north.value(), "a place on the map has a north");
}

/// Reads, and looks at every fault; gives the data to `look` unless nothing could be read.
template <class Read, class Look>
void try_to_read(Read read, Look look) {
  try {
    const auto reading = read();
    look(reading.data, has_clear_faults(reading.faults));
  } catch (const base::BadInput& bad) {
    expect_clear(bad.fault());
  }
}

}  // namespace rimehaul::fuzz
