// The words of the verb `audit` on the command line.
#pragma once

#include "app/option_groups.h"

namespace rimehaul::app {

CLI::App* add_audit(CLI::App& program, AuditOptions& options);

}  // namespace rimehaul::app
