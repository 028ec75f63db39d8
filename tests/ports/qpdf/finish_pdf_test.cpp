// A drawn PDF finished: what another program finds in it afterwards.
#include "ports/qpdf/finish_pdf.h"

#include <doctest/doctest.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <regex>

#include "ports/cairo/canvas.h"

namespace rimehaul {

namespace {

namespace fs = std::filesystem;
using ports::cairo::Canvas;
using ports::qpdf::finish_pdf;

card::Printed two_figures() {
  Canvas canvas{ports::cairo::Form::pdf, {}, {"A sheet", "2026-02-01T16:00:00Z"}};
  for (const char* words : {"a map of the way", "grades <up> & down"}) {
    const auto figure = Canvas::Tag::figure(canvas, words);
    canvas.box({40, 80, 50, 50}, ports::cairo::kIce);
  }
  return canvas.finish();
}

std::string told(const std::string& bytes, const std::string& command) {
  const fs::path path = fs::temp_directory_path() / "rimehaul-finish-test.pdf";
  std::ofstream{path, std::ios::binary} << bytes;
  FILE* program = popen((command + " '" + path.string() + "' 2>&1").c_str(), "r");
  REQUIRE(program != nullptr);
  std::string text;
  std::array<char, 4096> part{};
  while (std::fgets(part.data(), part.size(), program) != nullptr) {
    text += part.data();
  }
  pclose(program);
  fs::remove(path);
  return text;
}

}  // namespace

TEST_CASE("a finished sheet says its language and title, and what its figures show, in order") {
  const std::string bytes = finish_pdf(two_figures(), {.title = "Cable House & <hut>"});
  const std::string json = told(bytes, "qpdf --json=2 --json-key=qpdf");
  CHECK(json.find("\"/Lang\": \"u:en\"") != std::string::npos);
  const auto first = json.find("u:a map of the way");
  const auto second = json.find("u:grades <up> & down");
  CHECK(first != std::string::npos);
  CHECK(second != std::string::npos);
  CHECK(told(bytes, "qpdf --check").find("No syntax or stream encoding errors") !=
        std::string::npos);
  const std::string info = told(bytes, "pdfinfo");
  INFO(info);
  CHECK(std::regex_search(info, std::regex{"Tagged: +yes"}));
  CHECK(told(bytes, "pdfinfo -meta").find("Cable House &amp; &lt;hut&gt;") != std::string::npos);
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
