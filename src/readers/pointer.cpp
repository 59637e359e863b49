// JSON Pointers (RFC 6901) into the tree.
#include <algorithm>
#include <charconv>
#include <system_error>

#include "basinwright/sources/pointer.hpp"
#include "node.hpp"

namespace basinwright::readers {
namespace {

// RFC 6901 section 4: digits alone, without a leading zero.
const Node* item_of(const Node& list, std::string_view part) {
  if (part.size() > 1 && part.front() == '0') return nullptr;
  std::size_t index = 0;
  const char* const last = part.data() + part.size();
  const auto [stop, fault] = std::from_chars(part.data(), last, index);
  if (fault != std::errc() || stop != last || index >= list.items.size()) return nullptr;
  return &list.items[index];
}

const Node* member_of(const Node& object, std::string_view part) {
  const auto it = std::ranges::find_if(
      object.members, [&](const Member& m) { return sources::pointer_part(m.key) == part; });
  return it == object.members.end() ? nullptr : &it->value;
}

// The node as far down the pointer as there is one; `rest` is what is left of it then.
const Node& descend(const Node& root, std::string_view& rest) {
  const Node* at = &root;
  while (rest.starts_with('/')) {
    const std::string_view part = rest.substr(1, rest.find('/', 1) - 1);
    const Node* next = at->kind == Node::Kind::list ? item_of(*at, part) : member_of(*at, part);
    if (next == nullptr) break;
    at = next;
    rest.remove_prefix(part.size() + 1);
  }
  return *at;
}

}  // namespace

const Node* node_at(const Node& root, std::string_view pointer) {
  const Node& at = descend(root, pointer);
  return pointer.empty() ? &at : nullptr;
}

const Node& nearest_node(const Node& root, std::string_view pointer) {
  return descend(root, pointer);
}

}  // namespace basinwright::readers
