#include "app/crew_on_cores.h"

#include <algorithm>
#include <atomic>
#include <future>
#include <thread>
#include <vector>

#include "app/ending_signals.h"

namespace rimehaul::app {

namespace {

/// What all hands share.
struct Shared {
  base::Work& work;
  std::size_t parts;
  std::atomic<std::size_t> next{0};
};

void lend_a_hand(Shared& shared) {
  try {
    for (std::size_t part = shared.next++; part < shared.parts; part = shared.next++) {
      shared.work.do_part(part);
    }
  } catch (...) {
    shared.next = shared.parts;
    throw;
  }
}

}  // namespace

std::size_t hands() {
  return std::max<std::size_t>(std::thread::hardware_concurrency(), 1);
}

void CrewOnCores::do_all(base::Work& work, std::size_t parts) {
  Shared shared{.work = work, .parts = parts};
  std::vector<std::future<void>> all;
  {
    // They leave ending signals to this thread, which alone marks what is to go away.
    const SignalsHeld held;
    for (std::size_t hand = 0; hand < std::min(hands(), parts); ++hand) {
      all.push_back(std::async(std::launch::async, [&shared] { lend_a_hand(shared); }));
    }
  }
  for (const std::future<void>& hand : all) {
    hand.wait();
  }
  for (std::future<void>& hand : all) {
    hand.get();
  }
}

}  // namespace rimehaul::app
