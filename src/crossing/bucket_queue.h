// A monotone priority queue over whole numbers: a bucket for each key near the least one.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <deque>
#include <map>
#include <optional>
#include <span>
#include <vector>

namespace rimehaul::crossing {

/// Takes items out in the order of their keys; what is put in meanwhile must have no smaller key
/// than what was taken out last. Among equal keys the order is fixed, but is no promise. Buckets as
/// Dial (1969) has them, for a window of keys; items with keys beyond it wait in blocks of keys. A
/// put costs the same however many items there are. Holds 4 bytes an item and half a kibibyte a
/// bucket in use.
class BucketQueue {
 public:
  using Item = std::uint32_t;
  /// Items of one key; valid until the next call of `take`.
  struct Batch {
    std::uint64_t key = 0;
    std::span<const Item> items;
  };

  BucketQueue() : buckets_(kWindow, nullptr) {}
  BucketQueue(const BucketQueue&) = delete;
  BucketQueue& operator=(const BucketQueue&) = delete;

  /// Requires a key that is not smaller than that of the last batch; OurFault where it is smaller
  /// by more than a block.
  void put(std::uint64_t key, Item item) {
    if (key / kBlock - block_ >= 2) {  // a block already passed wraps to a large number
      put_far(key, item);
      return;
    }
    Chunk*& bucket = buckets_[key % kWindow];
    if (bucket == nullptr || bucket->count == kChunk) {
      bucket = fresh(bucket);
    }
    bucket->items[bucket->count++] = item;
    ++near_;
  }

  /// Some of the items with the least key there is, at most 125; nothing when the queue is empty.
  [[nodiscard]] std::optional<Batch> take();

 private:
  static constexpr std::uint64_t kWindow = 1024;
  static constexpr std::uint64_t kBlock = kWindow / 2;
  static constexpr std::uint32_t kChunk = 125;

  struct Chunk {
    Chunk* next = nullptr;
    std::uint32_t count = 0;
    std::array<Item, kChunk> items{};
  };
  struct FarItem {
    std::uint32_t place = 0;  ///< of the key in its block
    Item item = 0;
  };

  [[nodiscard]] Chunk* fresh(Chunk* next);
  void put_far(std::uint64_t key, Item item);
  void enter(std::uint64_t block);

  // Buckets hold the keys of the block that the least key lies in, and of the next block.
  std::uint64_t least_ = 0;
  std::uint64_t block_ = 0;
  std::size_t near_ = 0;  ///< items in buckets
  std::vector<Chunk*> buckets_;
  std::map<std::uint64_t, std::vector<FarItem>> far_;  ///< by block
  std::deque<Chunk> chunks_;                           ///< all there are
  Chunk* spare_ = nullptr;
  Chunk* taken_ = nullptr;
};

}  // namespace rimehaul::crossing
