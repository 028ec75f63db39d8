// What `cmake --install` puts under a prefix works from there, wherever that is.
#include <doctest/doctest.h>

#include <filesystem>

#include "app/desk.h"
#include "app/program.h"

namespace rimehaul::app {
namespace {

namespace fs = std::filesystem;
using testing::Desk;
using testing::told_by_shell;

TEST_CASE(
    "an installed program has its page, its completion, its documents and the demo beside it") {
  const Desk desk;
  const std::string prefix = desk.path("a prefix");
  const std::string in_prefix = "cd \"" + prefix + "\"; ";
  REQUIRE(told_by_shell("cmake --install '" RIMEHAUL_BUILD "' --prefix '" + prefix + "'").ended ==
          0);
  const testing::Told checked = told_by_shell(
      in_prefix + "cd share/rimehaul/demo; ../../../bin/rimehaul check routes/marrowfell");
  CHECK(checked.ended == 0);
  CHECK(checked.out.find("22 trails") != std::string::npos);
  CHECK(told_by_shell(in_prefix + "gzip -dc share/man/man1/rimehaul.1.gz").out ==
        told_by_shell("\"$rimehaul\" manual-page").out);
  CHECK(told_by_shell(in_prefix + "bash -n share/bash-completion/completions/rimehaul").ended == 0);
  CHECK(told_by_shell(in_prefix + "readelf -d bin/rimehaul | grep -E 'RPATH|RUNPATH'").out.empty());
  const fs::path documents = fs::path{prefix} / "share" / "doc" / "rimehaul";
  CHECK(fs::exists(documents / "README.md"));
  CHECK(fs::exists(documents / "docs" / "commands.md"));
  CHECK(fs::exists(documents / "docs" / "checks" / "climb.md"));
  for (const auto& entry : fs::directory_iterator{prefix}) {
    CHECK((entry.path().filename() == "bin" || entry.path().filename() == "share"));
  }
}

}  // namespace
}  // namespace rimehaul::app
