// Somebody who does the parts of a long piece of work, several at once where he can.
#pragma once

#include <cstddef>

namespace rimehaul::base {

/// Work in numbered parts, none of which touches what another one changes.
class Work {
 public:
  Work() = default;
  virtual ~Work() = default;
  Work(const Work&) = delete;
  Work& operator=(const Work&) = delete;

  virtual void do_part(std::size_t part) = 0;
};

/// Whoever has work to share out takes one, and knows neither cores nor threads.
class Crew {
 public:
  Crew() = default;
  virtual ~Crew() = default;
  Crew(const Crew&) = delete;
  Crew& operator=(const Crew&) = delete;

  /// Begins the parts in order, each once; none is under way any more when it returns. Throws what
  /// a part threw, and begins no other after it.
  virtual void do_all(Work& work, std::size_t parts) = 0;
};

/// One part after the other.
class CrewOfOne final : public Crew {
 public:
  void do_all(Work& work, std::size_t parts) override {
    for (std::size_t part = 0; part < parts; ++part) {
      work.do_part(part);
    }
  }
};

}  // namespace rimehaul::base
