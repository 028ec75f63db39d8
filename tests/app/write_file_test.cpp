// Files that are whole or not there: through faults, through signals at any moment.
#include "app/write_file.h"

#include <doctest/doctest.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <filesystem>
#include <random>
#include <thread>

#include "app/desk.h"
#include "app/ending_signals.h"
#include "app/program.h"
#include "base/fault.h"

namespace rimehaul::app {
namespace {

namespace fs = std::filesystem;
using testing::Desk;
using testing::text_in;

std::size_t count_in(const fs::path& folder) {
  return static_cast<std::size_t>(
      std::distance(fs::directory_iterator{folder}, fs::directory_iterator{}));
}

std::string fault_of(const std::vector<FileToWrite>& files) {
  try {
    write_files(files);
  } catch (const base::BadInput& error) {
    return error.what();
  }
  return "";
}

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

TEST_CASE("an older file is replaced whole, and nothing is left lying beside it") {
  const Desk desk;
  write_file(desk.path("card.pdf"), std::string(100'000, 'x'));
  write_file(desk.path("card.pdf"), "new");
  CHECK(text_in(desk.path("card.pdf")) == "new");
  CHECK(count_in(desk.path("")) == 1);
}

TEST_CASE("of several files all are new, or all are as they were, and the line names the bad one") {
  const Desk desk;
  write_file(desk.path("a"), "old a");
  const std::vector<FileToWrite> files{{desk.path("a"), "new a"}, {desk.path("no/b"), "new b"}};
  const std::string line = fault_of(files);
  CHECK(says(line, desk.path("no/b") + ": cannot be written: No such file or directory; "));
  CHECK(text_in(desk.path("a")) == "old a");
  CHECK(count_in(desk.path("")) == 1);
}

TEST_CASE("a folder is no place for a file, and stays") {
  const Desk desk;
  fs::create_directory(desk.path("folder"));
  CHECK(says(fault_of({{desk.path("folder"), "x"}}), "it is a folder"));
  CHECK(fs::is_directory(desk.path("folder")));
}

TEST_CASE("two answers into one file are refused: the second would undo the first") {
  const Desk desk;
  fs::create_symlink(desk.path("a"), desk.path("link"));
  write_file(desk.path("a"), "old");
  CHECK(says(fault_of({{desk.path("a"), "1"}, {desk.path("./a"), "2"}}), "two answers"));
  CHECK(says(fault_of({{desk.path("a"), "1"}, {desk.path("link"), "2"}}), "two answers"));
  CHECK(text_in(desk.path("a")) == "old");
}

TEST_CASE("a link is followed and stays a link, also one whose end is not there yet") {
  const Desk desk;
  fs::create_directory(desk.path("far"));
  fs::create_symlink("far/card", desk.path("link"));
  write_file(desk.path("link"), "one");
  CHECK(fs::is_symlink(desk.path("link")));
  CHECK(text_in(desk.path("far/card")) == "one");
  write_file(desk.path("link"), "two");
  CHECK(text_in(desk.path("far/card")) == "two");
  CHECK(count_in(desk.path("far")) == 1);
}

TEST_CASE("a pipe is written straight to, and stays a pipe") {
  const Desk desk;
  const std::string pipe = desk.path("pipe");
  REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
  std::string read;
  std::thread reader{[&] { read = text_in(pipe); }};
  write_file(pipe, std::string(200'000, 'y'));
  reader.join();
  CHECK(read.size() == 200'000);
  CHECK(fs::is_fifo(pipe));
}

TEST_CASE("a full disk is said, with what to do") {
  CHECK(says(fault_of({{"/dev/full", "x"}}), "No space left on device; make room"));
  CHECK(fs::is_character_file("/dev/full"));
}

TEST_CASE("a name as long as a name may be can be written") {
  const Desk desk;
  const std::string name(255, 'n');
  write_file(desk.path(name), "x");
  CHECK(text_in(desk.path(name)) == "x");
  CHECK(says(fault_of({{desk.path(name + "n"), "x"}}), "File name too long"));
}

TEST_CASE("what another run left unfinished is in nobody's way and is not touched") {
  const Desk desk;
  const std::string theirs = desk.path("a.unfinished-" + std::to_string(::getpid()));
  fs::create_directory(theirs);
  write_file(desk.path("a"), "x");
  CHECK(text_in(desk.path("a")) == "x");
  CHECK(fs::is_directory(theirs));
}

/// Writes two files over and over until a signal ends it; the texts tell which writing they are of.
[[noreturn]] void write_without_end(const Desk& desk) {
  sweep_on_ending_signals();
  for (int round = 0;; ++round) {
    const std::string bytes(300'000, static_cast<char>('a' + round % 26));
    write_files({{desk.path("one"), bytes}, {desk.path("two"), bytes}});
  }
}

/// 0 when a child that writes all the time was ended by this very signal.
int ended_by(int signal, const Desk& desk, std::chrono::microseconds after) {
  const pid_t child = testing::forked();
  if (child == 0) {
    write_without_end(desk);
  }
  std::this_thread::sleep_for(after);
  ::kill(child, signal);
  int status = 0;
  REQUIRE(::waitpid(child, &status, 0) == child);
  return WIFSIGNALED(status) ? WTERMSIG(status) : -1;
}

TEST_CASE(
    "ended at any moment of writing, 80 times: both files whole and of one writing, no more") {
  const Desk desk;
  write_files({{desk.path("one"), std::string(300'000, '0')},
               {desk.path("two"), std::string(300'000, '0')}});
  constexpr unsigned kSeed = 1809;
  CAPTURE(kSeed);
  std::mt19937 random{kSeed};
  std::uniform_int_distribution<int> moment{500, 25'000};
  for (int time = 0; time < 80; ++time) {
    const int signal = std::array{SIGINT, SIGTERM, SIGHUP, SIGQUIT}.at(time % 4);
    CAPTURE(time);
    CHECK(ended_by(signal, desk, std::chrono::microseconds{moment(random)}) == signal);
    const std::string one = text_in(desk.path("one"));
    CHECK(one.size() == 300'000);
    CHECK(one.find_first_not_of(one.front()) == std::string::npos);
    CHECK(one == text_in(desk.path("two")));
    CHECK(count_in(desk.path("")) == 2);
  }
}

TEST_CASE("a signal that was ignored at the start stays ignored") {
  const Desk desk;
  const pid_t child = testing::forked();
  if (child == 0) {
    ::signal(SIGHUP, SIG_IGN);
    sweep_on_ending_signals();
    ::raise(SIGHUP);
    ::_exit(7);
  }
  int status = 0;
  REQUIRE(::waitpid(child, &status, 0) == child);
  CHECK(WIFEXITED(status));
  CHECK(WEXITSTATUS(status) == 7);
}

}  // namespace
}  // namespace rimehaul::app
