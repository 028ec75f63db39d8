// Reads the sheet of a trailer.
#include <array>
#include <utility>

#include "ports/toml/machine_reader.h"
#include "ports/toml/provenance_reader.h"

namespace rimehaul::ports::toml {

namespace {

using rig::Trailer;
using units::Kilograms;
using units::Metres;

constexpr std::array<Word<rig::TrailerRunning>, 2> kRunning{
    {{"runners", rig::TrailerRunning::runners}, {"tracks", rig::TrailerRunning::tracks}}};

/// Fills in one trailer, group by group.
class TrailerSheet {
 public:
  explicit TrailerSheet(const NamedReader& sheet) : in_{sheet.reader} {
    trailer_.name = sheet.name;
  }

  [[nodiscard]] std::optional<Trailer> read();

 private:
  void read_masses();
  void read_shape();
  void read_ratings();

  TableReader in_;
  Trailer trailer_;
};

void TrailerSheet::read_masses() {
  trailer_.empty = {.mass = in_.must<Kilograms>("mass_kg", {.above = 0, .to = 10'000}),
                    .at = read_place(in_, "centre_m")};
  trailer_.bed_at = read_place(in_, "bed_at_m");
  trailer_.payload_rating = in_.must<Kilograms>("payload_kg", {.from = 0, .to = 20'000});
  trailer_.tongue_share = in_.must<double>("tongue_share", {.from = 0, .to = 0.5});
}

void TrailerSheet::read_shape() {
  trailer_.gauge = in_.must<Metres>("gauge_m", {.above = 0, .to = 6});
  trailer_.overall_width = in_.must<Metres>("width_m", {.above = 0, .to = 6});
  trailer_.contact_length = in_.must<Metres>("contact_length_m", {.above = 0, .to = 15});
  trailer_.drawbar_length = in_.must<Metres>("drawbar_m", {.above = 0, .to = 15});
  trailer_.contact_area = in_.must<units::SquareMetres>("contact_area_m2", {.above = 0, .to = 30});
  if (trailer_.gauge > trailer_.overall_width) {
    in_.fault("gauge_m", {"is more than width_m", "correct one of them"});
  }
  const double ground_m2 = trailer_.contact_length.value() * trailer_.gauge.value();
  if (trailer_.contact_area.value() > ground_m2) {
    in_.fault("contact_area_m2",
              {"is more than contact_length_m times gauge_m", "give it in square metres"});
  }
}

void TrailerSheet::read_ratings() {
  TableReader ratings = in_.table("ratings");
  trailer_.climb = read_rating(ratings, "climb");
  trailer_.descent = read_rating(ratings, "descent");
  trailer_.cross = read_rating(ratings, "cross");
  ratings.refuse_rest();
}

std::optional<Trailer> TrailerSheet::read() {
  const std::size_t faults_before = in_.faults();
  const auto running = in_.word("running", kRunning);
  const auto provenance = read_provenance(in_, Estimates::taken);
  read_masses();
  read_shape();
  const auto rolls = in_.yes_no("hitch_free_to_roll");
  trailer_.brake_force = in_.must<units::Newtons>("brake_force_n", {.from = 0, .to = 1'000'000});
  read_ratings();
  in_.refuse_rest();
  if (in_.faults() != faults_before || !running || !provenance || !rolls) {
    return std::nullopt;
  }
  trailer_.running = *running;
  trailer_.provenance = *provenance;
  trailer_.hitch_free_to_roll = *rolls;
  return trailer_;
}

}  // namespace

std::optional<Trailer> read_trailer(const NamedReader& sheet) {
  return TrailerSheet{sheet}.read();
}

}  // namespace rimehaul::ports::toml
