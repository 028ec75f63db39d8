#include "app/account.h"

#include <pwd.h>
#include <unistd.h>

namespace rimehaul::app {

std::string own_account() {
  const uid_t number = ::geteuid();
  const passwd* account = ::getpwuid(number);
  return account != nullptr && account->pw_name != nullptr ? account->pw_name
                                                           : "account " + std::to_string(number);
}

}  // namespace rimehaul::app
