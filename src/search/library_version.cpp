#include "search/library_version.h"

#include <boost/version.hpp>

namespace rimehaul::search {

std::string library_version() {
  return "Boost " BOOST_LIB_VERSION;
}

}  // namespace rimehaul::search
