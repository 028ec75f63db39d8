// The edge that a body tips over, corner by corner, and what the hitch adds to it.
#include <string>
#include <utility>

#include "passage/forces.h"
#include "passage/workings.h"

namespace rimehaul::passage {

namespace {

using rig::SupportPoint;
using units::amount;

constexpr std::string_view kRollOver = "docs/checks/roll-over.md";

/// A body on its support; its letter ends its symbols among the shared ones.
struct Body {
  char letter;
  std::vector<SupportPoint> polygon;
  const rig::Balance& balance;
};

Body body_of(const Footing& footing, Check check) {
  return check == Check::carrier_roll_over
             ? Body{'c', footing.rig.carrier.support, footing.weighed.carrier}
             : Body{'t', rig::support_of(*footing.rig.trailer), footing.weighed.trailer};
}

class EdgeSheet {
 public:
  EdgeSheet(const Finding& finding, const rig::TipEdge& edge) : finding_{finding}, edge_{edge} {}

  void write_polygon(const Body& body) {
    given("from_ahead", edge_.from.forward, Origin::rig_sheet);
    given("from_left", edge_.from.left, Origin::rig_sheet);
    given("to_ahead", edge_.to.forward, Origin::rig_sheet);
    given("to_left", edge_.to.left, Origin::rig_sheet);
    const std::string length = "hypot(to_ahead - from_ahead, to_left - from_left)";
    worked("x", "(to_left - from_left) / " + length);
    worked("y", "(from_ahead - to_ahead) / " + length);
    given("centre_ahead", body.balance.centre.forward, Origin::load);
    given("centre_left", body.balance.centre.left, Origin::load);
    worked("i", "x (from_ahead - centre_ahead) + y (from_left - centre_left)");
    std::string across = "max(0";
    int number = 0;
    for (const SupportPoint& corner : body.polygon) {
      const std::string name = "corner" + std::to_string(++number);
      given(name + "_ahead", corner.forward, Origin::rig_sheet);
      given(name + "_left", corner.left, Origin::rig_sheet);
      across.append(", x (from_ahead - ").append(name);
      across.append("_ahead) + y (from_left - ").append(name).append("_left)");
    }
    worked("w", across + ")");
  }

  /// The lean: with G above 0 more the steeper the ground across, else less; with K the other way.
  void write_lean(char letter) {
    const std::string body{letter};
    const std::string across = number_of(finding_, "G").value >= 0.0 ? "_steep" : "_gentle";
    const std::string along = number_of(finding_, "K").value >= 0.0 ? "_gentle" : "_steep";
    worked("A", "G sqrt(1 + G^2 + K_" + body + across + "^2) / sqrt(1 + G^2)");
    worked("C", "K / sqrt(1 + G_" + body + along + "^2)");
    worked("n", "n_" + body);
  }

  void write_moment(const rig::BodyPoint& hitch) {
    given("x_h", hitch.forward, Origin::rig_sheet);
    given("y_h", hitch.left, Origin::rig_sheet);
    const units::Metres inside = (edge_.from.forward - hitch.forward) * edge_.outward.forward +
                                 (edge_.from.left - hitch.left) * edge_.outward.left;
    numbers_.push_back({"i_h", amount(inside), Origin::derived,
                        "x (from_ahead - x_h) + y (from_left - y_h)", kRollOver});
    worked("M", "h_h max(0, -x D, x P) + max(0, -V i_h, U i_h)");
  }

  void write_no_moment() { worked("M", "0"); }

  [[nodiscard]] std::vector<Working> take() && { return std::move(numbers_); }

 private:
  void given(std::string symbol, units::Metres length, Origin origin) {
    numbers_.push_back({std::move(symbol), amount(length), origin, "", kRollOver});
  }

  /// How an input of the finding comes about.
  void worked(const char* symbol, std::string formula) {
    numbers_.push_back(
        {symbol, number_of(finding_, symbol), Origin::derived, std::move(formula), kRollOver});
  }

  const Finding& finding_;
  const rig::TipEdge& edge_;
  std::vector<Working> numbers_;
};

}  // namespace

std::vector<Working> roll_over_workings(const Footing& footing, const Finding& finding) {
  const bool of_carrier = finding.check == Check::carrier_roll_over;
  const bool of_trailer =
      finding.check == Check::trailer_roll_over && footing.rig.trailer.has_value();
  if (!of_carrier && !of_trailer) {
    return {};
  }
  const Body body = body_of(footing, finding.check);
  for (const rig::TipEdge& edge : rig::tip_edges(body.polygon, body.balance.centre)) {
    if (edge.outward.forward != number_of(finding, "x").value ||
        edge.outward.left != number_of(finding, "y").value) {
      continue;
    }
    EdgeSheet sheet{finding, edge};
    sheet.write_polygon(body);
    sheet.write_lean(body.letter);
    if (of_carrier && footing.rig.trailer.has_value()) {
      sheet.write_moment(footing.rig.carrier.hitch_at);
    } else {
      sheet.write_no_moment();
    }
    return std::move(sheet).take();
  }
  return {};
}

}  // namespace rimehaul::passage
