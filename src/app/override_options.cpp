// The command lines of those who decide: `override`, `sign` and `recall`.
#include <CLI/CLI.hpp>

#include "app/option_groups.h"
#include "app/value_kinds.h"
#include "app/verb.h"

namespace rimehaul::app {

namespace {

constexpr const char* kOrderGroup = "Order";

void add_decider(CLI::App& verb, std::string& person) {
  add_person(verb, person, "Person who decides, of the site's list")->group(kOrderGroup);
}

Guide guide_to_override() {
  return {
      .examples = {{"Nobody drives the Noon Run until the evening:",
                    "rimehaul override routes/marrowfell --as \"P. Example\" --trail \"Noon Run\" "
                    "--reason \"wet slides seen\" --until 18:00 --now 2026-02-01T17:00:00Z"},
                   {"What is ordered now:",
                    "rimehaul override routes/marrowfell --now 2026-02-01T17:00:00Z"}},
      .endings = {{Status::yes, "the order is kept, or those in force are shown"}},
      .notes = {
          "Orders tighten at will: a trail closed or with shorter hours, a rig forbidden, a lower "
          "share, a stricter rule. One that loosens a rule of the site needs --until. No order "
          "lifts a maker's rating, physics, the error of a number or a grip.",
          "Every order is kept in records.gpkg with its entry in the log, and holds for all that "
          "is "
          "planned after it until it runs out or is taken back."}};
}

Guide guide_to_sign() {
  return {
      .examples = {{"The planner signs the named routes of the morning:",
                    "rimehaul sign routes/marrowfell --as \"P. Example\" --snow dry --now "
                    "2026-02-01T17:00:00Z"},
                   {"One route is closed by hand:",
                    "rimehaul sign routes/marrowfell --as \"P. Example\" --snow dry --close "
                    "\"Supper run\" --reason \"the lodge is shut\" --now 2026-02-01T17:00:00Z"}},
      .endings = {{Status::yes, "the board is signed and kept, whatever is closed on it"}},
      .notes = {"What is signed is kept with the digests of all files that it was made from. "
                "Cards are issued from the last board that was signed; when a file has "
                "changed since, an order was given or the report has run out, it issues none."}};
}

Guide guide_to_recall() {
  return {.examples = {{"The first card that was issued, where there is one:",
                        "rimehaul recall routes/marrowfell --as \"P. Example\" --issue 1 --reason "
                        "\"slides on the way\" --now 2026-02-01T18:00:00Z",
                        Status::honest_no},
                       {"The same by the officer, told as JSON too:",
                        "rimehaul recall routes/marrowfell --as \"R. Example\" --issue 1 --reason "
                        "\"slides on the way\" --json recalled.json --now 2026-02-01T18:00:00Z",
                        Status::honest_no}},
          .endings = {{Status::yes, "the card is recalled, and the log says so"},
                      {Status::honest_no, "no such card was issued, or it is recalled already"}},
          .notes = {"The driver has the paper: call them. From now on every command of this site "
                    "tells of the card for a day."}};
}

}  // namespace

Verb add_override(CLI::App& program, OverrideOptions& options) {
  CLI::App* verb = program.add_subcommand(
      "override", "Order more than the site's files say, or show what is ordered.");
  add_common(*verb, options.common);
  add_decider(*verb, options.person);
  CLI::Option* trail =
      takes(verb->add_option("--trail", options.trail, "Trail that is closed"), Value::trail)
          ->group(kOrderGroup);
  verb->add_option("--hours", options.hours, "The trail stays open in these: \"08:00 to 12:00\"")
      ->needs(trail)
      ->type_name("HOURS")
      ->group(kOrderGroup);
  takes(verb->add_option("--rig", options.rig, "Rig that is not driven"), Value::rig)
      ->group(kOrderGroup);
  takes_number(verb->add_option("--share", options.share, "No more than this of any limit"),
               "SHARE", {0.01, 1})
      ->group(kOrderGroup);
  verb->add_option("--rule", options.rule, "A rule of rules.toml: 'most_wind_kmh = 50'")
      ->type_name("RULE")
      ->group(kOrderGroup);
  takes_whole_number(verb->add_option("--end", options.end, "Order that is taken back"), "NUMBER",
                     {1, 1e9})
      ->group(kOrderGroup);
  takes(verb->add_option("--reason", options.reason, "Why; stands on cards"), Value::name)
      ->group(kOrderGroup);
  takes(verb->add_option("--until", options.until,
                         "When it runs out: 18:00 today, or as --now (when it is taken back)"),
        Value::time)
      ->group(kOrderGroup);
  return {verb, guide_to_override()};
}

Verb add_sign(CLI::App& program, SignOptions& options) {
  CLI::App* verb =
      program.add_subcommand("sign", "Sign the board of the site's named routes, and keep it.");
  add_common(*verb, options.common);
  add_decider(*verb, options.person);
  add_depart(*verb, options.depart);
  add_classes(*verb, options.board.wetness);
  again(takes(verb->add_option("--surface", options.board.surfaces,
                               "Its surface: " + words_listed(Value::surface_or_all) +
                                   "; may be given again (groomed)"),
              Value::surface_or_all))
      ->group(kSnowGroup);
  again(takes(verb->add_option("--close", options.close,
                               "Route that is closed by hand; may be given again"),
              Value::named_route))
      ->group(kOrderGroup);
  again(
      takes(verb->add_option("--permit", options.permit,
                             "Route whose decision is taken: it may be driven; may be given again"),
            Value::named_route))
      ->group(kOrderGroup);
  takes(verb->add_option("--reason", options.reason, "Why routes are closed or permitted"),
        Value::name)
      ->group(kOrderGroup);
  add_file(*verb, options.csv, {"--csv", "Write every route in every snow as a row of a table"});
  add_file(*verb, options.pdf, {"--pdf", "Print the board"});
  takes(verb->add_option("--paper", options.board.paper, "Of the sheets: a4 or a3 (a4)"),
        Value::paper)
      ->group(kAnswerGroup);
  return {verb, guide_to_sign()};
}

Verb add_recall(CLI::App& program, RecallOptions& options) {
  CLI::App* verb = program.add_subcommand("recall", "Call back a card that was issued.");
  add_common(*verb, options.common);
  add_decider(*verb, options.person);
  takes_whole_number(verb->add_option("--issue", options.card, "Number of the card's issue"),
                     "NUMBER", {1, 1e9})
      ->required()
      ->group(kOrderGroup);
  takes(verb->add_option("--reason", options.reason, "Why"), Value::name)
      ->required()
      ->group(kOrderGroup);
  return {verb, guide_to_recall()};
}

}  // namespace rimehaul::app
