#include "ports/openssl/digest.h"

#include <openssl/evp.h>

#include <array>
#include <filesystem>
#include <fstream>
#include <memory>

#include "base/fault.h"
#include "base/require.h"

namespace rimehaul::ports::openssl {

namespace {

struct FreeContext {
  void operator()(EVP_MD_CTX* context) const { EVP_MD_CTX_free(context); }
};

/// One running SHA-256.
class Running {
 public:
  Running() : context_{EVP_MD_CTX_new()} {
    base::require(context_ && EVP_DigestInit_ex(context_.get(), EVP_sha256(), nullptr) == 1,
                  "SHA-256 can be started");
  }

  void add(std::string_view bytes) {
    base::require(EVP_DigestUpdate(context_.get(), bytes.data(), bytes.size()) == 1,
                  "SHA-256 takes any bytes");
  }

  base::Digest finish() {
    base::Digest digest;
    unsigned int length = 0;
    const int done = EVP_DigestFinal_ex(context_.get(), digest.bytes.data(), &length);
    base::require(done == 1 && length == digest.bytes.size(), "SHA-256 gives 32 bytes");
    return digest;
  }

 private:
  std::unique_ptr<EVP_MD_CTX, FreeContext> context_;
};

}  // namespace

base::Digest digest_of(std::string_view bytes) {
  Running running;
  running.add(bytes);
  return running.finish();
}

base::Digest digest_of_file(const FileToDigest& file) {
  // A pipe would be waited for, a device read without end.
  std::error_code ignored;
  std::ifstream stream;
  if (std::filesystem::is_regular_file(file.path, ignored)) {
    stream.open(file.path, std::ios::binary);
  }
  Running running;
  constexpr std::size_t kPiece = std::size_t{1} << 16U;
  const auto piece = std::make_unique<std::array<char, kPiece>>();
  while (stream.is_open() && stream) {
    stream.read(piece->data(), static_cast<std::streamsize>(piece->size()));
    running.add({piece->data(), static_cast<std::size_t>(stream.gcount())});
  }
  // Only the end of the file is a good reason to stop; a folder or a failing disk is none.
  if (stream.bad() || !stream.eof()) {
    throw base::BadInput{base::Fault{.file = file.shown,
                                     .place = "",
                                     .problem = "the file cannot be read",
                                     .remedy = "name a regular file that may be read"}};
  }
  return running.finish();
}

}  // namespace rimehaul::ports::openssl
