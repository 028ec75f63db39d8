// Text set one piece below the other, so that a sheet grows with what it has to say.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "ports/cairo/canvas.h"

namespace rimehaul::ports::cairo {

/// Where a column stands. Without a lower end it grows; with one it goes on at the top of the next
/// page, `corner.y_pt` down.
struct ColumnPlace {
  Spot corner;
  double width_pt = 0.0;
  std::optional<double> bottom_pt{};
};

class Column {
 public:
  Column(Canvas& canvas, ColumnPlace place)
      : canvas_{&canvas}, place_{place}, at_pt_{place.corner.y_pt} {}

  /// Where the next piece begins.
  [[nodiscard]] double at_pt() const { return at_pt_; }
  [[nodiscard]] double left_pt() const { return place_.corner.x_pt; }
  [[nodiscard]] double width_pt() const { return place_.width_pt; }
  /// Leaves room, or the rest of the page where there is too little.
  void keep_together(double height_pt) { make_room(height_pt); }
  void gap(double height_pt) { at_pt_ += height_pt; }

  void title(std::string_view text);    ///< structure H1
  void heading(std::string_view text);  ///< structure H2
  void paragraph(std::string_view text, const Lettering& lettering = {.size_pt = kSmallest_pt});
  /// A label in bold, `label_width_pt` wide, and text beside it, both folded.
  struct Labelled {
    std::string_view label;
    std::string_view text;
  };
  void labelled(const Labelled& line, double label_width_pt);
  /// Cells side by side, each folded in its own width; structure TR and TD.
  struct Cell {
    double width_pt = 0.0;
    std::string text;
    Lettering lettering{.size_pt = kSmallest_pt};
  };
  void row(const std::vector<Cell>& cells);
  void rule();

 private:
  [[nodiscard]] Paragraph in_width(std::string_view text, const Lettering& lettering) const;
  void make_room(double height_pt);

  Canvas* canvas_;
  ColumnPlace place_;
  double at_pt_;
};

}  // namespace rimehaul::ports::cairo
