#include "base/fault.h"

#include <utility>

#include "base/one_line.h"

namespace rimehaul::base {

namespace {

void append_part(std::string& line, const std::string& part, const char* separator) {
  if (part.empty()) {
    return;
  }
  if (!line.empty()) {
    line += separator;
  }
  line += one_line(part);
}

}  // namespace

std::string line_of(const Fault& fault) {
  std::string line;
  append_part(line, fault.file, "");
  append_part(line, fault.place, ": ");
  append_part(line, fault.problem, ": ");
  append_part(line, fault.remedy, "; ");
  return line;
}

BadInput::BadInput(Fault fault) : fault_{std::move(fault)}, line_{line_of(fault_)} {}

}  // namespace rimehaul::base
