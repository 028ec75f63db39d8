// Verdicts and shares of legs.
#include <doctest/doctest.h>

#include <string>

#include "passage/judgement.h"

namespace rimehaul::passage {

namespace {

Finding of_share(double share) {
  return compare(Check::stopping, units::count_of(share), units::count_of(1.0));
}

Finding asking() {
  Finding finding = kept(Check::avalanche);
  finding.asks = "somebody";
  return finding;
}

}  // namespace

TEST_CASE("a leg is open when all pass, restricted when some ask, closed otherwise") {
  CHECK(verdict_of({of_share(0.7), of_share(0.1)}, 0.7) == Verdict::open);
  CHECK(verdict_of({of_share(0.7), asking()}, 0.7) == Verdict::restricted);
  CHECK(verdict_of({asking(), of_share(0.71)}, 0.7) == Verdict::closed);
  CHECK(verdict_of({asking(), unknown(Check::zone, "x")}, 0.7) == Verdict::closed);
  CHECK(verdict_of({of_share(0.1), refusal(Check::zone, "x")}, 0.7) == Verdict::closed);
}

TEST_CASE("a leg of which nothing was found is closed") {
  CHECK(verdict_of({}, 1.0) == Verdict::closed);
  CHECK_FALSE(LegJudgement{}.share());
}

TEST_CASE("a leg's share is its largest, and there is none where one finding has none") {
  LegJudgement judgement;
  judgement.findings = {of_share(0.2), of_share(0.6), of_share(0.4)};
  CHECK(judgement.share() == 0.6);
  judgement.findings.push_back(unknown(Check::zone, "x"));
  CHECK_FALSE(judgement.share());
  judgement.findings.back() = refusal(Check::zone, "x");
  CHECK_FALSE(judgement.share());
  judgement.findings.back() = kept(Check::zone);
  judgement.findings.back().share = std::nan("");
  CHECK_FALSE(judgement.share());
}

TEST_CASE("verdicts have their words") {
  CHECK(words_for(Verdict::open) == std::string{"open"});
  CHECK(words_for(Verdict::restricted) == std::string{"restricted"});
  CHECK(words_for(Verdict::closed) == std::string{"closed"});
}

TEST_CASE("a share beside something missing or refused is no share of the leg") {
  LegJudgement judgement;
  judgement.findings = {of_share(0.2), of_share(0.6)};
  judgement.findings.back().missing = "a number";
  CHECK_FALSE(judgement.share());
  judgement.findings.back().missing.clear();
  judgement.findings.back().refused = "a sign";
  CHECK_FALSE(judgement.share());
  judgement.findings.back().refused.clear();
  CHECK(judgement.share() == 0.6);
}

TEST_CASE("a verdict that nobody knows reads as closed") {
  CHECK(words_for(static_cast<Verdict>(3)) == std::string{"closed"});
}

}  // namespace rimehaul::passage
