#include "app/record_place.h"

#include "ports/gdal/records_file.h"
#include "ports/openssl/digest.h"

namespace rimehaul::app {

std::unique_ptr<day::Records> records_of(const LoadedSite& site) {
  return ports::gdal::read_records({.folder = site.folder});
}

std::unique_ptr<day::Writing> begin_writing(const LoadedSite& site, const Outside& outside) {
  return ports::gdal::write_records({.folder = site.folder},
                                    {.account = outside.account,
                                     .digest_of = ports::openssl::digest_of,
                                     .frame = site.scene->frame.horizontal});
}

}  // namespace rimehaul::app
