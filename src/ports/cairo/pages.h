// The pages of a sheet as they come, each with its foot.
#pragma once

#include <functional>
#include <string>

#include "ports/cairo/canvas.h"

namespace rimehaul::ports::cairo {

inline constexpr double kMargin_pt = 34.0;  // 12 mm

class Pages {
 public:
  /// Every page's foot says that it is a planning aid, then `about` and its number. `of`: how many
  /// pages there will be, 0 where that is not known yet.
  Pages(Canvas& canvas, std::string about, int of);

  /// The area of the page in hand.
  [[nodiscard]] Box area() const;
  /// Ends the page in hand with its foot, goes to the next and gives its area.
  Box next();
  /// Ends the last page; returns how many there are.
  [[nodiscard]] int close();

 private:
  void write_foot();

  Canvas& canvas_;
  std::string about_;
  int of_;
  int page_ = 1;
};

/// A sheet, and how many pages it came to.
struct DrawnPages {
  card::Printed printed;
  int count = 0;
};

/// Draws a sheet whose pages say how many there are: once to count them, once for good.
[[nodiscard]] card::Printed draw_counted(const std::function<DrawnPages(int of)>& draw);

}  // namespace rimehaul::ports::cairo
