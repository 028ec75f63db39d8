// The verb `check`: all that is wrong or doubtful with a site, in one pass.
#pragma once

#include "app/options.h"
#include "card/site_report.h"

namespace rimehaul::app {

/// All that is wrong or doubtful with the site in a folder, and what there is.
[[nodiscard]] card::SiteReport report_on(const std::string& folder, const Outside& outside);

/// `yes` when nothing forbids the site's use, `honest_no` when faults do.
[[nodiscard]] Status check_site(const CheckOptions& options, const Outside& outside);

}  // namespace rimehaul::app
