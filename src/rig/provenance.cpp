// The words for where a number comes from.
#include "rig/provenance.h"

namespace rimehaul::rig {

const char* words_for(Standing standing) {
  switch (standing) {
    case Standing::maker:
      return "maker";
    case Standing::published:
      return "published";
    case Standing::site_measured:
      return "measured by the site";
    case Standing::site_limit:
      return "limit set by the site";
    case Standing::estimate:
      break;
  }
  return "estimate";
}

}  // namespace rimehaul::rig
