#include "crossing/bucket_queue.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <random>

#include "base/require.h"

using rimehaul::base::OurFault;
using rimehaul::crossing::BucketQueue;

namespace {

/// Puts and takes at random, and beside it does the same with a sorted map.
void compare_with_map(std::mt19937& dice, std::uint64_t farthest) {
  BucketQueue queue;
  std::multimap<std::uint64_t, std::uint32_t> reference;
  std::uint64_t least = dice() % farthest;
  std::uint32_t item = 0;
  for (int round = 0; round < 400; ++round) {
    for (std::uint64_t left = dice() % 40; left > 0; --left) {
      const std::uint64_t beyond = dice() % farthest;
      const std::uint64_t key = least + beyond * (dice() % 3) / 2;
      queue.put(key, item);
      reference.emplace(key, item++);
    }
    for (std::uint64_t left = dice() % 40; left > 0; --left) {
      const auto batch = queue.take();
      REQUIRE(batch.has_value() == !reference.empty());
      if (!batch.has_value()) {
        break;
      }
      least = batch->key;
      REQUIRE_FALSE(batch->items.empty());
      REQUIRE(least == reference.begin()->first);
      for (const std::uint32_t taken : batch->items) {
        const auto range = reference.equal_range(least);
        const auto found = std::find_if(range.first, range.second,
                                        [&](const auto& pair) { return pair.second == taken; });
        REQUIRE(found != range.second);
        reference.erase(found);
      }
    }
  }
}

}  // namespace

TEST_CASE("items leave the queue in the order of their keys, each of them once") {
  for (std::uint32_t seed = 1; seed <= 40; ++seed) {
    CAPTURE(seed);
    std::mt19937 dice{seed};
    compare_with_map(dice, 3);
    compare_with_map(dice, 256);
    compare_with_map(dice, 1025);
    compare_with_map(dice, 100'000);
    compare_with_map(dice, 4'000'000'000);
  }
}

TEST_CASE("many items of one key come out before any of the next") {
  BucketQueue queue;
  for (std::uint32_t item = 0; item < 1000; ++item) {
    queue.put(7 + item % 2, item);
  }
  std::size_t of_seven = 0;
  while (const auto batch = queue.take()) {
    for (const std::uint32_t item : batch->items) {
      CHECK(item % 2 == batch->key - 7);
    }
    of_seven += batch->key == 7 ? batch->items.size() : 0;
    CHECK((batch->key == 7 || of_seven == 500));
  }
  CHECK(of_seven == 500);
}

TEST_CASE("a key from a block that has passed is our fault") {
  BucketQueue queue;
  queue.put(5'000, 1);
  REQUIRE(queue.take().has_value());
  CHECK_THROWS_AS(queue.put(10, 2), OurFault);
}
