// Killed at any instant, nothing that was committed is lost and nothing half-written is seen.
#include <doctest/doctest.h>
#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <chrono>
#include <climits>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <map>
#include <random>
#include <string>
#include <thread>

#include "ports/gdal/record_samples.h"

using namespace rimehaul;
using rimehaul::ports::gdal::read_records;
using rimehaul::ports::gdal::write_records;
using rimehaul::testing::make_older_records;
using rimehaul::testing::records_in;
using rimehaul::testing::TempFolder;
using rimehaul::testing::writer;

namespace fs = std::filesystem;

namespace {

/// The program that writes, from its first line on; killed at the latest when this goes.
class Victim {
 public:
  Victim(std::string what, std::string folder) {
    std::array<int, 2> ends{};
    REQUIRE(::pipe2(ends.data(), O_CLOEXEC) == 0);
    out_ = ends[0];
    posix_spawn_file_actions_t actions{};
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_adddup2(&actions, ends[1], STDOUT_FILENO);
    std::string program{RIMEHAUL_KILLED_WRITER};
    const std::array<char*, 4> words{program.data(), what.data(), folder.data(), nullptr};
    REQUIRE(::posix_spawn(&child_, program.c_str(), &actions, nullptr, words.data(), environ) == 0);
    posix_spawn_file_actions_destroy(&actions);
    ::close(ends[1]);
    REQUIRE(next_letter() == '0');
    REQUIRE(next_letter() == '\n');
  }
  ~Victim() { (void)killed(); }
  Victim(const Victim&) = delete;
  Victim& operator=(const Victim&) = delete;

  /// Waits for so many more lines.
  void tells(int lines) {
    for (int letter = 0; lines > 0 && letter >= 0;) {
      letter = next_letter();
      if (letter == '\n') {
        told_ = std::stoll(std::exchange(line_, ""));
        --lines;
      } else if (letter >= 0) {
        line_ += static_cast<char>(letter);
      }
    }
  }

  /// Kills it and gives the last number that it told; 0: none.
  std::int64_t killed() {
    if (child_ == 0) {
      return told_;
    }
    ::kill(child_, SIGKILL);
    ::waitpid(std::exchange(child_, 0), &ended_, 0);
    tells(INT_MAX);
    ::close(out_);
    return told_;
  }
  [[nodiscard]] bool was_killed() const { return WIFSIGNALED(ended_); }

 private:
  int next_letter() const {
    char letter = 0;
    return ::read(out_, &letter, 1) == 1 ? letter : -1;
  }

  pid_t child_ = 0;
  int out_ = -1;
  int ended_ = 0;
  std::int64_t told_ = 0;
  std::string line_;
};

/// The parts of every batch agree; how many batches there are.
std::int64_t check_batches(const day::Records& records) {
  std::map<std::string, std::int64_t> measured;
  for (const auto& check : records.field_checks()) {
    ++measured[check.thing.instrument];
  }
  std::int64_t batches = 0;
  for (const day::LogEntry& entry : records.log()) {
    if (entry.act == "sign") {
      ++batches;
      CHECK(entry.subject == "batch " + std::to_string(batches));
      CHECK(std::to_string(measured[entry.subject]) == entry.detail);
    }
  }
  CHECK(std::cmp_equal(records.boards().size(), batches));
  CHECK(std::cmp_equal(records.frozen_inputs().size(), batches));
  return batches;
}

void check_nothing_wrong(const std::string& folder) {
  CHECK(ports::gdal::damage_in(records_in(folder)).empty());
  const auto defects = testing::defects_in(folder);
  CAPTURE(defects.empty() ? "" : defects.front());
  CHECK(defects.empty());
}

using Clock = std::chrono::steady_clock;

/// A moment within the time that a piece of work takes on this machine as it is now, or a little
/// after it.
void wait_within(Clock::duration work, std::mt19937& random) {
  std::uniform_real_distribution<double> share{0.0, 1.2};
  std::this_thread::sleep_for(work * share(random));
}

/// How long "open" takes from its first line to its end.
Clock::duration time_to_open(const std::string& folder) {
  Victim whole{"open", folder};
  const auto start = Clock::now();
  whole.tells(1);  // it tells no more, and ends
  return Clock::now() - start;
}

bool has_journal(const std::string& folder) {
  return fs::exists(folder + "/records.gpkg-journal");
}

}  // namespace

// Started some 260 times, which takes the sanitised program minutes.
TEST_SUITE_BEGIN("whole demo");

TEST_CASE("killed at 200 random moments of writing, all that was told is kept and all is whole") {
  constexpr unsigned kSeed = 20'260'201;
  std::mt19937 random{kSeed};
  std::uniform_int_distribution<int> batches_before{0, 2};
  int in_mid_write = 0;
  std::int64_t committed = 0;
  for (int round = 0; round < 8; ++round) {
    const TempFolder folder;
    (void)write_records(records_in(folder.path()), writer());
    std::int64_t kept = 0;
    for (int kill = 0; kill < 25; ++kill) {
      CAPTURE(kSeed);
      CAPTURE(round);
      CAPTURE(kill);
      Victim victim{"append", folder.path()};
      const auto start = Clock::now();
      victim.tells(1);
      const auto batch = Clock::now() - start;
      victim.tells(batches_before(random));
      wait_within(batch, random);
      const std::int64_t told = std::max(kept, victim.killed());
      CHECK(victim.was_killed());
      in_mid_write += has_journal(folder.path()) ? 1 : 0;
      const auto records = read_records(records_in(folder.path()));
      REQUIRE(records != nullptr);
      kept = check_batches(*records);
      // One more may have been committed and not yet told.
      CHECK(kept >= told);
      CHECK(kept <= told + 1);
    }
    check_nothing_wrong(folder.path());
    committed += kept;
  }
  // Else the moments were badly chosen and nothing was tried.
  CHECK(in_mid_write >= 10);
  CHECK(committed >= 200);
}

TEST_CASE("killed while they are made, there are no records or whole ones, and the next go on") {
  constexpr unsigned kSeed = 7;
  std::mt19937 random{kSeed};
  const TempFolder first;
  const auto making = time_to_open(first.path());
  int unmade = 0;
  for (int kill = 0; kill < 30; ++kill) {
    CAPTURE(kSeed);
    CAPTURE(kill);
    const TempFolder folder;
    Victim victim{"open", folder.path()};
    wait_within(making, random);
    (void)victim.killed();
    const auto begun = std::distance(fs::directory_iterator{folder.path()}, {});
    if (read_records(records_in(folder.path()))) {
      CHECK(testing::defects_in(folder.path()).empty());
    } else {
      unmade += begun > 0 ? 1 : 0;
    }
    testing::keep_one_of_each_in(folder.path());
    CHECK(std::distance(fs::directory_iterator{folder.path()}, {}) == 1);
    check_nothing_wrong(folder.path());
  }
  CHECK(unmade >= 3);
}

TEST_CASE(
    "killed while they are brought to the newest version, they are of the old or of the new") {
  constexpr unsigned kSeed = 11;
  std::mt19937 random{kSeed};
  const TempFolder older;
  make_older_records(older.path(), 1);
  const TempFolder first;
  fs::copy_file(older.file("records.gpkg"), first.file("records.gpkg"));
  const auto migrating = time_to_open(first.path());
  for (int kill = 0; kill < 30; ++kill) {
    CAPTURE(kSeed);
    CAPTURE(kill);
    const TempFolder folder;
    fs::copy_file(older.file("records.gpkg"), folder.file("records.gpkg"));
    Victim victim{"open", folder.path()};
    wait_within(migrating, random);
    (void)victim.killed();
    check_nothing_wrong(folder.path());
    CHECK(read_records(records_in(folder.path()))->log().size() == 2);
    const auto writing = write_records(records_in(folder.path()), writer());
    CHECK(writing->marks().at(0).thing.status.mark == "Winch");
    CHECK(writing->boards().empty());
  }
}

TEST_SUITE_END();
