#include "card/day_lines.h"

#include <algorithm>

#include "card/figures.h"
#include "card/words.h"

namespace rimehaul::card {

namespace {

class Lines {
 public:
  Lines(const passage::Scene& scene, const snow::DayWeather& weather)
      : rules_{scene.rules}, status_{weather.site} {}

  void add_mark(const trails::Mark& mark, units::Instant depart) {
    const std::optional<bool> clear = status_.is_clear(mark.name, depart);
    if (!clear && !trails::needs_daily_status(mark.kind)) {
      return;
    }
    std::string until;
    for (const snow::MarkStatus& said : status_.marks) {
      if (clear && said.mark == mark.name && said.until) {
        until = local(*said.until);
      }
    }
    lines_.push_back(words::mark_today(mark, clear, until));
  }

  void add_grooming(const std::vector<trails::Trail>& trails, units::Instant depart) {
    if (!rules_.grooming_set) {
      return;
    }
    int ready = 0;
    std::string others;
    for (const trails::Trail& trail : trails) {
      const std::optional<units::Instant> groomed = status_.groomed(trail.name);
      if (!trail.groomed.value_or(false)) {
        continue;
      }
      if (groomed && depart.since(*groomed) >= *rules_.grooming_set) {
        ++ready;
      } else {
        others += (others.empty() ? "" : ", ") + trail.name;
      }
    }
    lines_.push_back(words::grooming_today(ready, others, *rules_.grooming_set));
  }

  void add_people() {
    if (rules_.closed_in_rain) {
      lines_.push_back(words::closed_in_rain());
    }
    lines_.push_back(words::passengers_rule(rules_.passengers));
    lines_.push_back(words::alone_rule(rules_.alone));
    lines_.push_back(rules_.tow_out.rig.empty()
                         ? words::no_tow_out_rig()
                         : words::tow_out_rig(rules_.tow_out.rig, status_.tow_out_ready));
    lines_.push_back(words::call_control(rules_.control));
    lines_.push_back(words::overdue_rule(rules_.overdue));
  }

  [[nodiscard]] std::vector<std::string> take() { return std::move(lines_); }

 private:
  [[nodiscard]] std::string local(units::Instant moment) const {
    return local_text(moment, rules_.utc_offset_minutes);
  }

  const passage::Rules& rules_;
  const snow::SiteStatus& status_;
  std::vector<std::string> lines_;
};

}  // namespace

std::vector<std::string> day_lines(const passage::Scene& scene, const snow::DayWeather& weather,
                                   units::Instant depart) {
  Lines lines{scene, weather};
  for (const trails::Mark& mark : scene.network.marks) {
    lines.add_mark(mark, depart);
  }
  lines.add_grooming(scene.network.trails, depart);
  lines.add_people();
  return lines.take();
}

}  // namespace rimehaul::card
