// Completion: what may come next on the line, and a real bash that is typed into.
#include <doctest/doctest.h>

#include "app/complete.h"
#include "app/program.h"
#include "app/tiny_site.h"

namespace rimehaul::app {
namespace {

using testing::TinySite;
using testing::told_by_shell;
using Words = std::vector<std::string>;

Completion completed(const std::string& typed) {
  return complete(CommandLine{}, typed);
}

TEST_CASE("commands, options and closed sets are offered by how they begin") {
  CHECK(completed("rimehaul ").words == CommandLine{}.verb_names());
  CHECK(completed("rimehaul l").words == Words{"limits", "log"});
  CHECK(completed("rimehaul f").words == Words{"field-check"});
  CHECK(completed("rimehaul field-check x --c").words == Words{"--cross-slope", "--csv"});
  CHECK(completed("rimehaul --v").words == Words{"--version"});
  CHECK(completed("rimehaul route x --snow-").words == Words{"--snow-report"});
  CHECK(completed("rimehaul route x --snow ").words ==
        Words{"dry", "moist", "wet", "very_wet", "slush"});
  CHECK(completed("rimehaul route x --prefer=qu").words == Words{"quickest"});
  CHECK(completed("rimehaul board x --surface a").words == Words{"all"});
  CHECK(completed("rimehaul board x --rows ").words == Words{"pairs", "routes", "trails"});
  CHECK(completed("rimehaul route x --load ").words.empty());
  CHECK(completed("rimehaul drive --l").words.empty());
}

TEST_CASE("an option that was given is not offered again, unless it may be") {
  CHECK(completed("rimehaul route x --card c.pdf --car").words.empty());
  CHECK(completed("rimehaul route x --via A --via").words == Words{"--via"});
}

TEST_CASE("where a file or a folder may stand, the shell is told so") {
  using Kind = Completion::Kind;
  CHECK(completed("rimehaul check ").kind == Kind::folders);
  CHECK(completed("rimehaul new a --heights ").kind == Kind::files);
  CHECK(completed("rimehaul route x --card=").kind == Kind::files);
  CHECK(completed("rimehaul route x --from ").kind == Kind::words);
}

TEST_CASE("rigs, stations and trails are those of the site on the line") {
  const TinySite site;
  const std::string route = "rimehaul route " + site.folder();
  CHECK(completed(route + " --rig ").words == Words{"solo", "towing"});
  CHECK(completed(route + " --load 5 --from T").words == Words{"Top"});
  CHECK(completed(route + " --via=").words == Words{"Base", "Top", "Hut"});
  CHECK(completed("rimehaul explain " + site.folder() + " --trail \"Hi").words ==
        Words{"High Way"});
  CHECK(completed("rimehaul route --rig ").words.empty());
  CHECK(completed("rimehaul route /no/such/site --rig ").words.empty());
  site.write("stations.geojson", "{");
  CHECK(completed(route + " --from ").words.empty());
  CHECK(completed(route + " --rig t").words == Words{"towing"});
}

TEST_CASE("what the shell breaks at other letters keeps what stands before them") {
  const CommandLine line;
  const auto text = [&](const std::string& typed, const std::string& last) {
    return completion_text(line, {.typed = typed, .last = last});
  };
  CHECK(text("rimehaul l", "l") == "words\nlimits\nlog\n");
  CHECK(text("rimehaul route x --prefer=qu", "qu") == "words\nquickest\n");
  CHECK(text("rimehaul route x --prefer=", "=") == "words\nsafest\nquickest\nleast-fuel\n");
  CHECK(text("rimehaul check ", "") == "folders\n");
  const TinySite site;
  site.change("stations.geojson", {"\"name\":\"Top\"", "\"name\":\"Top: North\""});
  CHECK(text("rimehaul route " + site.folder() + " --to \"Top: N", "\"Top: N") ==
        "words\nTop: North\n");
  CHECK(text("rimehaul route " + site.folder() + " --to Top:\\ N", "\\ N") == "words\n North\n");
}

TEST_CASE("typed into bash with the tabulator, words and names come out as they were meant" *
          doctest::skip(testing::no_terminal())) {
  const TinySite site;
  struct Typed {
    std::string line;
    std::string arguments;
  };
  const std::string at = " " + site.folder();
  for (const Typed& typed :
       {Typed{"lim\t", "[limits]"}, Typed{"route x --snow-r\t", "[route][x][--snow-report]"},
        Typed{"route x --snow mo\t", "[route][x][--snow][moist]"},
        Typed{"explain" + at + " --trail Hi\t--at 3",
              "[explain][SITE][--trail][High Way][--at][3]"},
        Typed{"explain" + at + " --trail \"Hi\t", "[explain][SITE][--trail][High Way]"},
        Typed{"explain" + at + " --trail 'Low\t", "[explain][SITE][--trail][Low Way]"},
        Typed{"route" + at + " --rig=to\t", "[route][SITE][--rig=towing]"},
        Typed{"check " + site.folder() + "/trai\t", "[check][SITE/trai]"},
        Typed{"route x --card " + site.folder() + "/trai\t",
              "[route][x][--card][SITE/trails.geojson]"}}) {
    std::string arguments = typed.arguments;
    if (const std::size_t found = arguments.find("SITE"); found != std::string::npos) {
      arguments.replace(found, 4, site.folder());
    }
    CAPTURE(typed.line);
    CHECK(told_by_shell("python3 '" RIMEHAUL_ROOT "/tests/app/type_into_bash.py' '" RIMEHAUL_ROOT
                        "/src/install/rimehaul.bash' \"$rimehaul\" \"$(cat <<'EOF'\n" +
                        typed.line + "\nEOF\n)\"")
              .out == arguments);
  }
}

}  // namespace
}  // namespace rimehaul::app
