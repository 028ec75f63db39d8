#include "app/ending_signals.h"

#include <unistd.h>

#include <array>
#include <cerrno>
#include <utility>

namespace rimehaul::app {

namespace {

constexpr std::array kEnding{SIGINT, SIGTERM, SIGHUP, SIGQUIT};

/// Changed only while the ending signals are held, so that the handler finds it whole.
SweptPath* newest = nullptr;

sigset_t ending_set() {
  sigset_t set;
  sigemptyset(&set);
  for (const int signal : kEnding) {
    sigaddset(&set, signal);
  }
  return set;
}

}  // namespace

/// Calls nothing that a signal handler may not call (POSIX.1-2017, XSH 2.4.3).
void sweep_now() {
  for (const SweptPath* swept = newest; swept != nullptr; swept = swept->older_) {
    if (::unlink(swept->path_.c_str()) != 0) {
      ::rmdir(swept->path_.c_str());
    }
  }
}

namespace {

extern "C" void sweep_and_end(int number) {
  const int kept = errno;
  sweep_now();
  ::signal(number, SIG_DFL);
  ::raise(number);  // held while this runs; ends the program as it returns
  errno = kept;
}

}  // namespace

void sweep_on_ending_signals() {
  struct sigaction action {};
  action.sa_handler = sweep_and_end;
  action.sa_mask = ending_set();
  for (const int signal : kEnding) {
    struct sigaction before {};
    ::sigaction(signal, nullptr, &before);
    if (before.sa_handler != SIG_IGN) {
      ::sigaction(signal, &action, nullptr);
    }
  }
  // A file that grows over its limit is told as any other that cannot be written.
  ::signal(SIGXFSZ, SIG_IGN);
}

SignalsHeld::SignalsHeld() : before_{} {
  const sigset_t ending = ending_set();
  ::pthread_sigmask(SIG_BLOCK, &ending, &before_);
}

SignalsHeld::~SignalsHeld() {
  ::pthread_sigmask(SIG_SETMASK, &before_, nullptr);
}

SweptPath::SweptPath(std::string path) : path_{std::move(path)}, older_{nullptr} {
  const SignalsHeld held;
  older_ = newest;
  newest = this;
}

SweptPath::~SweptPath() {
  const SignalsHeld held;
  SweptPath** link = &newest;
  while (*link != this) {
    link = &(*link)->older_;
  }
  *link = older_;
}

}  // namespace rimehaul::app
