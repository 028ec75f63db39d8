#include "app/print_card.h"

#include <utility>

#include "app/sheet_map.h"
#include "ports/cairo/card_drawing.h"
#include "ports/json/card_json.h"
#include "ports/openssl/digest.h"
#include "ports/qpdf/finish_pdf.h"
#include "ports/qrencode/qr.h"

namespace rimehaul::app {

std::string record_beside(const std::string& card) {
  return card + ".record.json";
}

std::vector<FileToWrite> printed_card(const std::string& path, CardToPrint printed) {
  const std::string record = ports::json::canonical_json(printed.card);
  const std::string digest = ports::openssl::digest_of(record).hex();
  const std::string number = card::number_of(printed.card, digest);
  card::CardSheet sheet{.card = printed.card,
                        .profile = std::move(printed.profile),
                        .map = {},
                        .number = number,
                        .digest = digest,
                        .qr = ports::qrencode::qr_of(card::symbol_text({number, digest}))};
  sheet.map = map_with_ground(card::ways_of(printed.card), printed.site,
                              ports::cairo::card_map_paper(sheet));
  return {{path, ports::qpdf::finish_pdf(ports::cairo::draw_card(sheet),
                                         {.title = "Route card: " + printed.card.title})},
          {record_beside(path), record}};
}

}  // namespace rimehaul::app
