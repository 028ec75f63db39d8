// What a rig sheet says, alike on the screen and on paper.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "card/rig_sheet.h"

namespace rimehaul::card {

/// Over which side or end: "rear, climbing"
[[nodiscard]] std::string_view tip_way_words(TipWay way);
/// "26.8 deg (50.6 %)", rounded down; "unknown".
[[nodiscard]] std::string tip_words(units::Slope tip);
/// "forward 0.95 m, left 0.00 m, up 0.50 m"
[[nodiscard]] std::string place_words(const rig::BodyPoint& place);
/// "780 kg", to the nearest kilogram, as on a scale.
[[nodiscard]] std::string scale_words(units::Kilograms mass);
/// One line for each rating of a mass: what is on it, what is rated, and whether that is allowed.
/// "OVERLOADED, not driven: bed load" or "CLOSED as loaded: towed mass"; empty where all loads keep
/// to what is allowed.
[[nodiscard]] std::string load_headline(const RigSheet& sheet);
[[nodiscard]] std::vector<std::string> load_lines(const RigSheet& sheet);
/// "climb: 28.0 deg ..., maker: ...; descent: ...; cross-slope: ..."
[[nodiscard]] std::string ratings_line(const SheetRatings& ratings);
/// Where the hitch is, what rests on it, and the moments of that; nothing without a trailer.
[[nodiscard]] std::vector<std::string> hitch_lines(const RigSheet& sheet);
/// What the columns of the tip angles mean.
[[nodiscard]] std::string tips_note(const RigSheet& sheet);
/// "6.2 kPa"
[[nodiscard]] std::string pressure_words(units::Kilopascals pressure);

}  // namespace rimehaul::card
