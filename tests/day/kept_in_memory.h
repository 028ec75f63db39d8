// Records that a test fills by hand.
#pragma once

#include "day/record_book.h"

namespace rimehaul::testing {

struct KeptInMemory : day::Records {
  std::vector<day::Kept<day::Override>> given;
  std::vector<day::Kept<day::OverrideEnd>> ended;

  [[nodiscard]] std::vector<day::LogEntry> log() const override { return {}; }
  [[nodiscard]] day::LogHead head() const override { return {}; }
  [[nodiscard]] std::vector<day::FrozenInput> frozen_inputs() const override { return {}; }
  [[nodiscard]] std::string content_of(const day::FrozenInput&) const override { return {}; }
  [[nodiscard]] std::vector<day::Kept<day::KeptReport>> reports() const override { return {}; }
  [[nodiscard]] std::vector<day::Kept<day::KeptMark>> marks() const override { return {}; }
  [[nodiscard]] std::vector<day::Kept<day::SignedBoard>> boards() const override { return {}; }
  [[nodiscard]] std::vector<day::Kept<day::Override>> overrides() const override { return given; }
  [[nodiscard]] std::vector<day::Kept<day::OverrideEnd>> override_ends() const override {
    return ended;
  }
  [[nodiscard]] std::vector<day::Kept<day::IssuedCard>> cards() const override { return {}; }
  [[nodiscard]] std::vector<day::Kept<day::Recall>> recalls() const override { return {}; }
  [[nodiscard]] std::vector<day::Kept<day::FieldCheck>> field_checks() const override { return {}; }
  [[nodiscard]] std::vector<std::string> broken_guards() const override { return {}; }
};

}  // namespace rimehaul::testing
