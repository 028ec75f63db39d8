#include "ports/qrencode/qr.h"

#include <qrencode.h>

#include <memory>

#include "base/require.h"

namespace rimehaul::ports::qrencode {

card::QrSymbol qr_of(const std::string& text) {
  const auto release = [](QRcode* code) { QRcode_free(code); };
  const std::unique_ptr<QRcode, decltype(release)> code{
      QRcode_encodeString8bit(text.c_str(), 0, QR_ECLEVEL_M), release};
  base::require(code != nullptr, "text does not fit into a QR symbol");
  card::QrSymbol symbol{code->width, {}};
  const auto modules =
      static_cast<std::size_t>(code->width) * static_cast<std::size_t>(code->width);
  symbol.dark.reserve(modules);
  for (std::size_t i = 0; i < modules; ++i) {
    symbol.dark.push_back((code->data[i] & 1U) != 0U);
  }
  return symbol;
}

std::string library_version() {
  return std::string{"libqrencode "} + QRcode_APIVersionString();
}

}  // namespace rimehaul::ports::qrencode
