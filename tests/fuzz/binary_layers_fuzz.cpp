// GeoPackage and FlatGeobuf of any bytes. The first byte chooses the format, the second what is
// looked for in it.
#include "fuzz/input_folder.h"
#include "fuzz/look_at_layers.h"

namespace {

constexpr std::array<const char*, 2> kNames{"a.gpkg", "a.fgb"};

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  using namespace rimehaul;
  static const fuzz::InputFolder folder;
  if (size < 2) {
    return 0;
  }
  const std::string name = kNames.at(bytes[0] % kNames.size());
  folder.clear();
  folder.write(name, fuzz::text_of(bytes + 2, size - 2));
  fuzz::read_and_look({folder.path(), name}, bytes[1]);
  return 0;
}
