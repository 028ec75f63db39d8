#include "ports/gdal/records_file.h"

#include <gdal.h>
#include <ogr_api.h>

#include <optional>
#include <utility>

#include "ports/gdal/map_transform.h"
#include "ports/gdal/record_rows.h"
#include "ports/gdal/records_maker.h"
#include "ports/gdal/records_schema.h"

namespace rimehaul::ports::gdal {

namespace {

/// What reading is, over a connection, for both below.
template <class Base>
class ReadRows : public Base {
 public:
  template <class... Arguments>
  explicit ReadRows(const Connection& connection, Arguments&&... arguments)
      : Base{std::forward<Arguments>(arguments)...}, connection_{connection}, rows_{connection} {}

  [[nodiscard]] std::vector<day::LogEntry> log() const override { return rows_.log(); }
  [[nodiscard]] day::LogHead head() const override { return rows_.head(); }
  [[nodiscard]] std::vector<day::FrozenInput> frozen_inputs() const override {
    return rows_.frozen_inputs();
  }
  [[nodiscard]] std::string content_of(const day::FrozenInput& input) const override {
    return rows_.content_of(input);
  }
  [[nodiscard]] std::vector<day::Kept<day::KeptReport>> reports() const override {
    return rows_.reports();
  }
  [[nodiscard]] std::vector<day::Kept<day::KeptMark>> marks() const override {
    return rows_.marks();
  }
  [[nodiscard]] std::vector<day::Kept<day::SignedBoard>> boards() const override {
    return rows_.boards();
  }
  [[nodiscard]] std::vector<day::Kept<day::Override>> overrides() const override {
    return rows_.overrides();
  }
  [[nodiscard]] std::vector<day::Kept<day::OverrideEnd>> override_ends() const override {
    return rows_.override_ends();
  }
  [[nodiscard]] std::vector<day::Kept<day::IssuedCard>> cards() const override {
    return rows_.cards();
  }
  [[nodiscard]] std::vector<day::Kept<day::Recall>> recalls() const override {
    return rows_.recalls();
  }
  [[nodiscard]] std::vector<day::Kept<day::FieldCheck>> field_checks() const override {
    return rows_.field_checks();
  }
  [[nodiscard]] std::vector<std::string> broken_guards() const override {
    return guards_broken(connection_);
  }

 protected:
  [[nodiscard]] const RecordRows& rows() const { return rows_; }

 private:
  const Connection& connection_;
  RecordRows rows_;
};

/// The file, or what it would be in the newest version.
class OpenToRead {
 public:
  explicit OpenToRead(const RecordsPlace& place) : database_{place, Opened::to_read} {
    // From here on all that is read stood there at one moment.
    run_sql(database_.connection(), "BEGIN");
    const std::size_t version = version_of(database_.connection());
    if (version < schema_steps().size()) {
      newest_.emplace(database_.connection());
      migrate(newest_->connection(), {.from = version, .to = schema_steps().size()});
    }
    expect_tables(connection());
  }

  [[nodiscard]] const Connection& connection() const {
    return newest_ ? newest_->connection() : database_.connection();
  }

 private:
  RecordsDatabase database_;
  std::optional<MemoryCopy> newest_;
};

class ReadFile : private OpenToRead, public ReadRows<day::Records> {
 public:
  explicit ReadFile(const RecordsPlace& place)
      : OpenToRead{place}, ReadRows<day::Records>{OpenToRead::connection()} {}
};

void expect_same_frame(const RecordsDatabase& database, const std::string& frame) {
  OGRLayerH layer = GDALDatasetGetLayerByName(database.dataset(), kFieldChecks);
  const Reference there =
      layer == nullptr ? Reference{} : horizontal_part(OGR_L_GetSpatialRef(layer));
  const Reference wanted = reference_from(frame);
  if (there && wanted && are_same({there, wanted})) {
    return;
  }
  throw bad_file(database.connection().shown,
                 {"its field checks are in the map frame " + (there ? name_of(there) : "unknown") +
                      ", and the site's is " + (wanted ? name_of(wanted) : "unknown"),
                  "keep these records under another name; the next begin anew"});
}

class OpenToWrite {
 public:
  OpenToWrite(const RecordsPlace& place, const std::string& frame)
      : database_{place, Opened::to_write} {
    const std::size_t version = version_of(database_.connection());
    if (version < schema_steps().size()) {
      migrate(database_.connection(), {.from = version, .to = schema_steps().size()});
    }
    expect_same_frame(database_, frame);
    run_sql(database_.connection(), "BEGIN IMMEDIATE");
    expect_tables(database_.connection());
    const auto broken = guards_broken(database_.connection());
    if (!broken.empty()) {
      throw bad_file(database_.connection().shown,
                     {broken.front(),
                      "see what rimehaul log --verify says of it, and put the last "
                      "backup in its place"});
    }
  }
  ~OpenToWrite() { undo(database_.connection()); }
  OpenToWrite(const OpenToWrite&) = delete;
  OpenToWrite& operator=(const OpenToWrite&) = delete;

  [[nodiscard]] const Connection& connection() const { return database_.connection(); }

 private:
  RecordsDatabase database_;
};

class WriteFile : private OpenToWrite, public ReadRows<day::Writing> {
 public:
  WriteFile(const RecordsPlace& place, const RecordsWriter& writer)
      : OpenToWrite{place, writer.frame},
        ReadRows<day::Writing>{OpenToWrite::connection(), writer.account, writer.digest_of} {}

  [[nodiscard]] std::int64_t next(day::Kind kind) const override { return rows().next(kind); }

 protected:
  void put(const day::LogEntry& entry) override { rows().put(entry); }
  void put(const day::FrozenInput& input, std::string_view content) override {
    rows().put(input, content);
  }
  void put(const day::Kept<day::KeptReport>& report) override { rows().put(report); }
  void put(const day::Kept<day::KeptMark>& mark) override { rows().put(mark); }
  void put(const day::Kept<day::SignedBoard>& board) override { rows().put(board); }
  void put(const day::Kept<day::Override>& given) override { rows().put(given); }
  void put(const day::Kept<day::OverrideEnd>& end) override { rows().put(end); }
  void put(const day::Kept<day::IssuedCard>& card) override { rows().put(card); }
  void put(const day::Kept<day::Recall>& recall) override { rows().put(recall); }
  void put(const day::Kept<day::FieldCheck>& check) override { rows().put(check); }
  void make_last() override { run_sql(OpenToWrite::connection(), "COMMIT"); }
};

}  // namespace

std::unique_ptr<day::Records> read_records(const RecordsPlace& place) {
  if (!is_there(place)) {
    return nullptr;
  }
  return std::make_unique<ReadFile>(place);
}

void expect_frame(const RecordsPlace& place, const std::string& frame) {
  if (is_there(place)) {
    expect_same_frame(RecordsDatabase{place, Opened::to_read}, frame);
  }
}

std::unique_ptr<day::Writing> write_records(const RecordsPlace& place,
                                            const RecordsWriter& writer) {
  if (!is_there(place)) {
    make_records(place, {.frame = writer.frame, .version = schema_steps().size()});
  }
  return std::make_unique<WriteFile>(place, writer);
}

}  // namespace rimehaul::ports::gdal
