// What the ground checks share, number by number, in the order in which it is worked out.
#include "passage/workings.h"

#include <algorithm>
#include <utility>

#include "passage/forces.h"

namespace rimehaul::passage {

namespace {

using units::amount;
using units::Amount;
using units::count_of;

constexpr std::string_view kTilt = "docs/checks/tilt.md";
constexpr std::string_view kHitch = "docs/checks/hitch.md";
constexpr std::string_view kClimb = "docs/checks/climb.md";
constexpr std::string_view kDescent = "docs/checks/descent.md";
constexpr std::string_view kSideSlip = "docs/checks/side-slip.md";
constexpr std::string_view kJackknife = "docs/checks/jackknife.md";

/// Writes numbers down, one after the other.
class Sheet {
 public:
  void given(std::string symbol, Amount value, Origin origin, std::string_view page) {
    numbers_.push_back({std::move(symbol), value, origin, "", page});
  }
  void worked(std::string symbol, Amount value, std::string formula, std::string_view page) {
    numbers_.push_back({std::move(symbol), value, Origin::derived, std::move(formula), page});
  }
  [[nodiscard]] std::vector<Working> take() && { return std::move(numbers_); }

 private:
  std::vector<Working> numbers_;
};

/// A formula for one body: every '#' becomes its letter.
std::string of_body(std::string formula, char body) {
  for (char& letter : formula) {
    letter = letter == '#' ? body : letter;
  }
  return formula;
}

/// Carrier or trailer on its ground.
struct Body {
  char letter;  ///< c or t
  const terrain::AttitudeBox& box;
  const Tilt& tilt;
};

void write_ground(const Body& body, Sheet& sheet) {
  const auto given = [&](std::string symbol, units::Slope slope) {
    sheet.given(of_body(std::move(symbol), body.letter), amount(slope), Origin::heights, kTilt);
  };
  const auto worked = [&](std::string symbol, Amount value, std::string formula) {
    sheet.worked(of_body(std::move(symbol), body.letter), value,
                 of_body(std::move(formula), body.letter), kTilt);
  };
  given("G_#_low", body.box.grade_low);
  given("G_#_high", body.box.grade_high);
  given("K_#_low", body.box.cross_low);
  given("K_#_high", body.box.cross_high);
  worked("G_#_steep", tangent(body.tilt.steepest_grade), "max(-G_#_low, G_#_high)");
  worked("G_#_gentle", amount(body.box.gentlest_grade()), "max(0, G_#_low, -G_#_high)");
  worked("K_#_steep", tangent(body.tilt.steepest_across), "max(-K_#_low, K_#_high)");
  worked("K_#_gentle",
         tangent(larger(
             0.0, larger(body.box.cross_low.ratio(), body.box.cross_high.reversed().ratio()))),
         "max(0, K_#_low, -K_#_high)");
  worked("n_#", count_of(body.tilt.normal_least), "1 / sqrt(1 + G_#_steep^2 + K_#_steep^2)");
  worked("n_#_most", count_of(body.tilt.normal_most), "1 / sqrt(1 + G_#_gentle^2 + K_#_gentle^2)");
}

void write_given_trailer(const Footing& footing, Sheet& sheet) {
  const rig::Weighed& weighed = footing.weighed;
  const rig::Trailer& trailer = *footing.rig.trailer;
  sheet.given("m_t", amount(weighed.trailer.mass), Origin::load, kHitch);
  sheet.given("m_h", amount(weighed.tongue_mass), Origin::load, kHitch);
  sheet.given("h_t", amount(weighed.trailer.centre.up), Origin::load, kHitch);
  sheet.given("h_h", amount(footing.rig.carrier.hitch_at.up), Origin::rig_sheet, kHitch);
  sheet.given("L", amount(trailer.drawbar_length), Origin::rig_sheet, kHitch);
  sheet.given("f_t", count_of(trailer_drag_high(footing.grip)), Origin::grip, kHitch);
  sheet.given("f_t_low", amount(footing.grip.trailer_resistance.low), Origin::grip, kDescent);
}

void write_hitch(const Statics& statics, Sheet& sheet) {
  const HitchForces& hitch = statics.hitch;
  sheet.worked("V", amount(hitch.down),
               "max(0, g m_h n_t_most + g m_t / L (max(along(-G_t_low) (h_t - h_h), "
               "-along(G_t_high) (h_t - h_h)) + f_t n_t_most h_h))",
               kHitch);
  sheet.worked("U", amount(hitch.uplift),
               "max(0, g m_t / L max(along(G_t_high) (h_t - h_h), "
               "-along(-G_t_low) (h_t - h_h)) - g m_h n_t)",
               kHitch);
  sheet.worked("D", amount(hitch.pull), "max(0, g m_t (along(G_t_high) + f_t n_t_most))", kHitch);
  sheet.worked("P", amount(hitch.push), "max(0, g m_t (along(-G_t_low) - f_t_low n_t) + f_t_low V)",
               kHitch);
}

/// Formulas with the trailer's part, and without where there is none.
struct Formula {
  std::string_view towing;
  std::string_view solo;
};

void write_grip_along(const Statics& statics, Sheet& sheet) {
  const Footing& footing = statics.footing;
  const auto worked = [&](const char* symbol, Amount value, const Formula& formula,
                          std::string_view page) {
    sheet.worked(symbol, value,
                 std::string{footing.rig.trailer.has_value() ? formula.towing : formula.solo},
                 page);
  };
  sheet.given("mu", amount(footing.grip.traction), Origin::grip, kClimb);
  sheet.given("f_c", amount(footing.grip.carrier_resistance.high), Origin::grip, kClimb);
  worked("F_climb", amount(statics.climb.asked),
         {"max(0, g m_c along(G_c_high) + g m_t along(G_t_high) + f_t g m_t n_t_most + "
          "max(0, f_c - f_t) V) + f_c g m_c n_c",
          "max(0, g m_c along(G_c_high)) + f_c g m_c n_c"},
         kClimb);
  worked("C_climb", amount(statics.climb.given_by_snow),
         {"mu (phi g m_c n_c - U)", "mu phi g m_c n_c"}, kClimb);
  worked("u_climb", count_of(grip_taken(statics.climb)),
         {"max(0, F_climb) / C_climb", "max(0, F_climb) / C_climb"}, kSideSlip);
  sheet.given("mu_b", amount(footing.grip.brake), Origin::grip, kDescent);
  sheet.given("B_brake", amount(footing.rig.carrier.brake_force), Origin::rig_sheet, kDescent);
  worked("F_hold", amount(statics.hold.asked),
         {"g m_c along(-G_c_low) + g m_t (along(-G_t_low) - f_t_low n_t) + f_t_low V",
          "g m_c along(-G_c_low)"},
         kDescent);
  worked("C_hold", amount(statics.hold.given_by_snow),
         {"mu_b (phi g m_c n_c - U)", "mu_b phi g m_c n_c"}, kDescent);
  worked("u_hold", count_of(grip_taken(statics.hold)),
         {"max(0, F_hold) / C_hold", "max(0, F_hold) / C_hold"}, kSideSlip);
}

void write_across(const Statics& statics, Sheet& sheet) {
  const double pressed_newton =
      units::kGravity * statics.footing.weighed.carrier.mass.value() * statics.carrier.normal_least;
  const double by_carrier = pressed_newton * statics.carrier.across_normal;
  if (!statics.footing.rig.trailer.has_value()) {
    sheet.worked("S", force(by_carrier), "g m_c n_c K_c_steep / sqrt(1 + G_c_gentle^2)", kSideSlip);
    return;
  }
  const double at_hitch =
      units::weight_of(statics.footing.weighed.tongue_mass).value() * statics.trailer.lateral;
  sheet.worked("Y", force(at_hitch),
               "g m_h K_t_steep / (sqrt(1 + G_t_gentle^2) "
               "sqrt(1 + G_t_gentle^2 + K_t_steep^2))",
               kSideSlip);
  sheet.worked("S", force(by_carrier + at_hitch),
               "g m_c n_c K_c_steep / sqrt(1 + G_c_gentle^2) + Y", kJackknife);
}

}  // namespace

Amount number_of(const Finding& finding, std::string_view name) {
  const auto inputs = finding.inputs.all();
  const auto found = std::ranges::find(inputs, name, &Input::name);
  return found == inputs.end() ? Amount{} : found->value;
}

std::vector<Working> shared_workings(const Footing& footing) {
  const Statics statics = statics_of(footing);
  const bool towing = footing.rig.trailer.has_value();
  Sheet sheet;
  sheet.given("g", {units::kGravity, units::Unit::metres_per_second2}, Origin::physics, kTilt);
  sheet.given("m_c", amount(footing.weighed.carrier.mass), Origin::load, kClimb);
  sheet.given("phi", count_of(footing.rig.carrier.track_weight_share), Origin::rig_sheet, kClimb);
  write_ground({'c', footing.carrier, statics.carrier}, sheet);
  if (towing) {
    write_given_trailer(footing, sheet);
    write_ground({'t', footing.trailer, statics.trailer}, sheet);
    write_hitch(statics, sheet);
  }
  write_grip_along(statics, sheet);
  write_across(statics, sheet);
  return std::move(sheet).take();
}

}  // namespace rimehaul::passage
