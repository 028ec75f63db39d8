// Rules, rigs and snow of a new site: texts to be filled in by people.
#include "app/site_draft.h"

namespace rimehaul::app {

namespace {

constexpr std::string_view kRules =
    R"(# The site's rules. Each line with # shows the default that holds; take the # off to change it.
# Those without a published source are estimates and are told as such on cards and audits.
schema = 1

# Largest share of any limit that is driven.
# allowed_share = 0.7
# Standard deviations of error that count; may only be raised.
# confidence_k = 1.645
# Part of the static tip angle that counts.
# roll_over_reserve = 0.6
# How much deeper the low side sinks on a cross-slope, metres.
# low_side_sinkage_m = 0.05
# Angle between carrier and trailer reckoned with when braking.
# articulation_deg = 30
# Driver's reaction time, seconds.
# reaction_s = 2
# Slowest speed that a leg must allow, km/h.
# walking_pace_kmh = 3.6
# Sight where a trail says nothing else, metres.
# sight_m = 30
# Least distance of the rig's side from a drop beside the trail, and from a cornice, metres.
# setback_m = 3
# cornice_setback_m = 10
# Visibility in marker spacings, at least.
# markers_in_sight = 2
# Wind above which nothing is driven, km/h. There is no default: set your own.
# most_wind_kmh =
# Whether rain closes everything; then not knowing does too.
# closed_in_rain = true
# How long groomed snow sets before it is driven, minutes. There is no default: set your own.
# grooming_set_min =
# Longest two-way single lane with nowhere to pass, metres. There is no default: set your own.
# single_lane_m =
# Wettest snow in which snow carries over a creek.
# wettest_creek_bridge = "dry"
# Within so many metres straps and hitch are looked at again.
# strap_check_m = 500
# Whom to call, and how; and how many minutes after its time a rig is looked for.
# control =
# overdue_min = 30
# A passenger with gear, kg.
# passenger_kg = 90
# Part of the tank kept for the unexpected: one third.
# fuel_reserve = 0.3333333333333333
# Slopes from which dry and wet snow may release; may only be lowered.
# start_slope_dry_deg = 30
# start_slope_wet_deg = 25
# Wettest snow with a trailer.
# wettest_towing = "very_wet"
# Greatest length of a judged piece, metres.
# piece_m = 5

# The rig that tows others out, and whether nothing is driven unless it is told to be ready.
# tow_out.rig =
# tow_out.must_be_ready =

# Who may ride beside the driver: while a trailer is towed, in which snow, and in your words.
# [passengers]
# with_trailer = false
# wettest = "wet"
# who =

# Whether a rig is driven with nobody along, and through how many metres without radio.
# [alone]
# allowed = true
# longest_dead_zone_m = 0

# How far to keep off ground that may release, by level of the avalanche bulletin.
# [bulletin.level_1]
# keep_off_m = 10
# decision_may_permit = true
# all_closed = false
# [bulletin.level_2]
# keep_off_m = 30
# decision_may_permit = true
# all_closed = false
# [bulletin.level_3]
# keep_off_m = 100
# decision_may_permit = true
# all_closed = false
# [bulletin.level_4]
# keep_off_m = 300
# decision_may_permit = false
# all_closed = false
# [bulletin.level_5]
# keep_off_m = 300
# decision_may_permit = false
# all_closed = true

# What drivers may do, by level. If one is given, both defaults are gone: give all that you need.
# [driver.new]
# allowed_share = 0.5
# may_tow = false
# may_carry_passengers = false
# wettest_towing = "dry"
# drives_from = "08:00"
# drives_to = "16:00"
# [driver.seasoned]
# allowed_share = 0.7
# may_tow = true
# may_carry_passengers = true
# wettest_towing = "wet"
)";

constexpr std::string_view kRigs =
    R"(# Carriers, trailers and the rigs made of them. Nothing here is made up for you: take the # off and
# write the numbers of your machine behind the = signs, from its maker's sheet or measured. "mine"
# is a name of your choice. Places are [forward, left, up] in metres: forward of the rear end of the
# ground contact, left of the centre line, up from the snow.
schema = 1

# [carrier.mine]
# "skis_and_tracks" or "twin_track"
# kind =
# Who says what this sheet says: "maker", "site_measured" or "estimate"; and the document.
# standing =
# source =
# Fluids in, tank empty, no driver; and its centre of gravity.
# mass_kg =
# centre_m =
# Driver with gear, and where he sits.
# driver_kg =
# driver_at_m =
# Passengers' places, in the order in which they are filled; none: no seats.
# seats_at_m =
# Centre of gravity of the bed load (take it high), the most on the bed, and the most in all.
# bed_at_m =
# bed_kg =
# payload_kg =
# Corners [forward, left] of the ground contact, counter-clockwise seen from above.
# support_m =
# Ground contact: length, and width over the outer edges.
# contact_length_m =
# gauge_m =
# Overall.
# length_m =
# width_m =
# The driven tracks: area, and their share of the weight.
# contact_area_m2 =
# track_weight_share =
# turning_radius_m =
# The hitch: where, the most on it, the most towed.
# hitch_at_m =
# hitch_vertical_kg =
# towed_kg =
# At the crankshaft, at the site's height; and what of it reaches the snow.
# power_kw =
# driveline_efficiency =
# consumption_g_per_kwh =
# idle_l_per_h =
# tank_l =
# tank_at_m =
# fuel_kg_per_m3 =
# Most that the service brake and the parking brake hold at the snow, newtons.
# brake_force_n =
# parking_brake_force_n =
# top_speed_kmh =

# Ratings for slopes. An estimate is no rating: each must come from the maker's manual with its page,
#   { deg = ..., standing = "maker", source = "operator's manual, p. ..." }
# or be a limit of the site with the name of who set it and the day,
#   { deg = ..., standing = "site_limit", source = "name and office", date = YYYY-MM-DD }
# What is not given stays closed: without load, with a load, and with a trailer each for itself.
# [carrier.mine.ratings.solo_empty]
# climb =
# descent =
# cross =
# [carrier.mine.ratings.solo_loaded]
# climb =
# descent =
# cross =
# [carrier.mine.ratings.towing]
# climb =
# descent =
# cross =

# A trailer, only if you have one.
# [trailer.sled]
# "runners" or "tracks"
# running =
# standing =
# source =
# mass_kg =
# centre_m =
# bed_at_m =
# payload_kg =
# tongue_share =
# gauge_m =
# width_m =
# contact_length_m =
# drawbar_m =
# contact_area_m2 =
# hitch_free_to_roll =
# 0: unbraked
# brake_force_n =

# A rig: a carrier, its trailer or none, and the level of its driver in the rules ("new",
# "seasoned").
# [rig.mine]
# carrier =
# trailer =
# driver_level =
)";

constexpr std::string_view kSnow =
    R"(# What an observer saw this morning. Fill it in, then name this file in site.toml: snow = "snow.toml".
# Nothing here is made up for you; what nobody saw stays unknown, and unknown is closed.
schema = 1

# observer =
# Moments with their offset: 2026-02-01T06:30:00+01:00
# observed =
# valid_until =
# When the last snowfall, drifting wind, rain or slide ended: what was built on is looked at after it.
# last_weather =
# Whether the rig that tows others out stands ready, with a driver.
# tow_out_ready =

# [weather]
# visibility_m =
# wind_kmh =
# The avalanche bulletin, 1 to 5, and which bulletin it was.
# bulletin_level =
# bulletin_source =
# new_snow_cm =
# rain =
# temperature_c =

# Today's word on each gate, radio gate, winch cable, blasting and creek bridge of the site.
# [[status]]
# mark =
# clear =
# until =

# When trails were groomed.
# [[groomed]]
# trails =
# finished =

# A band of heights and a sector of slope directions; write one for each, or one for all.
# [[band]]
# above_m =
# below_m =
# "dry", "moist", "wet", "very_wet" or "slush"
# wetness =
# "groomed", "fresh", "refrozen" or "ice"
# surface =
)";

}  // namespace

std::string_view rules_draft() {
  return kRules;
}

std::string_view rigs_draft() {
  return kRigs;
}

std::string_view snow_draft() {
  return kSnow;
}

}  // namespace rimehaul::app
