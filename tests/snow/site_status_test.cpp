// What was said today of marks and grooming: the word that still holds, and of two the stricter.
#include "snow/site_status.h"

#include <doctest/doctest.h>

namespace rimehaul::snow {

namespace {

units::Instant at(const char* text) {
  return *units::parse_instant(text);
}

TEST_CASE("a mark of which nobody spoke has no status") {
  const SiteStatus status{.marks = {{"Winch", true, {}}}, .grooming = {}};
  CHECK(status.is_clear("Winch", at("2026-02-01T08:00:00Z")) == true);
  CHECK_FALSE(status.is_clear("Gate", at("2026-02-01T08:00:00Z")).has_value());
}

TEST_CASE("one word that a mark is not clear outweighs any other, until it has run out") {
  const auto noon = at("2026-02-01T12:00:00Z");
  for (const bool first : {true, false}) {
    const SiteStatus status{
        .marks = {{"Gate", first, first ? std::optional<units::Instant>{} : noon},
                  {"Gate", !first, first ? std::optional{noon} : std::nullopt}},
        .grooming = {}};
    CHECK(status.is_clear("Gate", noon) == false);
    CHECK(status.is_clear("Gate", at("2026-02-01T12:00:01Z")) == true);
  }
}

TEST_CASE("no status outlasts its report, and one that ends earlier keeps its end") {
  SiteStatus status{.marks = {{"Winch", true, {}}, {"Gate", true, at("2026-02-01T09:00:00Z")}},
                    .grooming = {}};
  status.end_by(at("2026-02-01T11:00:00Z"));
  CHECK(status.is_clear("Winch", at("2026-02-01T11:00:00Z")) == true);
  CHECK_FALSE(status.is_clear("Winch", at("2026-02-01T11:00:01Z")).has_value());
  CHECK(status.is_clear("Gate", at("2026-02-01T09:00:00Z")) == true);
  CHECK_FALSE(status.is_clear("Gate", at("2026-02-01T09:00:01Z")).has_value());
}

TEST_CASE("of several groomings the latest counts") {
  const SiteStatus status{.marks = {},
                          .grooming = {{"Lane", at("2026-02-01T04:00:00Z")},
                                       {"Lane", at("2026-02-01T05:00:00Z")},
                                       {"Lane", at("2026-01-31T22:00:00Z")}}};
  CHECK(status.groomed("Lane") == at("2026-02-01T05:00:00Z"));
  CHECK_FALSE(status.groomed("Road").has_value());
}

}  // namespace

}  // namespace rimehaul::snow
