// Windows of departure from all junctions of a network at once, against asking one departure after
// the other.
//
//   cmake -S . -B build -G Ninja -DRIMEHAUL_BENCH=ON && ninja -C build bench_hours
//   build/tests/bench/bench_hours
//
// A lattice of trails, driven both ways; in the second network some legs open again after they have
// closed. Ours carries sets of hours back from one goal until nothing is added, and has then the
// hours of every start. Against it: for one start, whether a departure arrives, searched forwards
// over legs, asked by bisection for the last one where legs only close, and every
// half hour where they open again. Times are of the processor, medians; the sets are to say what
// each asked departure says, else the benchmark ends with 1.
#include <algorithm>
#include <cstdio>
#include <ctime>
#include <set>

#include "search/departures.h"
#include "search/fake_judge.h"

using namespace rimehaul::search;
using namespace rimehaul::testing;
using rimehaul::trails::JunctionId;
using rimehaul::trails::Network;
using rimehaul::units::Instant;
using rimehaul::units::Period;
using rimehaul::units::TimeSpans;

namespace {

constexpr std::uint32_t kSide = 16;
constexpr std::int64_t kMinutes = 12 * 60;
constexpr Period kDay{{0}, {kMinutes * 60 - 1}};
constexpr int kRounds = 5;

enum class Reopening { no, yes };

std::vector<Edge> lattice() {
  std::vector<Edge> edges;
  for (std::uint32_t row = 0; row < kSide; ++row) {
    for (std::uint32_t column = 0; column < kSide; ++column) {
      const std::uint32_t here = row * kSide + column;
      if (column + 1 < kSide) {
        edges.push_back({here, here + 1});
      }
      if (row + 1 < kSide) {
        edges.push_back({here, here + kSide});
      }
    }
  }
  return edges;
}

void roll(FakeJudge& judge, Reopening reopening) {
  Dice dice{7};
  for (FakeLeg& leg : judge.legs) {
    leg.time_s = 60.0 * (1 + dice.below(3));
    const std::int64_t closes = 60 * (120 + dice.below(300));
    const std::int64_t opens = reopening == Reopening::yes ? closes + 60 * (60 + dice.below(180))
                                                           : kDay.to.seconds + 86'400;
    leg.spells = {{.when = {{closes}, {opens}}, .time_s = leg.time_s}};
  }
}

double processor_s() {
  return static_cast<double>(std::clock()) / CLOCKS_PER_SEC;
}

template <class Work>
double median_s(const Work& work) {
  std::vector<double> took;
  for (int round = 0; round < kRounds; ++round) {
    const double start = processor_s();
    work();
    took.push_back(processor_s() - start);
  }
  std::ranges::sort(took);
  return took[kRounds / 2];
}

/// One network, its hours judged beforehand: judging is the same for both sides.
class Measured {
 public:
  explicit Measured(Reopening reopening)
      : network_{network_of(kSide * kSide, lattice())},
        judge_{network_},
        turns_{turns_of(network_)},
        legs_{make_leg_graph(network_, between(), turns_)},
        to_stations_(network_.legs.size(), false) {
    roll(judge_, reopening);
  }

  [[nodiscard]] int report(const char* name, Reopening reopening) {
    LegHours hours{judge_, kDay};
    StepHours steps{{legs_, turns_, to_stations_}, hours, Permission::nobody};
    Departures known{steps, TimeSpans{{kDay}}};  // judges everything
    const double all_s = median_s([&] { known = Departures{steps, TimeSpans{{kDay}}}; });
    const Node start = legs_.starts.front();
    const double one_s = median_s([&] { (void)asked(known, start, reopening); });
    const bool agree = asked(known, start, reopening);
    std::printf("%s: %zu starts at once %.2f ms; one start, asked %s, %.2f ms; ratio %.4f; %s\n",
                name, legs_.starts.size(), 1e3 * all_s,
                reopening == Reopening::yes ? "each half hour" : "by bisection", 1e3 * one_s,
                all_s / one_s, agree ? "the same hours" : "OTHER HOURS");
    return agree ? 0 : 1;
  }

 private:
  static Between between() {
    Between ends{.from = {}, .to = {JunctionId{kSide * kSide - 1}}};
    for (std::uint32_t i = 0; i + 1 < kSide * kSide; ++i) {
      ends.from.push_back(JunctionId{i});
    }
    return ends;
  }

  /// Whether some way without a wait arrives, by a search of its own: forwards, the earliest first.
  /// Where legs only close, who comes earlier is never worse off, so each leg counts once; else
  /// once for each second.
  [[nodiscard]] bool arrives(const Departures& known, Node start, Instant depart,
                             Reopening reopening) const {
    using State = std::pair<Instant, Node>;
    std::set<State> open{{depart, start}};
    std::set<State> seen;
    while (!open.empty()) {
      const auto [now, node] = *open.begin();
      open.erase(open.begin());
      for (const ArcIndex arc : known.arcs_out_of(node)) {
        if (!legs_.steps[arc].leg.has_value()) {
          return true;
        }
        const Node next = legs_.graph.arcs()[arc].to;
        for (const StepPiece& piece : known.steps().of(arc)) {
          const Instant then{now.seconds + piece.lasts_s};
          const Instant counts_at = reopening == Reopening::yes ? then : Instant{};
          if (piece.entries.from <= now && now <= piece.entries.to && then <= kDay.to &&
              seen.emplace(counts_at, next).second) {
            open.emplace(then, next);
          }
        }
      }
    }
    return false;
  }

  [[nodiscard]] bool asked(const Departures& known, Node start, Reopening reopening) const {
    const TimeSpans hours = known.from(start);
    if (reopening == Reopening::yes) {
      bool agree = true;
      for (std::int64_t minute = 0; minute < kMinutes; minute += 30) {
        const Instant depart{60 * minute};
        agree = agree && arrives(known, start, depart, reopening) == hours.contains(depart);
      }
      return agree;
    }
    Instant open = kDay.from;
    Instant closed{kDay.to.seconds + 1};
    while (open.seconds + 1 < closed.seconds) {
      const Instant middle{(open.seconds + closed.seconds) / 2};
      (arrives(known, start, middle, reopening) ? open : closed) = middle;
    }
    return hours.periods().size() == 1 && hours.periods().front().to == open;
  }

  Network network_;
  FakeJudge judge_;
  std::vector<Turn> turns_;
  LegGraph legs_;
  std::vector<bool> to_stations_;
};

}  // namespace

int main() {
  Measured closing{Reopening::no};
  Measured reopening{Reopening::yes};
  return closing.report("legs that close", Reopening::no) +
         reopening.report("legs that close and open", Reopening::yes);
}
