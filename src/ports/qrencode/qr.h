// Text as a QR symbol (ISO/IEC 18004), so that a phone can check a card against its record.
#pragma once

#include <string>

#include "card/printed.h"

namespace rimehaul::ports::qrencode {

/// Text as bytes with error correction level M, which bears up to 15 % of smeared modules. Requires
/// text that fits into one symbol, at most 2331 bytes.
[[nodiscard]] card::QrSymbol qr_of(const std::string& text);

/// "libqrencode 4.1.1", for cards.
[[nodiscard]] std::string library_version();

}  // namespace rimehaul::ports::qrencode
