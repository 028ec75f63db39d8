#include "ports/json/orders_json.h"

#include "ports/json/object.h"

namespace rimehaul::ports::json {

std::string orders_json(const std::vector<day::Override>& orders) {
  std::vector<Object> list;
  for (const day::Override& order : orders) {
    Object object;
    object.whole("number", order.number).text("kind", order.kind).text("subject", order.subject);
    object.text("value", order.value).text("reason", order.reason);
    object.text("expires_utc", units::text_of(order.expires)).text("by", order.allowed.by);
    object.text("role", order.allowed.role).text("given_utc", units::text_of(order.allowed.at));
    list.push_back(std::move(object));
  }
  return Object{}.whole("schema", 1).text("kind", "orders").list("orders", list).bytes();
}

}  // namespace rimehaul::ports::json
