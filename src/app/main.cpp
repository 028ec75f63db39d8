// The program: reads the clock, runs one command.
#include <unistd.h>

#include <chrono>
#include <iostream>

#include "app/account.h"
#include "app/colour.h"
#include "app/ending_signals.h"
#include "app/run.h"

int main(int count, char** words) {
  namespace app = rimehaul::app;
  app::sweep_on_ending_signals();
  const auto since_1970 = std::chrono::system_clock::now().time_since_epoch();
  const auto seconds = std::chrono::duration_cast<std::chrono::seconds>(since_1970).count();
  const app::Outside outside{.out = std::cout,
                             .err = std::cerr,
                             .now = rimehaul::units::Instant{seconds},
                             .err_is_terminal = ::isatty(STDERR_FILENO) == 1,
                             .out_takes_colour = app::takes_colour(STDOUT_FILENO),
                             .account = app::own_account()};
  const app::Status status = app::run({words + 1, words + count}, outside);
  std::cout.flush();
  if (!std::cout) {
    std::cerr << "the answer could not be written to standard output; see where it leads, and "
                 "whether there is room\n";
    return static_cast<int>(app::Status::bad_input);
  }
  return static_cast<int>(status);
}
