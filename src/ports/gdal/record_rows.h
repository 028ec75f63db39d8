// Kept things as rows and back.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "day/record_book.h"
#include "ports/gdal/sql.h"

namespace rimehaul::ports::gdal {

/// Everything kept, read over a connection. Each throws BadInput.
class RecordRows {
 public:
  explicit RecordRows(const Connection& connection) : connection_{connection} {}

  [[nodiscard]] std::vector<day::LogEntry> log() const;
  [[nodiscard]] day::LogHead head() const;
  [[nodiscard]] std::vector<day::FrozenInput> frozen_inputs() const;
  [[nodiscard]] std::string content_of(const day::FrozenInput& input) const;
  [[nodiscard]] std::vector<day::Kept<day::KeptReport>> reports() const;
  [[nodiscard]] std::vector<day::Kept<day::KeptMark>> marks() const;
  [[nodiscard]] std::vector<day::Kept<day::SignedBoard>> boards() const;
  [[nodiscard]] std::vector<day::Kept<day::Override>> overrides() const;
  [[nodiscard]] std::vector<day::Kept<day::OverrideEnd>> override_ends() const;
  [[nodiscard]] std::vector<day::Kept<day::IssuedCard>> cards() const;
  [[nodiscard]] std::vector<day::Kept<day::Recall>> recalls() const;
  [[nodiscard]] std::vector<day::Kept<day::FieldCheck>> field_checks() const;

  [[nodiscard]] std::int64_t next(day::Kind kind) const;

  void put(const day::LogEntry& entry) const;
  void put(const day::FrozenInput& input, std::string_view content) const;
  void put(const day::Kept<day::KeptReport>& report) const;
  void put(const day::Kept<day::KeptMark>& mark) const;
  void put(const day::Kept<day::SignedBoard>& board) const;
  void put(const day::Kept<day::Override>& given) const;
  void put(const day::Kept<day::OverrideEnd>& end) const;
  void put(const day::Kept<day::IssuedCard>& card) const;
  void put(const day::Kept<day::Recall>& recall) const;
  void put(const day::Kept<day::FieldCheck>& check) const;

 private:
  [[nodiscard]] std::vector<day::BoardInput> inputs_of(std::int64_t board) const;
  void put_done(Statement& statement, const day::Done& done, std::int64_t entry) const;
  /// Tells map programs that a table was changed.
  void touch(const char* table, units::Instant at) const;

  const Connection& connection_;
};

}  // namespace rimehaul::ports::gdal
