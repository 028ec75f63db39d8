// The command line of `board`.
#pragma once

#include "app/options.h"

namespace CLI {
class App;
}  // namespace CLI

namespace rimehaul::app {

CLI::App* add_board(CLI::App& program, BoardOptions& options);

}  // namespace rimehaul::app
