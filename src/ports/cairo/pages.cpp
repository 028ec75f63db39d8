#include "ports/cairo/pages.h"

#include <utility>

#include "card/words.h"

namespace rimehaul::ports::cairo {

namespace {

constexpr double kTop_pt = 28.0;
constexpr double kFoot_pt = 40.0;

}  // namespace

Pages::Pages(Canvas& canvas, std::string about, int of)
    : canvas_{canvas}, about_{std::move(about)}, of_{of} {}

Box Pages::area() const {
  return {kMargin_pt, kTop_pt, canvas_.size().width_pt - 2 * kMargin_pt,
          canvas_.size().height_pt - kTop_pt - kFoot_pt};
}

Box Pages::next() {
  write_foot();  // last, as it is read
  canvas_.next_page();
  ++page_;
  return area();
}

int Pages::close() {
  write_foot();
  return page_;
}

void Pages::write_foot() {
  constexpr double kAid_pt = 230.0;
  const Box body = area();
  const double top = body.bottom_pt() + 5;
  canvas_.line({{body.left_pt, top}, {body.right_pt(), top}}, {.width_pt = 0.6});
  const Canvas::Tag tag{canvas_, "P"};
  canvas_.write({body.left_pt, top + 3},
                {card::words::planning_aid(), {.size_pt = 8, .weight = Weight::bold}, kAid_pt});
  const std::string page =
      about_ + "   page " + std::to_string(page_) + " of " + std::to_string(of_);
  canvas_.write({body.left_pt + kAid_pt, top + 3},
                {page, {.size_pt = 8, .align = Align::right}, body.width_pt - kAid_pt});
}

card::Printed draw_counted(const std::function<DrawnPages(int of)>& draw) {
  const int pages = draw(0).count;
  return draw(pages).printed;
}

}  // namespace rimehaul::ports::cairo
