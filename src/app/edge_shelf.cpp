#include "app/edge_shelf.h"

#include <memory>
#include <utility>

namespace rimehaul::app {

void EdgeShelf::put(std::size_t block, terrain::BlockEdges edges) {
  const int wanted = blocks_->wanted_by(block);
  if (wanted == 0) {
    return;
  }
  {
    const std::scoped_lock one_at_a_time{shelf_};
    edges_[block] = std::make_shared<const terrain::BlockEdges>(std::move(edges));
    wanted_[block] = wanted;
  }
  told_.notify_all();
}

EdgeShelf::Edges EdgeShelf::take(std::optional<std::size_t> block) {
  if (!block) {
    return nullptr;
  }
  const bool is_last = --wanted_[*block] == 0;
  return is_last ? std::exchange(edges_[*block], nullptr) : edges_[*block];
}

std::optional<terrain::EdgesBefore> EdgeShelf::before(std::size_t block) {
  const terrain::Sweep::Before wanted = blocks_->before(block);
  std::unique_lock one_at_a_time{shelf_};
  told_.wait(one_at_a_time, [&] {
    return stopped_ || (is_there(wanted.left) && is_there(wanted.above) && is_there(wanted.corner));
  });
  if (stopped_) {
    return std::nullopt;
  }
  return terrain::EdgesBefore{take(wanted.left), take(wanted.above), take(wanted.corner)};
}

void EdgeShelf::stop() {
  {
    const std::scoped_lock one_at_a_time{shelf_};
    stopped_ = true;
  }
  told_.notify_all();
}

}  // namespace rimehaul::app
