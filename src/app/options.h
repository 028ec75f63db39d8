// The command line as plain data.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "app/outside.h"
#include "app/status.h"

namespace rimehaul::app {

/// What every verb takes.
struct CommonOptions {
  std::string site;                 ///< folder
  std::optional<std::string> json;  ///< file, or "-" for standard output in place of text
  std::optional<std::string> now;   ///< RFC 3339; nothing: the clock
};

/// What the snow and the weather are taken to be. What is not said is as the site's report says.
struct SnowOptions {
  std::optional<std::string> wetness;  ///< the same everywhere: a planner's "what if"
  std::string surface = "groomed";
  std::optional<std::string> report;  ///< snow report file
  std::optional<double> visibility_m;
  std::optional<double> wind_kmh;
  std::optional<double> new_snow_cm;
  std::optional<double> temperature_c;
  std::optional<std::string> rain;  ///< "yes" or "no"
  std::optional<int> bulletin;
};

struct RigOptions {
  std::string name;
  std::optional<double> bed_kg;
  std::optional<double> towed_kg;
  int passengers = 0;
  bool accompanied = false;
  std::optional<double> fuel_l;  ///< nothing: a full tank
};

struct NewOptions {
  CommonOptions common;  ///< its site is the folder to be made
  std::vector<std::string> heights;
  std::string trails;
  std::optional<std::string> stations;
  std::optional<std::string> name;
};

struct CheckOptions {
  CommonOptions common;
};

/// From where to where, when, and by whose leave.
struct WayOptions {
  std::string from;
  std::string to;
  std::vector<std::string> via;
  std::string prefer = "safest";
  std::optional<std::string> depart;  ///< "HH:MM" local time on the day of now, or RFC 3339
  std::string permitted_by;
};

/// Which hours of departure are told, and what for.
struct HoursOptions {
  bool windows = false;
  std::optional<std::string> arrive_by;  ///< as WayOptions::depart
  std::optional<double> late_min;        ///< nothing: a quarter of an hour
  std::optional<double> turn_round_min;  ///< nothing: one way
  std::optional<double> back_bed_kg;     ///< nothing: as there
  std::optional<double> back_towed_kg;   ///< likewise
};

struct RouteOptions {
  CommonOptions common;
  RigOptions rig;
  SnowOptions snow;
  WayOptions way;
  HoursOptions hours;
  std::optional<std::string> card;  ///< PDF
  std::optional<std::string> gpx;
  int alternatives = 0;
};

/// A round of errands.
struct ErrandsOptions {
  CommonOptions common;
  RigOptions rig;  ///< what stays on it all the way; no load given: 0
  SnowOptions snow;
  std::string list;  ///< file
  std::string prefer = "safest";
  std::optional<std::string> depart;  ///< as WayOptions::depart
  std::string permitted_by;
  double halt_min = 10.0;           ///< a cautious default; estimate
  std::optional<std::string> into;  ///< folder for the cards
};

/// A place on a trail, or anywhere on the map.
struct PlaceOptions {
  std::optional<std::string> trail;
  std::optional<double> at_m;
  std::vector<double> point_m;  ///< east, north; empty: not given
};

struct ExplainOptions {
  CommonOptions common;
  RigOptions rig;
  SnowOptions snow;
  PlaceOptions place;
  std::string direction = "both";
  std::optional<std::string> depart;
  bool what_if = false;
};

struct SnowDayOptions {
  CommonOptions common;
  PlaceOptions place;
  std::optional<std::string> report;  ///< nothing: the site's own
  std::optional<std::string> record;  ///< the site's own record, in place of a place
  bool keep = false;                  ///< the report, among the records
  std::string person;                 ///< who keeps it
};

struct AuditOptions {
  CommonOptions common;
  std::vector<std::string> rigs;     ///< empty: all of the site
  RigOptions load;                   ///< its name is not used; no load given: full, and empty
  SnowOptions snow;                  ///< its wetness and report are not used
  std::vector<std::string> wetness;  ///< empty: all classes
  std::optional<std::string> depart;
  std::string for_whom;
  std::optional<std::string> csv;
  std::optional<std::string> geojson;
  std::optional<std::string> pdf;
};

struct LimitsOptions {
  CommonOptions common;
  RigOptions rig;                      ///< no load given: 0
  std::optional<std::string> wetness;  ///< nothing: all classes
  std::optional<std::string> surface;  ///< nothing: all surfaces
  std::optional<std::string> svg;
  std::optional<std::string> pdf;
};

struct SlopesOptions {
  CommonOptions common;
  std::string into;                    ///< folder
  std::vector<std::string> layers;     ///< empty: all that can be had
  bool plain = false;                  ///< no COG
  RigOptions rig;                      ///< with the snow, or not used; no load given: 0
  std::optional<std::string> wetness;  ///< nothing: no rig is judged
  std::string surface = "fresh";       ///< off the trails nobody grooms
};

struct RigSheetOptions {
  CommonOptions common;
  RigOptions rig;  ///< no load given: 0
  std::optional<std::string> svg;
  std::optional<std::string> pdf;
};

struct PayloadOptions {
  CommonOptions common;
  RigOptions rig;  ///< no load given: 0
  SnowOptions snow;
  WayOptions way;
  int step_kg = 5;
};

struct BoardOptions {
  CommonOptions common;
  RigOptions rig;                     ///< no load given: 0
  SnowOptions weather;                ///< its wetness, surface and report are not used
  std::vector<std::string> wetness;   ///< empty: all classes
  std::vector<std::string> surfaces;  ///< "all" among them: all; empty: groomed
  std::optional<std::string> depart;
  std::string rows = "pairs";  ///< pairs, routes, trails
  std::string by = "snow";     ///< snow, hour
  std::string paper = "a4";
  HoursOptions hours;               ///< by the hour: the reserve and the way back
  bool all_rigs = false;            ///< of the site; else the one named
  std::optional<std::string> from;  ///< only pairs or trails that leave from here
  std::optional<std::string> to;    ///< only pairs or trails that arrive here
  std::optional<std::string> csv;
  std::optional<std::string> pdf;
};

/// What a person orders; one of them is given, or none to be shown what is in force.
struct OverrideOptions {
  CommonOptions common;
  std::string person;
  std::optional<std::string> trail;  ///< closed, or open in these hours alone
  std::optional<std::string> hours;
  std::optional<std::string> rig;  ///< forbidden
  std::optional<double> share;
  std::optional<std::string> rule;  ///< "most_wind_kmh = 50"
  std::optional<int> end;           ///< the order that is taken back
  std::string reason;
  std::optional<std::string> until;
};

struct SignOptions {
  CommonOptions common;
  std::string person;
  BoardOptions board;  ///< its snow classes and surfaces; the rest is not used
  std::optional<std::string> depart;
  std::vector<std::string> close;   ///< routes
  std::vector<std::string> permit;  ///< routes that wait for a decision alone
  std::string reason;               ///< for what is closed or permitted
  std::optional<std::string> csv;
  std::optional<std::string> pdf;
};

struct CardOptions {
  CommonOptions common;
  std::string route;
  std::string driver;
  std::optional<std::string> depart;
  std::optional<double> bed_kg;  ///< nothing: as usual
  std::optional<double> towed_kg;
  std::optional<std::string> card;  ///< PDF
  std::optional<std::string> gpx;
};

struct RecallOptions {
  CommonOptions common;
  std::string person;
  int card = 0;
  std::string reason;
};

struct FieldCheckOptions {
  CommonOptions common;
  PlaceOptions place;
  std::optional<double> heading_deg;  ///< nothing: the trail's
  std::optional<double> grade_deg;
  std::optional<double> cross_slope_deg;
  std::optional<std::string> instrument;
  std::string person;  ///< who measured; nothing of all these: list
  std::optional<std::string> csv;
};

struct LogOptions {
  CommonOptions common;
  bool verify = false;
  std::vector<std::string> heads;  ///< on paper; any: verify
};

struct BackupOptions {
  CommonOptions common;
  std::string into;  ///< file
};

using Command =
    std::variant<NewOptions, CheckOptions, RouteOptions, ExplainOptions, AuditOptions,
                 LimitsOptions, RigSheetOptions, BoardOptions, PayloadOptions, SlopesOptions,
                 OverrideOptions, SignOptions, CardOptions, RecallOptions, LogOptions,
                 BackupOptions, SnowDayOptions, ErrandsOptions, FieldCheckOptions>;

/// The command that the arguments (without the program's name) ask for; or the status to end with
/// when help was printed. Throws WrongUsage when the arguments are wrong.
[[nodiscard]] std::variant<Command, Status> read_command(const std::vector<std::string>& arguments,
                                                         const Outside& outside);

}  // namespace rimehaul::app
