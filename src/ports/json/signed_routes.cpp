// What a signed board says of its routes, read from the JSON that was kept of it.
#include <nlohmann/json.hpp>

#include "ports/json/day_table_json.h"

namespace rimehaul::ports::json {

namespace {

using Tree = nlohmann::json;

/// Anything but these very words is closed.
passage::Verdict verdict_said(const std::string& words) {
  for (const passage::Verdict verdict : {passage::Verdict::open, passage::Verdict::restricted}) {
    if (words == passage::words_for(verdict)) {
      return verdict;
    }
  }
  return passage::Verdict::closed;
}

SignedRoute route_said(const Tree& row) {
  const Tree& as_reported = row.at("cells").at(0);
  return {.name = row.at("name").get<std::string>(),
          .closed_by_hand = row.at("closed_by_hand").get<std::string>(),
          .permitted = row.at("permitted").get<std::string>(),
          .as_reported = verdict_said(as_reported.at("verdict").get<std::string>()),
          .reason = as_reported.at("why").get<std::string>()};
}

}  // namespace

std::optional<std::vector<SignedRoute>> signed_routes(std::string_view board) {
  try {
    const Tree tree = Tree::parse(board);
    // Its first column is the one as reported.
    if (tree.at("kind") != "day_table" || tree.at("columns").at(0).contains("wetness")) {
      return std::nullopt;
    }
    std::vector<SignedRoute> routes;
    for (const Tree& row : tree.at("rows")) {
      routes.push_back(route_said(row));
    }
    return routes;
  } catch (const Tree::exception&) {
    return std::nullopt;
  }
}

}  // namespace rimehaul::ports::json
