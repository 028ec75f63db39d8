// Gives a drawn PDF what the drawing library leaves out: language, words for figures, that it has
// structure, a file id.
#pragma once

#include <string>

#include "card/printed.h"

namespace rimehaul::ports::qpdf {

/// What a reader of the file is told about it.
struct PdfFacts {
  std::string title;
  std::string language = "en";
};

/// The same pages with language, title in the window's bar, XMP title, and each figure's words, in
/// the order in which figures were drawn. The same input gives the same bytes. Requires a PDF with
/// as many figures as there are words.
[[nodiscard]] std::string finish_pdf(const card::Printed& printed, const PdfFacts& facts);

/// "qpdf 11.3.0", for cards.
[[nodiscard]] std::string library_version();

}  // namespace rimehaul::ports::qpdf
