#include "ports/cairo/verdict_legend.h"

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "ports/cairo/board_band.h"

namespace rimehaul::ports::cairo {

using passage::Verdict;

void write_verdict_legend(Canvas& canvas, Flow& flow) {
  const std::vector<std::pair<std::optional<Verdict>, std::string>> entries{
      {Verdict::open, "open"},
      {Verdict::restricted, "restricted: by the note's load or a decision"},
      {Verdict::closed, "closed"},
      {std::nullopt, "closed: something is not known"}};
  constexpr double kStep_pt = 28.0;
  const Box room = flow.keep(11.0);
  const Canvas::Tag tag{canvas, "P"};
  double x = room.left_pt;
  for (const auto& [verdict, words] : entries) {
    draw_row_line(canvas, {x, room.top_pt + 5}, verdict);
    x += kStep_pt;
    const double width = canvas.width_of(words, kRunning) + 1;
    canvas.write({x, room.top_pt}, {words, kRunning, width});
    x += width + 12;
  }
  canvas.write({x, room.top_pt},
               {"62: largest share of a limit in %; behind it the number of its note", kRunning,
                room.right_pt() - x});
}

}  // namespace rimehaul::ports::cairo
