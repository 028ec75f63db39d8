#include "app/versions.h"

#include <utility>

#include "ports/cairo/card_drawing.h"
#include "ports/gdal/library_version.h"
#include "ports/geos/library_version.h"
#include "ports/json/library_version.h"
#include "ports/openssl/library_version.h"
#include "ports/proj/library_version.h"
#include "ports/qpdf/finish_pdf.h"
#include "ports/qrencode/qr.h"
#include "ports/toml/library_version.h"
#include "search/library_version.h"

namespace rimehaul::app {

std::vector<std::string> versions() {
  return {std::string{"rimehaul "} + RIMEHAUL_VERSION,
          ports::gdal::library_version(),
          ports::proj::library_version(),
          ports::geos::library_version(),
          ports::toml::library_version(),
          ports::json::library_version(),
          ports::openssl::library_version(),
          search::library_version(),
          ports::cairo::library_version(),
          ports::qpdf::library_version(),
          ports::qrencode::library_version()};
}

card::MadeFrom made_from(std::vector<card::InputFile> inputs, const Outside& outside) {
  return {.inputs = std::move(inputs), .versions = versions(), .made = outside.now};
}

}  // namespace rimehaul::app
