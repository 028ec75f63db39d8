// One GEOS context per call, and owners for what it hands out.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "geo/region.h"

// GEOS's handles by name only, so that its header stays in the .cpp files.
struct GEOSContextHandle_HS;
struct GEOSGeom_t;
struct GEOSSTRtree_t;

namespace rimehaul::ports::geos {

struct FinishContext {
  void operator()(GEOSContextHandle_HS* context) const;
};
struct DestroyGeometry {
  GEOSContextHandle_HS* context = nullptr;
  void operator()(GEOSGeom_t* geometry) const;
};
struct DestroyTree {
  GEOSContextHandle_HS* context = nullptr;
  void operator()(GEOSSTRtree_t* tree) const;
};
using Geometry = std::unique_ptr<GEOSGeom_t, DestroyGeometry>;
using Tree = std::unique_ptr<GEOSSTRtree_t, DestroyTree>;

/// A GEOS context; not shared between threads. What GEOS says of a failure is kept, not printed.
class Context {
 public:
  Context();
  Context(Context&&) = default;
  Context& operator=(Context&&) = delete;
  ~Context() = default;
  Context(const Context&) = delete;
  Context& operator=(const Context&) = delete;

  [[nodiscard]] GEOSContextHandle_HS* get() const { return context_.get(); }
  [[nodiscard]] Geometry own(GEOSGeom_t* geometry) const { return {geometry, {get()}}; }
  /// The last failure in GEOS's words; "" when there was none.
  [[nodiscard]] const std::string& failure() const { return *failure_; }

  /// The box around two corners, widened to all sides.
  struct Box {
    geo::MapPoint corner;
    geo::MapPoint other_corner;
    units::Metres wider;
  };
  [[nodiscard]] Geometry rectangle(const Box& box) const;
  /// A polygon from closed rings, the outline first. Null when GEOS cannot build it.
  [[nodiscard]] Geometry polygon(const geo::Region& region) const;

 private:
  std::unique_ptr<std::string> failure_;  // stays where the context's callback finds it
  std::unique_ptr<GEOSContextHandle_HS, FinishContext> context_;
};

/// The rings of a polygon handle.
[[nodiscard]] geo::Region region_of(const Context& context, const GEOSGeom_t* polygon);

}  // namespace rimehaul::ports::geos
