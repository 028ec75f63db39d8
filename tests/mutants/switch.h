// What the operators and constants of a mutated source call: the true one, or, where it is the one
// that RIMEHAUL_MUTANT names, another. Included before everything else of such a build.
#pragma once

#include <array>
#include <concepts>
#include <cstdio>
#include <cstdlib>
#include <type_traits>
#include <utility>

namespace rimehaul::mutants {

inline constexpr int kMost = 8192;
inline const int active = [] {
  const char* named = std::getenv("RIMEHAUL_MUTANT");
  return named == nullptr ? -1 : std::atoi(named);
}();

/// 0: never reached, 1: reached, 2: reached, but there is no other operator for these types.
inline std::array<unsigned char, kMost> reached{};
inline const int writes_at_end = std::atexit([] {
  const char* path = std::getenv("RIMEHAUL_MUTANTS_REACHED");
  std::FILE* file = path == nullptr ? nullptr : std::fopen(path, "w");
  if (file != nullptr) {
    for (int i = 0; i < kMost; ++i) {
      if (reached.at(static_cast<std::size_t>(i)) != 0) {
        std::fprintf(file, "%d %d\n", i, reached.at(static_cast<std::size_t>(i)));
      }
    }
    std::fclose(file);
  }
});

inline bool is_active(int id, bool possible) {
  reached[static_cast<std::size_t>(id)] = possible ? 1 : 2;
  return possible && id == active;
}

constexpr bool on(int id, bool possible = true) {
  return std::is_constant_evaluated() ? false : is_active(id, possible);
}

// clang-format off: it reads the operators as names.
// The true operator and the other one, each evaluated once and only if it counts.
#define RIMEHAUL_MUTANT_OF(name, op, other)                                    \
  template <class A, class B>                                                  \
  constexpr auto name(int id, A&& a, B&& b) {                                  \
    constexpr bool kPossible = requires {                                      \
      {                                                                        \
        std::forward<A>(a) other std::forward<B>(b)                            \
        } -> std::same_as<decltype(std::forward<A>(a) op std::forward<B>(b))>; \
    };                                                                         \
    if constexpr (kPossible) {                                                 \
      return on(id) ? std::forward<A>(a) other std::forward<B>(b)              \
                    : std::forward<A>(a) op std::forward<B>(b);                \
    } else {                                                                   \
      (void)on(id, false);                                                     \
      return std::forward<A>(a) op std::forward<B>(b);                         \
    }                                                                          \
  }

RIMEHAUL_MUTANT_OF(less_or_equal_for_less, <, <=)
RIMEHAUL_MUTANT_OF(not_less_for_less, <, >=)
RIMEHAUL_MUTANT_OF(less_for_less_or_equal, <=, <)
RIMEHAUL_MUTANT_OF(greater_for_less_or_equal, <=, >)
RIMEHAUL_MUTANT_OF(greater_or_equal_for_greater, >, >=)
RIMEHAUL_MUTANT_OF(not_greater_for_greater, >, <=)
RIMEHAUL_MUTANT_OF(greater_for_greater_or_equal, >=, >)
RIMEHAUL_MUTANT_OF(less_for_greater_or_equal, >=, <)
RIMEHAUL_MUTANT_OF(not_equal_for_equal, ==, !=)
RIMEHAUL_MUTANT_OF(equal_for_not_equal, !=, ==)
RIMEHAUL_MUTANT_OF(minus_for_plus, +, -)
RIMEHAUL_MUTANT_OF(plus_for_minus, -, +)
RIMEHAUL_MUTANT_OF(divided_for_times, *, /)
RIMEHAUL_MUTANT_OF(times_for_divided, /, *)
#undef RIMEHAUL_MUTANT_OF
// clang-format on

template <class A, class B>
constexpr void minus_for_plus_into(int id, A& a, B&& b) {
  // clang-format off
  constexpr bool kPossible = requires { a -= b; };
  // clang-format on
  if constexpr (kPossible) {
    if (on(id)) {
      a -= b;
      return;
    }
  } else {
    (void)on(id, false);
  }
  a += std::forward<B>(b);
}

template <class A, class B>
constexpr void plus_for_minus_into(int id, A& a, B&& b) {
  if (on(id)) {
    a += b;
  } else {
    a -= b;
  }
}

template <class A>
constexpr auto unchanged_for_negated(int id, A&& a) {
  return on(id) ? std::remove_cvref_t<A>{a} : -a;
}

/// A number a tenth larger, and 0 by one; a whole number larger by one; a truth turned round.
template <class T>
constexpr T changed_number(T value) {
  if constexpr (std::same_as<T, bool>) {
    return !value;
  } else if constexpr (std::integral<T>) {
    return static_cast<T>(value + 1);
  } else {
    return value == T{0} ? T{1} : value * static_cast<T>(1.1);
  }
}

template <class T>
constexpr T changed(int id, const T& value) {
  if constexpr (std::is_arithmetic_v<T>) {
    return on(id) ? changed_number(value) : value;
  } else if constexpr (requires { T{value.value()}; }) {
    return on(id) ? T{changed_number(value.value())} : value;
  } else if constexpr (requires { T::from_ratio(value.ratio()); }) {
    return on(id) ? T::from_ratio(changed_number(value.ratio())) : value;
  } else {
    (void)on(id, false);
    return value;
  }
}

}  // namespace rimehaul::mutants
