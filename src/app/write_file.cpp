#include "app/write_file.h"

#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <system_error>

#include "base/fault.h"

namespace rimehaul::app {

void write_file(const std::string& path, std::string_view bytes) {
  const std::string unfinished = path + ".unfinished-" + std::to_string(::getpid());
  std::error_code trouble;
  {
    std::ofstream file{unfinished, std::ios::binary | std::ios::trunc};
    file.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    file.close();
    if (!file) {
      std::filesystem::remove(unfinished, trouble);
      throw base::BadInput{
          {path, "", "cannot be written", "name a file in a folder that exists and has room", {}}};
    }
  }
  std::filesystem::rename(unfinished, path, trouble);
  if (trouble) {
    std::error_code ignored;
    std::filesystem::remove(unfinished, ignored);
    throw base::BadInput{{path,
                          "",
                          "cannot be written: " + trouble.message(),
                          "name a file, not a folder, where you may write",
                          {}}};
  }
}

}  // namespace rimehaul::app
