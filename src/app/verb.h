// A command as it is told to people, beside its options.
#pragma once

#include <string>
#include <vector>

#include "app/options.h"

namespace CLI {
class App;
}  // namespace CLI

namespace rimehaul::app {

/// A line that works as it stands in a folder that holds the demo site.
struct Example {
  std::string aim;
  std::string line;
  Status ends = Status::yes;
};

/// When a command ends with a status.
struct Ending {
  Status status;
  std::string when;
};

struct Guide {
  std::vector<Example> examples;
  std::vector<Ending> endings;     ///< those that mean something of its own
  std::vector<std::string> notes;  ///< a paragraph each
};

/// The options stand in the parser, which knows the aim too, in one sentence.
struct Verb {
  CLI::App* app = nullptr;
  Guide guide;
};

// Each adds its command to the program's.

Verb add_new(CLI::App& program, NewOptions& options);
Verb add_check(CLI::App& program, CheckOptions& options);
Verb add_route(CLI::App& program, RouteOptions& options);
Verb add_errands(CLI::App& program, ErrandsOptions& options);
Verb add_explain(CLI::App& program, ExplainOptions& options);
Verb add_snow_day(CLI::App& program, SnowDayOptions& options);
Verb add_audit(CLI::App& program, AuditOptions& options);
Verb add_limits(CLI::App& program, LimitsOptions& options);
Verb add_payload(CLI::App& program, PayloadOptions& options);
Verb add_board(CLI::App& program, BoardOptions& options);
Verb add_override(CLI::App& program, OverrideOptions& options);
Verb add_sign(CLI::App& program, SignOptions& options);
Verb add_card(CLI::App& program, CardOptions& options);
Verb add_recall(CLI::App& program, RecallOptions& options);
Verb add_field_check(CLI::App& program, FieldCheckOptions& options);
Verb add_slopes(CLI::App& program, SlopesOptions& options);
Verb add_log(CLI::App& program, LogOptions& options);
Verb add_backup(CLI::App& program, BackupOptions& options);
Verb add_rig_sheet(CLI::App& program, RigSheetOptions& options);

}  // namespace rimehaul::app
