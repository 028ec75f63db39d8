// The verb `new`: a site folder made from one's own files.
#pragma once

#include "app/options.h"

namespace rimehaul::app {

/// `yes` when the folder was made and its check finds no fault, `honest_no` when faults are left to
/// be mended. Throws BadInput or UnfitInput when nothing was made; nothing is left behind then.
[[nodiscard]] Status make_site(const NewOptions& options, const Outside& outside);

}  // namespace rimehaul::app
