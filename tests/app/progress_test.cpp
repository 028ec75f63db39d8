// How far long work is: told to a person at a terminal, and to nobody else.
#include "app/progress.h"

#include <doctest/doctest.h>

#include <regex>
#include <sstream>
#include <thread>

#include "app/program.h"

namespace rimehaul::app {
namespace {

using testing::told_by_shell;
using testing::told_on_terminal;

TEST_CASE("progress tells what is done, the share done and the time left") {
  CHECK(progress_line("judging trails", {1, 4, 10.0}) == "judging trails: 25 % done, 30 s left");
  CHECK(progress_line("judging trails", {0, 4, 0.0}) == "judging trails: 0 % done");
  CHECK(progress_line("judging trails", {4, 4, 10.0}) == "judging trails: 100 % done, 0 s left");
}

/// What somebody sees of work in two parts that take this long each.
std::string told_of_work(bool terminal, std::chrono::milliseconds each) {
  std::ostringstream out;
  std::ostringstream err;
  const Outside outside{.out = out, .err = err, .now = {}, .err_is_terminal = terminal};
  {
    Progress progress{outside, "work"};
    progress.parts_to_come(1);
    progress.parts_to_come(1);
    for (int part = 0; part < 2; ++part) {
      std::this_thread::sleep_for(each);
      progress.part_done();
    }
  }
  CHECK(out.str().empty());
  return err.str();
}

TEST_CASE("short work says nothing, long work renews one line and wipes it, a pipe gets nothing") {
  CHECK(told_of_work(true, std::chrono::milliseconds{1}).empty());
  const std::string told = told_of_work(true, std::chrono::milliseconds{1100});
  CHECK(told == "\rwork: 100 % done, 0 s left\r" + std::string(26, ' ') + "\r");
  CHECK(told_of_work(false, std::chrono::milliseconds{1100}).empty());
}

TEST_CASE("an audit of the demo tells a terminal how far it is, on standard error" *
          doctest::skip(testing::no_terminal())) {
  const std::string audit = "\"$rimehaul\" audit " RIMEHAUL_ROOT
                            "/routes/marrowfell --rig \"Longback\" "
                            "--now 2026-02-01T17:00:00Z";
  const testing::Told seen = told_on_terminal(audit + " >/dev/null");
  CAPTURE(seen.out);
  CHECK(seen.ended == 1);
  CHECK(
      std::regex_search(seen.out, std::regex{"\rjudging trails: [0-9]+ % done, [0-9a-z ]+ left"}));
  CHECK(std::regex_search(seen.out, std::regex{"\r +\r$"}));
}

}  // namespace
}  // namespace rimehaul::app
