#include "units/amount.h"

namespace rimehaul::units {

std::string_view sign_of(Unit unit) {
  switch (unit) {
    case Unit::number:
    case Unit::tangent:
      return "";
    case Unit::degrees:
      return "deg";
    case Unit::metres:
      return "m";
    case Unit::square_metres:
      return "m2";
    case Unit::kilograms:
      return "kg";
    case Unit::newtons:
      return "N";
    case Unit::newton_metres:
      return "N m";
    case Unit::kilopascals:
      return "kPa";
    case Unit::watts:
      return "W";
    case Unit::seconds:
      return "s";
    case Unit::metres_per_second:
      return "m/s";
    case Unit::metres_per_second2:
      return "m/s2";
    case Unit::celsius:
      return "deg C";
    case Unit::minutes_of_day:
      return "min after midnight";
  }
  return "";
}

}  // namespace rimehaul::units
