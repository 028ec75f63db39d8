// What was made of one's own files, in words.
#include "card/layout.h"
#include "card/new_site.h"

namespace rimehaul::card {

std::string text_of(const NewSite& made, int columns) {
  Sheet sheet{columns};
  sheet.both_ends({"NEW SITE", made.check.site});
  sheet.rule('=');
  sheet.paragraph("Made: " + made.folder);
  sheet.list("-", made.files);
  sheet.heading("Found in your files");
  sheet.list("-", made.found);
  sheet.heading("Still to be said");
  std::vector<std::string> lines;
  lines.reserve(made.to_say.size());
  for (const ToSay& say : made.to_say) {
    lines.push_back(say.file + ": " + (say.key.empty() ? "" : say.key + ": ") + say.what);
  }
  sheet.list("-", lines);
  sheet.blank();
  return sheet.text() + text_of(made.check, columns);
}

}  // namespace rimehaul::card
