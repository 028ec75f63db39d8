// How fast this machine copies memory, for scale beside the other benchmarks.
//
//   build/tests/bench/bench_memory
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstring>
#include <vector>

int main() {
  constexpr std::size_t kBytes = std::size_t{256} << 20U;
  std::vector<char> from(kBytes, 1);
  std::vector<char> to(kBytes, 2);
  double best_s = 1e9;
  for (int round = 0; round < 7; ++round) {
    const auto start = std::chrono::steady_clock::now();
    std::memcpy(to.data(), from.data(), kBytes);
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
    best_s = std::min(best_s, took.count());
  }
  std::printf("copy of 256 MiB, one core, best of 7: %.1f GB/s read and written (%d)\n",
              2.0 * static_cast<double>(kBytes) / best_s / 1e9, to[kBytes / 2]);
  return 0;
}
