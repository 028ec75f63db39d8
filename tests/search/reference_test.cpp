// Agreement with other people's graph libraries, run as a child process.
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <set>
#include <sstream>
#include <string>

#include "near.h"
#include "search/cheapest_paths.h"
#include "search/fake_judge.h"

using namespace rimehaul::search;
using rimehaul::testing::Dice;
using rimehaul::testing::near;

namespace {

/// Reads "node node price" lines; writes distances from node 0 by networkx, the same by scipy, the
/// least worst price by networkx over a maximum in place of the sum, and the prices of the first
/// simple paths from node 0 to the last node.
constexpr const char* kReference = R"(
import itertools, sys
import networkx as nx
from scipy.sparse import csr_matrix
from scipy.sparse.csgraph import dijkstra
rows = [line.split() for line in open(sys.argv[1])]
nodes = int(rows[0][0])
arcs = [(int(a), int(b), float(w)) for a, b, w in rows[1:]]
graph = nx.DiGraph()
graph.add_nodes_from(range(nodes))
graph.add_weighted_edges_from(arcs)
lengths = nx.single_source_dijkstra_path_length(graph, 0)
print('sum', *[repr(float(lengths.get(i, -1))) for i in range(nodes)])
matrix = csr_matrix(([w for _, _, w in arcs], ([a for a, _, _ in arcs], [b for _, b, _ in arcs])),
                    shape=(nodes, nodes))
far = dijkstra(matrix, indices=0)
print('scipy', *[repr(float(d)) if d < 1e300 else '-1' for d in far])
worst = []
levels = sorted({w for _, _, w in arcs})
reached = {0: 0.0}
for level in levels:
    part = nx.DiGraph()
    part.add_node(0)
    part.add_edges_from((a, b) for a, b, w in arcs if w <= level)
    for node in nx.descendants(part, 0):
        reached.setdefault(node, level)
print('worst', *[repr(reached.get(i, -1)) for i in range(nodes)])
paths = nx.shortest_simple_paths(graph, 0, nodes - 1, weight='weight')
cost = lambda path: sum(graph[a][b]['weight'] for a, b in zip(path, path[1:]))
try:
    print('paths', *[repr(cost(path)) for path in itertools.islice(paths, 30)])
except nx.NetworkXNoPath:
    print('paths')
)";

struct Numbered {
  Graph graph;
  Prices prices;
};

/// No arc twice between the same nodes: the references would keep only one.
Numbered random_graph(std::uint32_t seed, std::uint32_t nodes, std::size_t arcs) {
  Dice dice{seed};
  std::set<Arc> all;
  while (all.size() < arcs) {
    const Arc arc{.from = Node{dice.below(nodes)}, .to = Node{dice.below(nodes)}};
    if (arc.from != arc.to) {
      all.insert(arc);
    }
  }
  Prices prices;
  for (std::size_t i = 0; i < all.size(); ++i) {
    prices.push_back(0.125 * (1.0 + dice.below(800)));  // sums of eighths are exact
  }
  return {.graph = Graph{nodes, {all.begin(), all.end()}}, .prices = std::move(prices)};
}

void write_graph(const std::string& path, const Numbered& map) {
  std::ofstream file{path};
  file << map.graph.node_count() << '\n';
  for (std::size_t i = 0; i < map.prices.size(); ++i) {
    const Arc arc = map.graph.arcs()[i];
    file << index_of(arc.from) << ' ' << index_of(arc.to) << ' ' << map.prices[i] << '\n';
  }
  REQUIRE(file.good());
}

/// The answers of the child process, by their first word.
std::map<std::string, std::vector<double>> ask_references(const Numbered& map) {
  std::string folder = (std::filesystem::temp_directory_path() / "rimehaul-graph-XXXXXX").string();
  REQUIRE(mkdtemp(folder.data()) != nullptr);
  write_graph(folder + "/graph.txt", map);
  std::ofstream{folder + "/reference.py"} << kReference;
  const std::string command =
      "/usr/bin/python3 " + folder + "/reference.py " + folder + "/graph.txt 2>&1";
  FILE* child = popen(command.c_str(), "r");
  REQUIRE(child != nullptr);
  std::string said;
  std::array<char, 4096> part{};
  while (std::fgets(part.data(), static_cast<int>(part.size()), child) != nullptr) {
    said += part.data();
  }
  const int status = pclose(child);
  std::filesystem::remove_all(folder);
  REQUIRE_MESSAGE(status == 0, "packages python3-networkx and python3-scipy are needed: " << said);
  std::map<std::string, std::vector<double>> answers;
  std::istringstream lines{said};
  for (std::string line; std::getline(lines, line);) {
    std::istringstream words{line};
    std::string name;
    words >> name;
    auto& numbers = answers[name];
    for (double number = 0; words >> number;) {
      numbers.push_back(number);
    }
  }
  return answers;
}

void check_same(const std::vector<double>& wanted, const Reach& reach) {
  REQUIRE(wanted.size() == reach.price.size());
  std::size_t reached = 0;
  std::size_t different = 0;
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    const bool is_reached = reach.price[i] < kBarred;
    const bool same = is_reached ? near(reach.price[i], wanted[i], 1e-9) : wanted[i] == -1;
    different += same ? 0U : 1U;
    reached += is_reached ? 1U : 0U;
  }
  CHECK(different == 0);
  CHECK(reached > wanted.size() / 2);
}

}  // namespace

TEST_CASE("networkx and scipy find the same shortest ways, worst prices and loopless ways") {
  std::size_t ways = 0;
  for (const std::uint32_t seed : {1U, 2U, 3U}) {
    CAPTURE(seed);
    const Numbered map = random_graph(seed, 200, 900);
    auto answers = ask_references(map);
    check_same(answers["sum"], map.graph.reach_from(Node{0}, map.prices, Combining::sum));
    check_same(answers["scipy"], map.graph.reach_from(Node{0}, map.prices, Combining::sum));
    check_same(answers["worst"], map.graph.reach_from(Node{0}, map.prices, Combining::maximum));

    CheapestPaths paths{map.graph, map.prices, {.from = Node{0}, .to = Node{199}}};
    std::vector<double> found;
    for (auto path = paths.next(); path.has_value() && found.size() < 30; path = paths.next()) {
      found.push_back(path->price);
    }
    CHECK(found == answers["paths"]);
    ways += found.size();
  }
  CHECK(ways >= 60);
}
