#include "app/folder_to_fill.h"

#include <filesystem>
#include <system_error>

#include "base/fault.h"

namespace rimehaul::app {

namespace fs = std::filesystem;

FolderToFill::FolderToFill(const std::string& folder) {
  std::error_code trouble;
  if (fs::is_directory(folder, trouble)) {
    return;
  }
  const SignalsHeld held;
  if (!fs::create_directory(folder, trouble)) {
    throw base::BadInput{
        {folder,
         "",
         "cannot be made: " + (trouble ? trouble.message() : std::string{"it is there already"}),
         "name a folder that is there, or one to be made where you may write",
         {}}};
  }
  made_.emplace(folder);
}

FolderToFill::~FolderToFill() {
  if (made_) {
    std::error_code ignored;
    fs::remove(made_->path(), ignored);
  }
}

}  // namespace rimehaul::app
