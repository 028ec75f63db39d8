#include "card/day_table.h"

#include "card/board_words.h"
#include "card/figures.h"
#include "card/words.h"

namespace rimehaul::card {

std::string head_of(const DayColumn& column, const DayTable& table) {
  if (table.by == DayBy::hour) {
    return units::text_of(table.local_clock.time_of_day(column.depart));
  }
  return column.snow ? words::snow_state(*column.snow) : "as reported";
}

passage::Verdict verdict_in(const DayRow& row, std::size_t column) {
  return row.closed_by_hand.empty() ? row.cells.at(column).verdict : passage::Verdict::closed;
}

}  // namespace rimehaul::card
