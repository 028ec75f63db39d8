// The words of card/words.h that speak of what would open a leg or a way.
#include <algorithm>
#include <array>

#include "card/words.h"
#include "units/rounding.h"

namespace rimehaul::card::words {

namespace {

using snow::SnowState;

constexpr std::string_view kNoTrailer = "no trailer";

using Surfaces = std::array<bool, snow::kSurfaceCount>;

/// "dry", "dry or moist", "dry, moist or wet"
std::string either(const std::vector<std::string>& parts) {
  std::string all;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    all += i == 0 ? "" : (i + 1 == parts.size() ? " or " : ", ");
    all += parts[i];
  }
  return all;
}

Surfaces surfaces_of(const std::vector<SnowState>& states, snow::Wetness wetness) {
  Surfaces surfaces{};
  for (const SnowState& state : states) {
    if (state.wetness == wetness) {
      surfaces.at(static_cast<std::size_t>(state.surface)) = true;
    }
  }
  return surfaces;
}

std::string surfaces_text(const Surfaces& surfaces) {
  if (std::ranges::all_of(surfaces, [](bool there) { return there; })) {
    return " on any surface";
  }
  std::vector<std::string> named;
  for (std::size_t i = 0; i < surfaces.size(); ++i) {
    if (surfaces.at(i)) {
      named.emplace_back(snow::words_for(static_cast<snow::Surface>(i)));
    }
  }
  return ", " + either(named);
}

/// Wetnesses next to each other that open on the same surfaces are told together.
std::string snow_text(const std::vector<SnowState>& states) {
  std::string text;
  std::vector<std::string> alike;
  for (int i = 0; i < snow::kWetnessCount; ++i) {
    const auto wetness = static_cast<snow::Wetness>(i);
    const Surfaces here = surfaces_of(states, wetness);
    if (std::ranges::none_of(here, [](bool there) { return there; })) {
      continue;
    }
    alike.emplace_back(snow::words_for(wetness));
    const bool last = i + 1 == snow::kWetnessCount ||
                      surfaces_of(states, static_cast<snow::Wetness>(i + 1)) != here;
    if (last) {
      text += (text.empty() ? "" : "; ") + either(alike) + surfaces_text(here);
      alike.clear();
    }
  }
  return text;
}

}  // namespace

std::string opens_with_load(passage::LoadPlace place, const passage::LoadInterval& interval) {
  const auto kilograms = [](units::Kilograms mass, units::Round round) {
    return units::text_of(mass.value(), 0, round) + " kg";
  };
  const std::string which = place == passage::LoadPlace::bed ? "bed load" : "towed load";
  const std::string from = kilograms(interval.from, units::Round::up);
  const std::string to = kilograms(interval.to, units::Round::down);
  return from == to ? which + " of " + to + " alone" : which + " from " + from + " to " + to;
}

std::vector<std::string> opens_with_loads(const passage::OpenLoads& loads) {
  using passage::LoadPlace;
  std::vector<std::string> lines;
  for (const passage::LoadInterval& interval : loads.bed) {
    lines.push_back(opens_with_load(LoadPlace::bed, interval));
  }
  for (const passage::LoadInterval& interval : loads.towed) {
    lines.push_back(opens_with_load(LoadPlace::towed, interval));
  }
  for (const passage::LoadPair& pair : loads.both) {
    lines.push_back(opens_with_load(LoadPlace::bed, pair.bed) + " together with " +
                    opens_with_load(LoadPlace::towed, pair.towed));
  }
  return lines;
}

std::string opens_in_snow(const std::vector<SnowState>& states) {
  return "snow that is " + snow_text(states);
}

std::string opens_otherwise(passage::Check check) {
  using enum passage::Check;
  switch (check) {
    case hours:
      return "an entry within the hours of the trail";
    case driver_level:
      return "a driver whose level allows it";
    case grooming:
      return "a later entry, when the snow has set";
    case passengers:
      return "no passengers (--passengers 0)";
    case alone:
      return "a second rig or a second trained person along (--accompanied)";
    default:
      return "";
  }
}

std::string_view with_decision_besides() {
  return "; with a named person's decision besides (--permitted-by NAME)";
}

std::string opens_by_decision() {
  return "a named person's decision (--permitted-by NAME)";
}

std::string opens_by_decision(std::string_view decision) {
  return opens_by_decision() + ": " + std::string{decision};
}

std::vector<std::string> openings(const search::Openings& opens) {
  std::vector<std::string> lines = opens_with_loads(opens.loads);
  if (opens.without_trailer) {
    lines.emplace_back(kNoTrailer);
  }
  if (!opens.snow.empty()) {
    lines.push_back(opens_in_snow(opens.snow));
  }
  for (const passage::LoadInterval& interval : opens.bed_without_trailer) {
    lines.push_back(std::string{kNoTrailer} + ", and " +
                    opens_with_load(passage::LoadPlace::bed, interval));
  }
  if (!opens.snow_without_trailer.empty()) {
    lines.push_back(std::string{kNoTrailer} + ", and " + opens_in_snow(opens.snow_without_trailer));
  }
  if (opens.and_decision) {
    for (std::string& line : lines) {
      line += with_decision_besides();
    }
  }
  return lines;
}

std::string_view opens_once_told() {
  return "telling what is not known (see below), and then only if the rest is open";
}

std::string nothing_opens(Towing towing) {
  return towing == Towing::yes ? "nothing that was tried: other loads, no trailer, other snow"
                               : "nothing that was tried: other loads, other snow";
}

}  // namespace rimehaul::card::words
