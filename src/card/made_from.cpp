#include "card/made_from.h"

#include "card/figures.h"

namespace rimehaul::card {

std::string name_and_date(const InputFile& input, const units::LocalClock& local_clock) {
  return input.name + (input.date.empty() ? "" : ", ") +
         told_text({input.date, input.observed}, local_clock);
}

std::string made_from_in_short(const MadeFrom& made_from, const units::LocalClock& local_clock) {
  constexpr std::size_t kDigits = 12;
  std::string text = made_from.versions.empty() ? "" : made_from.versions.front();
  for (const InputFile& input : made_from.inputs) {
    text += (text.empty() ? "" : "; ") + input.what + " " + name_and_date(input, local_clock) +
            ", " + input.digest.hex().substr(0, kDigits);
  }
  return text;
}

}  // namespace rimehaul::card
