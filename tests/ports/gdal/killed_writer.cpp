// Writes records until it is killed, and tells on standard output what it was promised to be kept.
//
//     killed_writer append|open FOLDER
//
// "append" writes batches and prints each one's number when its commit has returned; "open" makes
// the records, or brings older ones to the newest version, and ends. Both print "0" first.
#include <unistd.h>

#include <cstdio>
#include <string>

#include "ports/gdal/records_file.h"
#include "ports/openssl/digest.h"

using namespace rimehaul;

namespace {

/// In one piece, at once: what is printed was true before.
void tell(std::int64_t number) {
  const std::string line = std::to_string(number) + "\n";
  if (::write(STDOUT_FILENO, line.data(), line.size()) < 0) {
    ::_exit(4);
  }
}

day::Done done() {
  return {.at = units::Instant{1'770'000'000}, .by = "N. Rime", .role = "planner"};
}

/// A batch says how many field checks belong to it and which text it froze.
void add_batch(day::Writing& writing, std::int64_t batch) {
  const std::string name = "batch " + std::to_string(batch);
  const std::int64_t checks = batch % 5;
  const std::string text(static_cast<std::size_t>(batch % 7) * 3000, 'x');
  const std::string content = name + text;
  const base::Digest digest = ports::openssl::digest_of(content);
  writing.freeze({.name = name,
                  .role = "rules",
                  .digest = digest,
                  .bytes = static_cast<std::int64_t>(content.size())},
                 content);
  const std::string json = "{\"kind\":\"" + name + "\"}";
  writing.add(day::SignedBoard{.number = writing.next(day::Kind::day_board),
                               .json = json,
                               .digest = ports::openssl::digest_of(json),
                               .signed_off = done(),
                               .valid_until = done().at,
                               .inputs = {{.name = name, .role = "rules", .digest = digest}},
                               .head = writing.head()},
              {"sign", name, std::to_string(checks)});
  for (std::int64_t i = 0; i < checks; ++i) {
    const double east_m = 500'000.0 + static_cast<double>(batch);
    writing.add(day::FieldCheck{.number = writing.next(day::Kind::field_check),
                                .at = {units::Metres{east_m}, units::Metres{5'093'000.0}},
                                .heading = {},
                                .grade = {},
                                .cross_slope = {},
                                .instrument = name,
                                .measured = done()},
                {"field check", name});
  }
}

}  // namespace

int main(int count, char** words) {
  if (count != 3) {
    return 2;
  }
  const ports::gdal::RecordsPlace place{.folder = words[2]};
  const ports::gdal::RecordsWriter writer{
      .account = "desk", .digest_of = ports::openssl::digest_of, .frame = "EPSG:32605"};
  const bool appends = std::string{words[1]} == "append";
  ports::gdal::start_gdal();
  tell(0);
  if (!appends) {
    (void)ports::gdal::write_records(place, writer);
    return 0;
  }
  while (true) {
    const auto writing = ports::gdal::write_records(place, writer);
    const std::int64_t batch = writing->next(day::Kind::day_board);
    add_batch(*writing, batch);
    writing->commit();
    tell(batch);
  }
}
