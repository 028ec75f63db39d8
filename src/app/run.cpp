#include "app/run.h"

#include <exception>
#include <new>
#include <ostream>

#include "app/audit_site.h"
#include "app/back_up.h"
#include "app/board.h"
#include "app/check_site.h"
#include "app/errands.h"
#include "app/explain.h"
#include "app/field_check.h"
#include "app/issue_card.h"
#include "app/limits.h"
#include "app/new_site.h"
#include "app/options.h"
#include "app/override.h"
#include "app/payload.h"
#include "app/plan_route.h"
#include "app/recall.h"
#include "app/rig_command.h"
#include "app/show_log.h"
#include "app/sign.h"
#include "app/slopes.h"
#include "app/snow_day.h"
#include "base/one_line.h"
#include "base/require.h"

namespace rimehaul::app {

namespace {

Outside at_the_time_given(const CommonOptions& common, const Outside& outside) {
  Outside then = outside;
  if (common.now) {
    const auto now = units::parse_instant(*common.now);
    if (!now) {
      throw WrongUsage{"--now " + *common.now + " is no time; write 2026-02-01T16:00:00Z"};
    }
    then.now = *now;
  }
  return then;
}

struct Runner {
  const Outside& outside;

  Status operator()(const AuditOptions& options) const {
    return audit_site(options, at_the_time_given(options.common, outside));
  }
  Status operator()(const NewOptions& options) const {
    return make_site(options, at_the_time_given(options.common, outside));
  }
  Status operator()(const BoardOptions& options) const {
    return board(options, at_the_time_given(options.common, outside));
  }
  Status operator()(const PayloadOptions& options) const {
    return payload(options, at_the_time_given(options.common, outside));
  }
  Status operator()(const CheckOptions& options) const {
    return check_site(options, at_the_time_given(options.common, outside));
  }
  Status operator()(const RigSheetOptions& options) const {
    return show_rig(options, at_the_time_given(options.common, outside));
  }
  Status operator()(const LimitsOptions& options) const {
    return limits(options, at_the_time_given(options.common, outside));
  }
  Status operator()(const OverrideOptions& options) const {
    return override_rules(options, at_the_time_given(options.common, outside));
  }
  Status operator()(const SignOptions& options) const {
    return sign(options, at_the_time_given(options.common, outside));
  }
  Status operator()(const CardOptions& options) const {
    return issue_card(options, at_the_time_given(options.common, outside));
  }
  Status operator()(const RecallOptions& options) const {
    return recall(options, at_the_time_given(options.common, outside));
  }
  Status operator()(const SlopesOptions& options) const {
    return slopes(options, at_the_time_given(options.common, outside));
  }
  Status operator()(const LogOptions& options) const {
    return show_log(options, at_the_time_given(options.common, outside));
  }
  Status operator()(const BackupOptions& options) const {
    return back_up(options, at_the_time_given(options.common, outside));
  }
  Status operator()(const RouteOptions& options) const {
    return plan_route(options, at_the_time_given(options.common, outside));
  }
  Status operator()(const ErrandsOptions& options) const {
    return errands(options, at_the_time_given(options.common, outside));
  }
  Status operator()(const SnowDayOptions& options) const {
    return snow_day(options, at_the_time_given(options.common, outside));
  }
  Status operator()(const FieldCheckOptions& options) const {
    return field_check(options, at_the_time_given(options.common, outside));
  }
  Status operator()(const ExplainOptions& options) const {
    return explain(options, at_the_time_given(options.common, outside));
  }
};

Status run_or_throw(const std::vector<std::string>& arguments, const Outside& outside) {
  const auto command = read_command(arguments, outside);
  if (const auto* status = std::get_if<Status>(&command)) {
    return *status;
  }
  return std::visit(Runner{outside}, std::get<Command>(command));
}

}  // namespace

Status run(const std::vector<std::string>& arguments, const Outside& outside) {
  try {
    return run_or_throw(arguments, outside);
  } catch (const WrongUsage& error) {
    outside.err << base::one_line(error.what()) << '\n';
    return Status::wrong_usage;
  } catch (const UnfitInput& error) {
    for (const base::Fault& fault : error.faults()) {
      outside.err << base::line_of(fault) << '\n';
    }
    return Status::bad_input;
  } catch (const base::BadInput& error) {
    outside.err << error.what() << '\n';
    return Status::bad_input;
  } catch (const base::OurFault& error) {
    outside.err << "rimehaul found itself wrong, and gives no answer: "
                << base::one_line(error.what()) << '\n';
    return Status::our_fault;
  } catch (const std::bad_alloc&) {
    outside.err << "the site needs more memory than there is; use coarser heights, or make several "
                   "sites of it\n";
    return Status::bad_input;
  } catch (const std::exception& error) {
    outside.err << "rimehaul failed, and gives no answer: " << base::one_line(error.what()) << '\n';
    return Status::our_fault;
  }
}

}  // namespace rimehaul::app
