#include "crossing/bucket_queue.h"

#include "base/require.h"

namespace rimehaul::crossing {

BucketQueue::Chunk* BucketQueue::fresh(Chunk* next) {
  Chunk* chunk = spare_;
  if (chunk == nullptr) {
    chunk = &chunks_.emplace_back();
  } else {
    spare_ = chunk->next;
  }
  chunk->next = next;
  chunk->count = 0;
  return chunk;
}

void BucketQueue::put_far(std::uint64_t key, Item item) {
  base::require(key >= least_, "a queue of rising keys was given a smaller one");
  far_[key / kBlock].push_back({static_cast<std::uint32_t>(key % kBlock), item});
}

void BucketQueue::enter(std::uint64_t block) {
  block_ = block;
  least_ = block * kBlock;
  const auto found = far_.find(block);
  if (found == far_.end()) {
    return;
  }
  for (const FarItem& one : found->second) {
    put(least_ + one.place, one.item);
  }
  far_.erase(found);
}

std::optional<BucketQueue::Batch> BucketQueue::take() {
  if (taken_ != nullptr) {
    taken_->next = spare_;
    spare_ = taken_;
    taken_ = nullptr;
  }
  if (near_ == 0) {
    if (far_.empty()) {
      return std::nullopt;
    }
    enter(far_.begin()->first);
  }
  while (buckets_[least_ % kWindow] == nullptr) {
    ++least_;
    if (least_ % kBlock == 0) {
      enter(least_ / kBlock);
    }
  }
  Chunk*& bucket = buckets_[least_ % kWindow];
  taken_ = bucket;
  bucket = bucket->next;
  near_ -= taken_->count;
  return Batch{.key = least_, .items = {taken_->items.data(), taken_->count}};
}

}  // namespace rimehaul::crossing
