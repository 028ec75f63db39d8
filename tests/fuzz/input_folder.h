// A folder for the files that a fuzzer makes up.
#pragma once

#include <unistd.h>

#include <cstdint>
#include <filesystem>
#include <fstream>
#include <string>
#include <string_view>

namespace rimehaul::fuzz {

/// One folder per program, removed when it ends; in memory where there is a place for that.
class InputFolder {
 public:
  InputFolder() : path_{place() / ("rimehaul-fuzz-" + std::to_string(::getpid()))} {
    std::filesystem::create_directories(path_);
  }
  ~InputFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  InputFolder(const InputFolder&) = delete;
  InputFolder& operator=(const InputFolder&) = delete;

  [[nodiscard]] std::string path() const { return path_.string(); }
  [[nodiscard]] std::string file(const std::string& name) const { return (path_ / name).string(); }
  void write(const std::string& name, std::string_view bytes) const {
    std::ofstream{path_ / name, std::ios::binary | std::ios::trunc} << bytes;
  }
  /// Takes away everything that lies in the folder.
  void clear() const {
    for (const auto& entry : std::filesystem::directory_iterator{path_}) {
      std::filesystem::remove_all(entry.path());
    }
  }

 private:
  static std::filesystem::path place() {
    const std::filesystem::path memory{"/dev/shm"};
    return ::access(memory.c_str(), W_OK) == 0 ? memory : std::filesystem::temp_directory_path();
  }

  std::filesystem::path path_;
};

inline std::string_view text_of(const std::uint8_t* bytes, std::size_t size) {
  return {reinterpret_cast<const char*>(bytes), size};
}

}  // namespace rimehaul::fuzz
