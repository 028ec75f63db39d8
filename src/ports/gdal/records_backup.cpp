// Copies of the records, and what SQLite itself says of a file.
#include <sqlite3.h>

#include "ports/gdal/records_file.h"

namespace rimehaul::ports::gdal {

namespace {

struct CloseHandle {
  void operator()(sqlite3* handle) const { sqlite3_close(handle); }
};
struct FinishBackup {
  void operator()(sqlite3_backup* copy) const { sqlite3_backup_finish(copy); }
};

}  // namespace

void back_up(const RecordsPlace& place, const Backup& into) {
  const RecordsDatabase from{place, Opened::to_read};
  (void)version_of(from.connection());
  sqlite3* opened = nullptr;
  int code = sqlite3_open_v2(into.path.c_str(), &opened, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE,
                             nullptr);
  const std::unique_ptr<sqlite3, CloseHandle> to{opened};
  const Connection copy{to.get(), into.shown};
  if (code != SQLITE_OK) {
    throw sql_trouble(copy, code);
  }
  // Nobody looks at the copy before it is whole, so that nothing needs to be undone in it.
  run_sql(copy, "PRAGMA journal_mode = OFF");
  std::unique_ptr<sqlite3_backup, FinishBackup> going{
      sqlite3_backup_init(to.get(), "main", from.connection().handle, "main")};
  if (!going) {
    throw sql_trouble(copy, sqlite3_errcode(to.get()));
  }
  code = sqlite3_backup_step(going.get(), -1);
  // What stopped it may lie with either file; the copying itself says only what.
  going.reset();
  if (code != SQLITE_DONE) {
    throw sql_trouble(
        {nullptr, code == SQLITE_BUSY || code == SQLITE_LOCKED || (code & 0xff) == SQLITE_CORRUPT
                      ? place.shown()
                      : into.shown},
        code);
  }
}

std::vector<std::string> damage_in(const RecordsPlace& place) {
  const RecordsDatabase database{place, Opened::to_read};
  std::vector<std::string> damage;
  Statement check{database.connection(), "PRAGMA integrity_check"};
  while (check.next()) {
    std::string line = check.text();
    if (line != "ok") {
      damage.push_back("the file is damaged: " + line);
    }
  }
  return damage;
}

}  // namespace rimehaul::ports::gdal
