// The program ended at any moment: no file half written, none left beside, older ones as they were.
#include <doctest/doctest.h>
#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <chrono>
#include <csignal>
#include <filesystem>
#include <map>
#include <random>
#include <thread>

#include "app/desk.h"
#include "app/program.h"

namespace rimehaul::app {
namespace {

namespace fs = std::filesystem;
using testing::Desk;
using testing::text_in;
using testing::told_by_shell;
using Clock = std::chrono::steady_clock;

using Files = std::map<std::string, std::string>;

/// Every file under a folder by its name there, folders as names alone.
Files files_in(const fs::path& folder) {
  Files files;
  for (const auto& entry : fs::recursive_directory_iterator{folder}) {
    files[fs::relative(entry.path(), folder).string()] =
        entry.is_regular_file() ? text_in(entry.path()) : "";
  }
  return files;
}

void put(const Files& files, const fs::path& folder) {
  fs::remove_all(folder);
  fs::create_directories(folder);
  for (const auto& [name, bytes] : files) {
    std::ofstream{folder / name, std::ios::binary} << bytes;
  }
}

struct Ended {
  int signal = 0;  ///< 0: it came to its end
  Clock::duration after{};
};

/// Runs the program with its answers in `folder`, and ends it after a while; signal 0: does not.
Ended run_and_end(const std::vector<std::string>& words, const fs::path& folder, Ended end) {
  const auto start = Clock::now();
  const pid_t child = testing::forked();
  if (child == 0) {
    const int nowhere = ::open("/dev/null", O_RDWR);
    ::dup2(nowhere, STDOUT_FILENO);
    ::dup2(nowhere, STDERR_FILENO);
    std::vector<char*> arguments{const_cast<char*>("rimehaul")};
    for (const std::string& word : words) {
      arguments.push_back(const_cast<char*>(word.c_str()));
    }
    arguments.push_back(nullptr);
    if (::chdir(folder.c_str()) == 0) {
      ::execv(RIMEHAUL_PROGRAM, arguments.data());
    }
    ::_exit(99);
  }
  if (end.signal != 0) {
    std::this_thread::sleep_for(end.after);
    ::kill(child, end.signal);
  }
  int status = 0;
  REQUIRE(::waitpid(child, &status, 0) == child);
  const bool by_signal = WIFSIGNALED(status);
  CHECK((by_signal || WEXITSTATUS(status) <= 1));
  return {by_signal ? WTERMSIG(status) : 0, Clock::now() - start};
}

/// Ends a command so many times at random moments of its run. `older` lie where its answers go.
void end_at_random(const std::vector<std::string>& words, const Files& older, int times) {
  const Desk desk;
  const fs::path folder = desk.path("answers");
  put(older, folder);
  run_and_end(words, folder, {});  // the first run is slower than those that follow
  const Files newer = files_in(folder);
  put(older, folder);
  const Ended whole = run_and_end(words, folder, {});
  CHECK(files_in(folder) == newer);
  CHECK(newer != older);
#ifdef __SANITIZE_ADDRESS__
  times = (times + 3) / 4;  // ten times as slow, and no other program
#endif
  std::mt19937 random{20260201};
  std::uniform_real_distribution<double> share{0.0, 1.05};
  int ended = 0;
  for (int time = 0; time < times; ++time) {
    CAPTURE(time);
    put(older, folder);
    const int signal = std::array{SIGINT, SIGTERM}.at(time % 2);
    const auto after = std::chrono::duration_cast<Clock::duration>(whole.after * share(random));
    const Ended run = run_and_end(words, folder, {signal, after});
    CHECK((run.signal == signal || run.signal == 0));
    ended += run.signal == 0 ? 0 : 1;
    const Files found = files_in(folder);
    CHECK((found == older || found == newer));
  }
  CHECK(ended > times / 5);
}

const std::vector<std::string> kNow{"--now", "2026-02-01T10:00:00Z"};

std::vector<std::string> with_now(std::vector<std::string> words) {
  words.insert(words.end(), kNow.begin(), kNow.end());
  return words;
}

TEST_CASE("a route ended at any moment leaves its card, record, GPX and JSON all old or all new") {
  const testing::TinySite site;
  end_at_random(with_now(testing::route_words(
                    site, {"--card", "card.pdf", "--gpx", "card.gpx", "--json", "card.json"})),
                {{"card.pdf", "old"},
                 {"card.pdf.record.json", "older"},
                 {"card.gpx", "oldest"},
                 {"card.json", "{}"}},
                16);
}

TEST_CASE(
    "an audit ended at any moment leaves its table, lines, sheet and JSON all old or all new") {
  const testing::TinySite site;
  end_at_random(with_now({"audit", site.folder(), "--rig", "solo", "--load", "50", "--csv", "a.csv",
                          "--geojson", "a.geojson", "--pdf", "a.pdf", "--json", "a.json"}),
                {{"a.csv", "old"}, {"a.geojson", "old"}, {"a.pdf", "old"}}, 16);
}

TEST_CASE("drawings and tables ended at any moment are old or new") {
  const testing::TinySite site;
  end_at_random(
      with_now({"limits", site.folder(), "--rig", "solo", "--svg", "l.svg", "--pdf", "l.pdf"}),
      {{"l.svg", "old"}}, 6);
  end_at_random(
      with_now({"board", site.folder(), "--rig", "solo", "--csv", "b.csv", "--pdf", "b.pdf"}),
      {{"b.csv", "old"}}, 6);
  end_at_random(with_now({"rig", site.folder(), "--rig", "solo", "--pdf", "r.pdf"}), {}, 6);
  end_at_random(with_now({"check", site.folder(), "--json", "c.json"}), {{"c.json", "old"}}, 6);
}

TEST_CASE("rasters of slopes ended at any moment are all old or all new, and so is their folder") {
  const testing::TinySite site;
  const std::vector<std::string> slopes{"slopes", site.folder(), "--into"};
  const auto into = [&](const char* folder, const std::vector<std::string>& more) {
    std::vector<std::string> words = slopes;
    words.emplace_back(folder);
    words.insert(words.end(), more.begin(), more.end());
    return with_now(words);
  };
  end_at_random(into("made", {"--rig", "solo", "--snow", "dry", "--json", "s.json"}),
                {{"s.json", "old"}}, 16);
  end_at_random(into(".", {"--plain"}), {{"slope.tif", "old"}, {"aspect.tif", "older"}}, 10);
}

TEST_CASE("a new site ended at any moment is there whole or not at all, large files and all") {
  const testing::TinySite site;
  site.write("heights.cpg", std::string(40'000'000, ' '));  // is copied with the heights
  end_at_random(with_now({"new", "fell", "--heights", site.path("heights.asc"), "--trails",
                          site.path("trails.geojson")}),
                {}, 20);
}

TEST_CASE("a shell tells 128 and the signal's number") {
  const std::string audit = " \"$rimehaul\" audit " RIMEHAUL_ROOT "/routes/marrowfell >/dev/null";
  for (const auto& [name, status] : {std::pair{"INT", 130}, {"TERM", 143}, {"HUP", 129}}) {
    CHECK(told_by_shell(std::string{"env --default-signal timeout --preserve-status -s "} + name +
                        " 0.2" + audit)
              .ended == status);
  }
}

TEST_CASE("an answer for which there is no room is one line and 3, and leaves nothing") {
  const testing::TinySite site;
  const Desk desk;
  const std::string check = "cd " + desk.path("") + "; \"$rimehaul\" check " + site.folder();
  const testing::Told full = told_by_shell(check + " 2>&1 >/dev/full");
  CHECK(full.ended == 3);
  CHECK(full.out.find("standard output") != std::string::npos);
  const testing::Told limited =
      told_by_shell("ulimit -f 1; " + check + " --json report.json 2>&1 >/dev/null");
  CHECK(limited.ended == 3);
  CHECK(limited.out.find("report.json: cannot be written: File too large; make room") == 0);
  CHECK(desk.is_empty());
}

}  // namespace
}  // namespace rimehaul::app
