// Paper: text that folds and is never cut, the same bytes twice, and what a reader finds in them.
#include "ports/cairo/canvas.h"

#include <doctest/doctest.h>

#include <limits>

#include "near.h"
#include "told.h"

namespace rimehaul {

namespace {

using ports::cairo::Canvas;
using ports::cairo::colour_of;
using ports::cairo::Form;
using ports::cairo::kClosed;
using ports::cairo::kIce;
using ports::cairo::kOpen;
using ports::cairo::kUnknown;
using ports::cairo::Lettering;
using ports::cairo::ShareScale;
using testing::near;
using testing::told_of;

card::Printed a_page() {
  Canvas canvas{Form::pdf, {}, {"A sheet", "2026-02-01T16:00:00Z"}};
  {
    const Canvas::Tag heading{canvas, "H1"};
    canvas.write({40, 40}, {"Überfahrt → Fell Lodge ✓", {.size_pt = 14}, 300});
  }
  {
    const auto figure = Canvas::Tag::figure(canvas, "a square");
    canvas.box({40, 80, 50, 50}, kIce, {.width_pt = 1});
  }
  {
    const Canvas::Tag paragraph{canvas, "P"};
    const auto link = Canvas::Tag::link(canvas, "square 1");
    canvas.write({40, 140}, {"to the square", {.size_pt = 9}, 300});
  }
  {
    const auto place = Canvas::Tag::place(canvas, "square 1");
    canvas.box({40, 80, 50, 50}, kIce, {.width_pt = 1});
  }
  return canvas.finish();
}

}  // namespace

TEST_CASE("the same drawing gives the same bytes") {
  CHECK(a_page().bytes == a_page().bytes);
}

TEST_CASE("another program reads the letters, umlauts and arrows too, and finds fonts embedded") {
  const std::string text = told_of(a_page().bytes, "pdftotext", "-");
  CHECK(text.find("Überfahrt → Fell Lodge ✓") != std::string::npos);
  const std::string fonts = told_of(a_page().bytes, "pdffonts");
  CHECK(fonts.find("B612") != std::string::npos);
  CHECK(fonts.find(" no  ") == std::string::npos);
}

TEST_CASE(
    "all structure stands under one document, in the order of reading, and nothing complains") {
  const std::string structure = told_of(a_page().bytes, "pdfinfo -struct", "2>&1");
  CAPTURE(structure);
  CHECK(structure.starts_with("Document"));
  CHECK(structure.find("H1") < structure.find("Figure"));
  CHECK(structure.find("Warning") == std::string::npos);
}

TEST_CASE("a paragraph folds at its width, a long word too, and reports its height") {
  Canvas canvas{Form::pdf, {}, {"A sheet", "2026-02-01T16:00:00Z"}};
  const Lettering small{.size_pt = 9};
  const std::string word(200, 'w');
  const double one = canvas.height_of({"w", small, 100});
  const double many = canvas.height_of({word, small, 100});
  CHECK(many > 5 * one);
  CHECK(canvas.width_of(word, small) > 1000);
  CHECK(near(canvas.write({0, 0}, {word, small, 100}), many, 1e-9));
}

TEST_CASE(
    "shares run from ice to teal, step to plum just over the allowed share, and none is grey") {
  const ShareScale scale{0.7};
  CHECK(colour_of(0.0, scale).red == kIce.red);
  CHECK(near(colour_of(0.7, scale).red, kOpen.red, 1e-12));
  CHECK(colour_of(0.7000001, scale).red == kClosed.red);
  CHECK(colour_of(std::numeric_limits<double>::quiet_NaN(), scale).red == kUnknown.red);
  CHECK(colour_of(-0.1, scale).red == kUnknown.red);
}

}  // namespace rimehaul
