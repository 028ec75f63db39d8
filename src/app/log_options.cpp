// The command lines of `log` and `backup`.
#include <CLI/CLI.hpp>

#include "app/option_groups.h"
#include "app/value_kinds.h"
#include "app/verb.h"

namespace rimehaul::app {

namespace {

Guide guide_to_log() {
  return {.examples = {{"Who did what:", "rimehaul log routes/marrowfell"},
                       {"Whether all that is kept is what was written, and still goes on from what "
                        "a card on paper says:",
                        "rimehaul log routes/marrowfell --verify --head 9:0123456789abcdef0123",
                        Status::honest_no}},
          .endings = {{Status::yes, "the log is told; with --verify: it holds"},
                      {Status::honest_no, "with --verify: it does not hold, or there is none"}},
          .notes = {"The log cannot prove itself whole: whoever holds the file can write all of it "
                    "anew. The heads printed on boards and cards can; hold the latest against it "
                    "by --head."}};
}

Guide guide_to_backup() {
  return {
      .examples = {{"A copy of all that is kept, as it stands:",
                    "rimehaul backup routes/marrowfell --into records-copy.gpkg",
                    Status::honest_no},
                   {"The same, told as JSON too:",
                    "rimehaul backup routes/marrowfell --into other-copy.gpkg --json copied.json",
                    Status::honest_no}},
      .endings = {{Status::yes, "the copy is written and holds"},
                  {Status::honest_no, "there are no records to copy"},
                  {Status::bad_input, "they do not hold, or the copy cannot be written"}},
      .notes = {"A copy goes over no file that is there."}};
}

}  // namespace

Verb add_log(CLI::App& program, LogOptions& options) {
  CLI::App* verb = program.add_subcommand(
      "log", "List who did what at the site, and see whether that is still what was written.");
  add_common(*verb, options.common);
  verb->add_flag("--verify", options.verify,
                 "Hold every entry, and all that is kept, against the chain of hashes")
      ->group(kAnswerGroup);
  again(takes(verb->add_option("--head", options.heads,
                               "Verify against this head too, as a board or a card on paper bears "
                               "it; may be given again"),
              Value::log_head))
      ->group(kAnswerGroup);
  return {verb, guide_to_log()};
}

Verb add_backup(CLI::App& program, BackupOptions& options) {
  CLI::App* verb = program.add_subcommand(
      "backup", "Copy the site's records, as they stand, into a file, and verify the copy.");
  add_common(*verb, options.common);
  takes(
      verb->add_option(kIntoOption, options.into, "File to copy them into; not one that is there"),
      Value::file)
      ->required()
      ->group(kAnswerGroup);
  return {verb, guide_to_backup()};
}

}  // namespace rimehaul::app
