// SHA-256 against the examples of its standard.
#include "ports/openssl/digest.h"

#include <doctest/doctest.h>
#include <stdlib.h>
#include <sys/stat.h>

#include <filesystem>
#include <fstream>
#include <string>

#include "base/fault.h"

using rimehaul::base::BadInput;
using rimehaul::ports::openssl::digest_of;
using rimehaul::ports::openssl::digest_of_file;

namespace {

/// A file that goes away with the test.
class TempFile {
 public:
  explicit TempFile(const std::string& text) {
    std::string pattern = (std::filesystem::temp_directory_path() / "rimehaul-XXXXXX").string();
    REQUIRE(mkdtemp(pattern.data()) != nullptr);
    folder_ = pattern;
    std::ofstream{path(), std::ios::binary} << text;
  }
  ~TempFile() {
    std::error_code trouble;
    std::filesystem::remove_all(folder_, trouble);
  }
  TempFile(const TempFile&) = delete;
  TempFile& operator=(const TempFile&) = delete;

  [[nodiscard]] std::string folder() const { return folder_.string(); }
  [[nodiscard]] std::string path() const { return (folder_ / "file").string(); }

 private:
  std::filesystem::path folder_;
};

}  // namespace

// FIPS 180-4 with NIST's example values for SHA-256 ("abc", two blocks, a million times "a").
constexpr const char* kEmpty = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855";
constexpr const char* kAbc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
constexpr const char* kTwoBlocks =
    "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1";
constexpr const char* kMillion = "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0";

TEST_CASE("texts have the digests that the standard prints for them") {
  CHECK(digest_of("").hex() == kEmpty);
  CHECK(digest_of("abc").hex() == kAbc);
  CHECK(digest_of("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq").hex() == kTwoBlocks);
  CHECK(digest_of(std::string(1'000'000, 'a')).hex() == kMillion);
}

TEST_CASE("a file read in pieces has the digest of its whole text") {
  CHECK(digest_of_file({TempFile{""}.path(), "x"}).hex() == kEmpty);
  CHECK(digest_of_file({TempFile{"abc"}.path(), "x"}).hex() == kAbc);
  CHECK(digest_of_file({TempFile{std::string(1'000'000, 'a')}.path(), "x"}).hex() == kMillion);
  // Exactly one piece, and one letter to each side.
  for (const std::size_t size : {std::size_t{65535}, std::size_t{65536}, std::size_t{65537}}) {
    const std::string text(size, 'r');
    CHECK(digest_of_file({TempFile{text}.path(), "x"}) == digest_of(text));
  }
}

TEST_CASE("one changed letter changes the digest") {
  CHECK(digest_of("Marrowfell") != digest_of("Marrowfall"));
}

TEST_CASE(
    "what is no regular file is bad input under the name people gave, and is not waited for") {
  const TempFile file{"abc"};
  const std::string pipe = file.folder() + "/pipe";
  REQUIRE(mkfifo(pipe.c_str(), 0600) == 0);
  for (const std::string& path :
       {file.folder() + "/missing", file.folder(), pipe, std::string{"/dev/zero"}}) {
    try {
      (void)digest_of_file({path, "heights.tif"});
      FAIL_CHECK("no fault for " << path);
    } catch (const BadInput& bad) {
      CHECK(bad.fault().file == "heights.tif");
    }
  }
}
