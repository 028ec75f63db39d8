// The command lines of `limits` and `rig`.
#pragma once

#include "app/options.h"

namespace CLI {
class App;
}  // namespace CLI

namespace rimehaul::app {

CLI::App* add_limits(CLI::App& program, LimitsOptions& options);
CLI::App* add_rig_sheet(CLI::App& program, RigSheetOptions& options);

}  // namespace rimehaul::app
