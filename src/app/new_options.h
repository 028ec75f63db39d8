// The command line of `new`.
#pragma once

#include "app/options.h"

namespace CLI {
class App;
}  // namespace CLI

namespace rimehaul::app {

CLI::App* add_new(CLI::App& program, NewOptions& options);

}  // namespace rimehaul::app
