// The verb `rig`: the sheet of a rig as it stands.
#include "app/rig_command.h"

#include <utility>

#include "app/answer.h"
#include "app/input_files.h"
#include "app/print_doubts.h"
#include "app/question.h"
#include "app/versions.h"
#include "card/rig_sheet.h"
#include "ports/cairo/rig_page.h"
#include "ports/json/rig_json.h"
#include "ports/qpdf/finish_pdf.h"

namespace rimehaul::app {

Status show_rig(const RigSheetOptions& options, const Outside& outside) {
  const LoadedSite site = load_usable_site(options.common.site);
  RigOptions asked = options.rig;
  asked.towed_kg = asked.towed_kg.value_or(0.0);
  card::RigSheet sheet = card::rig_sheet(rig_as_loaded(site, asked), site.scene->rules);
  sheet.site = site.name;
  sheet.made_from = made_from(inputs_of_rigs(site.inputs), outside);
  Answer answer{.text = card::text_of(sheet, kColumns), .json = ports::json::rig_sheet_json(sheet)};
  if (options.svg) {
    answer.files.push_back(
        {*options.svg, ports::cairo::rig_page(sheet, ports::cairo::Form::svg).bytes});
  }
  if (options.pdf) {
    doubt_letters_on_paper(site, answer);
    answer.files.push_back(
        {*options.pdf,
         ports::qpdf::finish_pdf(ports::cairo::rig_page(sheet, ports::cairo::Form::pdf),
                                 {.title = "Rig sheet: " + sheet.rig})});
  }
  give_answer(std::move(answer), options.common, outside);
  return sheet.within_ratings() ? Status::yes : Status::honest_no;
}

}  // namespace rimehaul::app
