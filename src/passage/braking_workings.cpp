// How hard the brake may be used for stopping, number by number.
#include <cmath>
#include <string>
#include <utility>

#include "passage/forces.h"
#include "passage/workings.h"

namespace rimehaul::passage {

namespace {

using units::amount;
using units::Amount;
using units::count_of;

constexpr std::string_view kStopping = "docs/checks/stopping.md";

Amount acceleration(double metres_per_second2) {
  return {metres_per_second2, units::Unit::metres_per_second2};
}

/// The rig slowed as hard as is planned, in the bend at walking pace.
class BrakeSheet {
 public:
  BrakeSheet(const Footing& footing, const Finding& finding, double allowed_share)
      : footing_{footing},
        finding_{finding},
        share_{allowed_share},
        most_{hardest_slowing(footing)},
        sideways_{number("v").value * number("v").value / number("R").value},
        bent_{statics_of(footing, {.slowing = 0.0, .sideways = sideways_})},
        harsh_{statics_of(footing, {.slowing = most_, .sideways = sideways_})} {}

  /// Whether brake and grip, as on a straight line, say all that there is to say of the slowing.
  [[nodiscard]] bool is_by_brake_alone() const {
    const Grip hold = statics_of(footing_).hold;
    return number("u").value == 1.0 && number("G").value == hold.given_by_snow.value() &&
           number("a").value ==
               (hold.given - hold.asked).value() / footing_.weighed.total().value();
  }

  void write_brake_alone() {
    worked("G", number("G"), "C_hold");
    worked("F", number("F"), "F_hold");
    worked("a", number("a"), "(min(u G, B) - F) / m");
  }

  void write() {
    given("s", count_of(share_), Origin::rules);
    write_loads();
    write_forces();
    write_part();
    worked("a_tip", acceleration(slowing_before_tip(bent_, harsh_, share_)), "");
    worked("a", number("a"), "min((min(u G, B) - F) / m, a_most, a_tip)");
  }

  [[nodiscard]] std::vector<Working> take() && { return std::move(numbers_); }

 private:
  [[nodiscard]] bool towing() const { return footing_.rig.trailer.has_value(); }

  void write_loads() {
    worked("a_most", acceleration(most_),
           towing() ? "g (mu_b m_c + f_t_low m_t) / m" : "g mu_b m_c / m");
    worked("b", count_of(sideways_ / units::kGravity), "v^2 / (g R)");
    worked("n_c_b", count_of(harsh_.carrier.normal_least),
           "n_c - b K_c_steep / sqrt(1 + K_c_steep^2)");
    if (!towing()) {
      return;
    }
    worked("n_t_b", count_of(harsh_.trailer.normal_least),
           "n_t - b K_t_steep / sqrt(1 + K_t_steep^2)");
    worked("n_t_most_b", count_of(harsh_.trailer.normal_most),
           "n_t_most + b K_t_steep / sqrt(1 + K_t_steep^2)");
    worked("V_b", amount(harsh_.hitch.down),
           "max(0, g m_h n_t_most_b + g m_t / L (max(along(-G_t_low) (h_t - h_h), "
           "-along(G_t_high) (h_t - h_h)) + max(0, a_most / g (h_t - h_h)) + "
           "f_t n_t_most_b h_h))");
    worked("U_b", amount(harsh_.hitch.uplift),
           "max(0, g m_t / L (max(along(G_t_high) (h_t - h_h), "
           "-along(-G_t_low) (h_t - h_h)) + max(0, -a_most / g (h_t - h_h))) - g m_h n_t_b)");
    worked("P_b", force(push_newton()),
           "max(0, g m_t (along(-G_t_low) - f_t_low n_t_b) + f_t_low V_b)");
  }

  [[nodiscard]] double push_newton() const {
    return harsh_.hitch.push.value() - footing_.weighed.trailer.mass.value() * most_;
  }

  void write_forces() {
    worked("G", number("G"), towing() ? "mu_b (phi g m_c n_c_b - U_b)" : "mu_b phi g m_c n_c_b");
    worked("F", number("F"),
           towing() ? "g m_c along(-G_c_low) + g m_t (along(-G_t_low) - f_t_low n_t_b) + "
                      "f_t_low V_b"
                    : "g m_c along(-G_c_low)");
    given("mu_l", amount(footing_.grip.lateral), Origin::grip);
    const Across across = across_carrier(harsh_);
    worked("S_b", amount(across.asked),
           towing() ? "g m_c (n_c K_c_steep / sqrt(1 + G_c_gentle^2) + b) + Y + g m_h b"
                    : "g m_c (n_c K_c_steep / sqrt(1 + G_c_gentle^2) + b)");
    worked("C_b", amount(across.given), towing() ? "mu_l (g m_c n_c_b - U_b)" : "mu_l g m_c n_c_b");
  }

  void write_part() {
    const Across across = across_carrier(harsh_);
    const double taken = across.asked / across.given;
    worked("u_slip", count_of(std::sqrt(above_zero(share_ * share_ - taken * taken))),
           "sqrt(max(0, s^2 - (S_b / C_b)^2))");
    if (!towing()) {
      worked("u", number("u"), "min(u_slip, 1)");
      return;
    }
    const TailGrip tail = tail_grip(harsh_);
    const double arms = tail.push_arm_m / (share_ * tail.hold_arm_m);
    const double part = footing_.weighed.trailer.mass / footing_.weighed.total();
    given("gamma", amount(footing_.rules.articulation), Origin::rules);
    given("l", amount(footing_.rig.carrier.contact_length), Origin::rig_sheet);
    given("x_h", amount(footing_.rig.carrier.hitch_at.forward), Origin::rig_sheet);
    worked("k", count_of(arms), "sin(gamma) (l / 2 - x_h) / (s l / 4)");
    worked("N", amount(tail.of_tracks), "mu_l (phi g m_c n_c_b - U_b)");
    worked("q", force(arms * part * number("G").value), "k G m_t / m");
    worked("p", force(arms * (push_newton() - part * number("F").value) + tail.across.value()),
           "k (P_b - F m_t / m) + S_b");
    worked("u", number("u"),
           "min(u_slip, 1, (-p q + N sqrt(max(0, q^2 + N^2 - p^2))) / (q^2 + N^2))");
  }

  [[nodiscard]] Amount number(std::string_view name) const { return number_of(finding_, name); }

  void given(std::string symbol, Amount value, Origin origin) {
    numbers_.push_back({std::move(symbol), value, origin, "", kStopping});
  }
  void worked(std::string symbol, Amount value, std::string formula) {
    numbers_.push_back({std::move(symbol), value, Origin::derived, std::move(formula), kStopping});
  }

  const Footing& footing_;
  const Finding& finding_;
  double share_;
  double most_;
  double sideways_;
  Statics bent_;
  Statics harsh_;
  std::vector<Working> numbers_;
};

}  // namespace

std::vector<Working> braking_workings(const Footing& footing, const Finding& finding,
                                      double allowed_share) {
  if (finding.check != Check::stopping || !(number_of(finding, "u").value >= 0.0)) {
    return {};  // the bend alone takes more than is allowed
  }
  BrakeSheet sheet{footing, finding, allowed_share};
  if (sheet.is_by_brake_alone()) {
    sheet.write_brake_alone();
  } else {
    sheet.write();
  }
  return std::move(sheet).take();
}

}  // namespace rimehaul::passage
