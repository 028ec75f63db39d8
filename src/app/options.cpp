#include "app/options.h"

#include <CLI/CLI.hpp>
#include <ostream>

#include "app/audit_options.h"
#include "app/board_options.h"
#include "app/limits_options.h"
#include "app/new_options.h"
#include "app/option_groups.h"

namespace rimehaul::app {

namespace {

constexpr const char* kCheckExamples =
    "Examples:\n"
    "  rimehaul check routes/marrowfell\n"
    "  rimehaul check routes/marrowfell --json report.json\n"
    "Ends with 0 when the site is usable, 1 when faults forbid it, 3 when it cannot be read.";

constexpr const char* kRouteExamples =
    "Examples:\n"
    "  rimehaul route routes/marrowfell --rig \"Broadfoot with sled\" --snow moist \\\n"
    "      --load 40 --towed-load 60 --from \"Cable House\" --to \"Fell Lodge\"\n"
    "  rimehaul route routes/marrowfell --rig Broadfoot --snow-report routes/marrowfell/snow.toml "
    "\\\n"
    "      --depart 08:30 --now 2026-02-01T16:00:00Z --load 100 \\\n"
    "      --from \"Cable House\" --to \"Fell Lodge\" --card card.pdf --gpx card.gpx\n"
    "Ends with 0 when there is a way, 1 when the honest answer is no.";

constexpr const char* kExplainExamples =
    "Examples:\n"
    "  rimehaul explain routes/marrowfell --rig Broadfoot --snow moist --trail \"Shed Lane\" --at "
    "120\n"
    "  rimehaul explain routes/marrowfell --rig Broadfoot --snow dry --point 498500,5093800\n"
    "Coordinates are metres east and north in the site's map frame.";

CLI::App* add_check(CLI::App& program, CheckOptions& options) {
  CLI::App* verb =
      program.add_subcommand("check", "List in one pass all that is wrong or doubtful with a site");
  add_common(*verb, options.common);
  verb->footer(kCheckExamples);
  return verb;
}

CLI::App* add_route(CLI::App& program, RouteOptions& options) {
  CLI::App* verb =
      program.add_subcommand("route", "Find a way between two stations and print its route card");
  add_common(*verb, options.common);
  add_rig(*verb, options.rig);
  verb->get_option("--load")->required();
  add_snow(*verb, options.snow);
  add_depart(*verb, options.depart);
  verb->add_option("--from", options.from, "Station to leave from")->required()->type_name("NAME");
  verb->add_option("--to", options.to, "Station to arrive at")->required()->type_name("NAME");
  verb->add_option("--via", options.via, "Station to pass, in order; may be given again")
      ->type_name("NAME")
      ->expected(1)
      ->take_all();
  verb->add_option("--prefer", options.prefer, "safest, quickest or least-fuel (safest)")
      ->check(CLI::IsMember({"safest", "quickest", "least-fuel"}));
  verb->add_option("--permitted-by", options.permitted_by,
                   "Person who takes the decisions that the site's rules ask for")
      ->type_name("NAME");
  verb->add_option("--card", options.card,
                   "Print the best route's card as PDF; its record lies beside it")
      ->type_name("FILE");
  verb->add_option("--gpx", options.gpx, "Write the best route as GPX 1.1")->type_name("FILE");
  verb->add_option("--alternatives", options.alternatives, "Other ways to show, 0 to 3 (0)")
      ->check(CLI::Range(0, 3));
  verb->footer(kRouteExamples);
  return verb;
}

CLI::App* add_explain(CLI::App& program, ExplainOptions& options) {
  CLI::App* verb = program.add_subcommand(
      "explain", "Show every check at one place of a trail, with formula, inputs and source");
  add_common(*verb, options.common);
  add_rig(*verb, options.rig);
  add_snow(*verb, options.snow);
  add_depart(*verb, options.depart);
  auto* trail = verb->add_option("--trail", options.trail, "Name of the trail")->type_name("NAME");
  auto* at = verb->add_option("--at", options.at_m, "Metres along the trail as drawn")
                 ->check(number_within({0, 1e7}));
  at->needs(trail);
  trail->needs(at);
  verb->add_option("--point", options.point_m, "Place on the map, metres: EAST,NORTH")
      ->delimiter(',')
      ->expected(2)
      ->type_name("E,N")
      ->excludes(trail);
  verb->add_option("--direction", options.direction, "forward, backward or both (both)")
      ->check(CLI::IsMember({"forward", "backward", "both"}));
  verb->footer(kExplainExamples);
  return verb;
}

}  // namespace

std::variant<Command, Status> read_command(const std::vector<std::string>& arguments,
                                           const Outside& outside) {
  CLI::App program{
      "Rimehaul: where a tracked carrier may go over snow, and how to drive it.\n"
      "A planning aid, not permission to drive."};
  program.name("rimehaul");
  program.set_version_flag("--version", std::string{"rimehaul "} + RIMEHAUL_VERSION);
  program.require_subcommand(1);
  program.footer(
      "rimehaul VERB --help says more and gives examples.\n"
      "Exit status: 0 yes; 1 the honest answer is no; 2 wrong usage; 3 bad input; "
      "4 a fault of the program.");
  NewOptions new_site;
  const CLI::App* new_verb = add_new(program, new_site);
  CheckOptions check;
  RouteOptions route;
  ExplainOptions explain;
  AuditOptions audit;
  const CLI::App* check_verb = add_check(program, check);
  const CLI::App* route_verb = add_route(program, route);
  add_explain(program, explain);
  const CLI::App* audit_verb = add_audit(program, audit);
  LimitsOptions limits;
  const CLI::App* limits_verb = add_limits(program, limits);
  RigSheetOptions rig_sheet;
  const CLI::App* rig_sheet_verb = add_rig_sheet(program, rig_sheet);
  BoardOptions board;
  const CLI::App* board_verb = add_board(program, board);
  std::vector<std::string> reversed{arguments.rbegin(), arguments.rend()};
  try {
    program.parse(std::move(reversed));
  } catch (const CLI::ParseError& error) {
    const int code = program.exit(error, outside.out, outside.err);
    return code == 0 ? Status::yes : Status::wrong_usage;
  }
  if (new_verb->parsed()) {
    return Command{std::move(new_site)};
  }
  if (board_verb->parsed()) {
    return Command{std::move(board)};
  }
  if (check_verb->parsed()) {
    return Command{std::move(check)};
  }
  if (audit_verb->parsed()) {
    return Command{std::move(audit)};
  }
  if (rig_sheet_verb->parsed()) {
    return Command{std::move(rig_sheet)};
  }
  if (limits_verb->parsed()) {
    return Command{std::move(limits)};
  }
  return route_verb->parsed() ? Command{std::move(route)} : Command{std::move(explain)};
}

}  // namespace rimehaul::app
