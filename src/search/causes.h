// One and the same reason on every leg of a way is one cause, told once.
#pragma once

#include "search/no_route.h"

namespace rimehaul::search {

/// The causes of obstacles: findings of one check that are missing the same thing, or refused in
/// the same words, or over what is allowed, or that ask for a decision. Places in the order of the
/// way, a leg before the turn into it; the cause at most places first, of equals the one that
/// binds. An obstacle whose findings are not filled in counts with the one that binds. Snow that is
/// not known is one cause, whichever checks lack it.
[[nodiscard]] std::vector<Cause> causes_of(const NoRoute& none, double allowed_share);

}  // namespace rimehaul::search
