// A drawn PDF finished: what another program finds in it afterwards.
#include "ports/qpdf/finish_pdf.h"

#include <doctest/doctest.h>

#include <regex>

#include "ports/cairo/canvas.h"
#include "told.h"

namespace rimehaul {

namespace {

using ports::cairo::Canvas;
using ports::qpdf::finish_pdf;
using testing::told_of;

card::Printed two_figures() {
  Canvas canvas{ports::cairo::Form::pdf, {}, {"A sheet", "2026-02-01T16:00:00Z"}};
  for (const char* words : {"a map of the way", "grades <up> & down"}) {
    const auto figure = Canvas::Tag::figure(canvas, words);
    canvas.box({40, 80, 50, 50}, ports::cairo::kIce);
  }
  return canvas.finish();
}

}  // namespace

TEST_CASE("a finished sheet says its language and title, and what its figures show, in order") {
  const std::string bytes = finish_pdf(two_figures(), {.title = "Cable House & <hut>"});
  const std::string json = told_of(bytes, "qpdf --json=2 --json-key=qpdf", "2>&1");
  CHECK(json.find("\"/Lang\": \"u:en\"") != std::string::npos);
  const auto first = json.find("u:a map of the way");
  const auto second = json.find("u:grades <up> & down");
  CHECK(first != std::string::npos);
  CHECK(second != std::string::npos);
  CHECK(told_of(bytes, "qpdf --check", "2>&1").find("No syntax or stream encoding errors") !=
        std::string::npos);
  const std::string info = told_of(bytes, "pdfinfo", "2>&1");
  INFO(info);
  CHECK(std::regex_search(info, std::regex{"Tagged: +yes"}));
  CHECK(told_of(bytes, "pdfinfo -meta", "2>&1").find("Cable House &amp; &lt;hut&gt;") !=
        std::string::npos);
}

TEST_CASE("the same sheet finished twice is the same to the byte") {
  CHECK(finish_pdf(two_figures(), {.title = "A"}) == finish_pdf(two_figures(), {.title = "A"}));
}

TEST_CASE("figures without words, or words without a figure, are our own fault") {
  card::Printed printed = two_figures();
  printed.figure_words.pop_back();
  CHECK_THROWS((void)finish_pdf(printed, {.title = "A"}));
  printed = two_figures();
  printed.figure_words.emplace_back("one too many");
  CHECK_THROWS((void)finish_pdf(printed, {.title = "A"}));
}

}  // namespace rimehaul
