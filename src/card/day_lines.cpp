#include "card/day_lines.h"

#include <algorithm>

#include "card/figures.h"
#include "card/words.h"

namespace rimehaul::card {

namespace {

bool is_crossing(trails::MarkKind kind) {
  return kind == trails::MarkKind::road_crossing || kind == trails::MarkKind::piste_crossing;
}

class Lines {
 public:
  Lines(const passage::Scene& scene, const snow::DayWeather& weather, const HourOfDay& hour)
      : rules_{scene.rules}, status_{weather.site}, depart_{hour.depart} {
    if (hour.report_ran_out) {
      ran_out_ = local(*hour.report_ran_out);
      lines_.push_back(words::report_ran_out(ran_out_));
    }
  }

  void add_mark(const trails::Mark& mark) {
    const std::optional<bool> clear = status_.is_clear(mark.name, depart_);
    if (!clear && !trails::needs_daily_status(mark.kind)) {
      return;
    }
    std::string until;
    for (const snow::MarkStatus& said : status_.marks) {
      if (said.mark == mark.name && said.until) {
        until = local(*said.until);
      }
    }
    if (clear) {
      lines_.push_back(words::mark_today(mark, *clear, until));
    } else {
      lines_.push_back(words::mark_untold_today(mark, ran_out_.empty() ? until : ran_out_));
    }
  }

  void add_crossings(const std::vector<trails::Mark>& marks) {
    std::string crossings;
    for (const trails::Mark& mark : marks) {
      if (is_crossing(mark.kind)) {
        crossings += (crossings.empty() ? "" : ", ") + words::named_on_trail(mark);
      }
    }
    if (!crossings.empty()) {
      lines_.push_back(words::look_at_crossings(crossings));
    }
  }

  void add_grooming(const std::vector<trails::Trail>& trails) {
    if (!rules_.grooming_set || !ran_out_.empty()) {
      return;
    }
    int ready = 0;
    std::string others;
    for (const trails::Trail& trail : trails) {
      const std::optional<units::Instant> groomed = status_.groomed(trail.name);
      if (!trail.groomed.value_or(false)) {
        continue;
      }
      if (groomed && depart_.since(*groomed) >= *rules_.grooming_set) {
        ++ready;
      } else {
        others += (others.empty() ? "" : ", ") + trail.name;
      }
    }
    lines_.push_back(words::grooming_today(ready, others, *rules_.grooming_set));
  }

  void add_rules() {
    lines_.push_back(words::wind_rule(rules_.most_wind));
    if (rules_.closed_in_rain) {
      lines_.push_back(words::closed_in_rain());
    }
    if (rules_.longest_single_lane) {
      lines_.push_back(words::single_lane_rule(*rules_.longest_single_lane));
    }
    lines_.push_back(words::setback_rule({rules_.setback, rules_.cornice_setback}));
  }

  void add_people() {
    lines_.push_back(words::passengers_rule(rules_.passengers));
    lines_.push_back(words::alone_rule(rules_.alone));
    add_tow_out_rig();
    lines_.push_back(words::call_control(rules_.control));
    lines_.push_back(words::overdue_rule(rules_.overdue));
  }

  void add_tow_out_rig() {
    const std::string& rig = rules_.tow_out.rig;
    if (rig.empty()) {
      lines_.push_back(words::no_tow_out_rig());
    } else if (!ran_out_.empty() && !status_.tow_out_ready) {
      lines_.push_back(words::tow_out_untold(rig, ran_out_));
    } else {
      lines_.push_back(words::tow_out_rig(rig, status_.tow_out_ready));
    }
  }

  [[nodiscard]] std::vector<std::string> take() { return std::move(lines_); }

 private:
  [[nodiscard]] std::string local(units::Instant moment) const {
    return local_text(moment, rules_.local_clock);
  }

  const passage::Rules& rules_;
  const snow::SiteStatus& status_;
  units::Instant depart_;
  std::string ran_out_;  ///< when the report did; empty: it did not
  std::vector<std::string> lines_;
};

}  // namespace

std::vector<std::string> day_lines(const passage::Scene& scene, const snow::DayWeather& weather,
                                   const HourOfDay& hour) {
  Lines lines{scene, weather, hour};
  for (const trails::Mark& mark : scene.network.marks) {
    lines.add_mark(mark);
  }
  lines.add_crossings(scene.network.marks);
  lines.add_grooming(scene.network.trails);
  lines.add_rules();
  lines.add_people();
  return lines.take();
}

}  // namespace rimehaul::card
