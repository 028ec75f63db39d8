// Limits that depend on the load alone: towed mass, payloads, seats.
#include <utility>

#include "passage/footing.h"
#include "passage/worksheet.h"

namespace rimehaul::passage {

namespace {

using units::amount;
using units::count_of;

struct MassLimit {
  Check check = Check::payload;
  units::Kilograms mass;
  units::Kilograms rated;
};

Finding within(const MassLimit& limit) {
  Worksheet sheet{limit.check};
  sheet.not_negative("m", amount(limit.mass), Origin::load);
  sheet.any("rated", amount(limit.rated), Origin::rig_sheet);
  return sheet.compared(amount(limit.mass), amount(limit.rated));
}

}  // namespace

Finding judge_towed_mass(const rig::Rig& rig, const rig::Weighed& weighed) {
  if (!rig.trailer) {
    return kept(Check::towed_mass);
  }
  return within({Check::towed_mass, weighed.trailer.mass, rig.carrier.towed_mass_rating});
}

Finding judge_payload(const rig::Rig& rig, const rig::Weighed& weighed) {
  Finding in_all = within({Check::payload, weighed.payload, rig.carrier.payload_rating});
  if (rig.load.bed == units::Kilograms{0}) {
    return in_all;
  }
  Finding on_bed = within({Check::payload, rig.load.bed, rig.carrier.bed_rating});
  return binds_before(on_bed, in_all) ? std::move(on_bed) : std::move(in_all);
}

Finding judge_trailer_payload(const rig::Rig& rig) {
  const bool nothing_towed = rig.load.towed == units::Kilograms{0};
  if (!rig.trailer) {
    return nothing_towed ? kept(Check::trailer_payload)
                         : refusal(Check::trailer_payload, "towed load without a trailer");
  }
  if (nothing_towed) {
    return kept(Check::trailer_payload, "nothing lies on the trailer");
  }
  return within({Check::trailer_payload, rig.load.towed, rig.trailer->payload_rating});
}

Finding judge_seats(const rig::Rig& rig) {
  const int passengers = rig.load.passengers;
  const auto seats = static_cast<double>(rig.carrier.seats.size());
  Finding finding = passengers < 0 ? refusal(Check::seats, "fewer passengers than none")
                                   : held_to(Check::seats, count_of(passengers), count_of(seats),
                                             "more passengers than seats");
  finding.inputs.add("passengers", count_of(passengers), Origin::load)
      .add("seats", count_of(seats), Origin::rig_sheet);
  return finding;
}

}  // namespace rimehaul::passage
