#include "basinwright/readers/change.hpp"

#include <fmt/format.h>
#include <vector>

#include "json_text.hpp"
#include "node.hpp"

namespace basinwright::readers {

std::string in_quotes(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') out += '\\';
    if (static_cast<unsigned char>(c) < 0x20) {
      out += fmt::format("\\u{:04x}", static_cast<unsigned>(c));
    } else {
      out += c;
    }
  }
  return out + "\"";
}

namespace {

// As it stands when it is JSON; quoted when it is bare, such as 9.2 m.
std::string json_of(const std::string& value) {
  const SourceText source("", value);
  diagnostics::Problems ignored;
  Node node;
  const bool is_json = parse_json(source, node, ignored) && ignored.all().empty();
  return is_json ? value : in_quotes(value);
}

// A part of a pointer as the key it stands for, in quotes (RFC 6901 section 4).
std::string key_of(std::string_view part) {
  std::string key;
  for (std::size_t i = 0; i < part.size(); ++i) {
    if (part[i] == '~' && i + 1 < part.size() && (part[i + 1] == '0' || part[i + 1] == '1')) {
      key += part[++i] == '0' ? '~' : '/';
    } else {
      key += part[i];
    }
  }
  return in_quotes(key);
}

std::vector<std::string_view> parts_of(std::string_view pointer) {
  std::vector<std::string_view> parts;
  while (pointer.starts_with('/')) {
    const std::size_t end = std::min(pointer.find('/', 1), pointer.size());
    parts.push_back(pointer.substr(1, end - 1));
    pointer.remove_prefix(end);
  }
  return parts;
}

// The value inside objects for the rest of the way.
std::string wrapped(const std::vector<std::string_view>& rest, const std::string& value) {
  std::string out = value;
  for (auto part = rest.rbegin(); part != rest.rend(); ++part)
    out = fmt::format("{{{}: {}}}", key_of(*part), out);
  return out;
}

bool adds_to(const Node& list, std::string_view part) {
  return part == "-" || part == std::to_string(list.items.size());
}

}  // namespace

std::optional<std::string> with_change(const Input& input, const Change& change) {
  const SourceText source(input.name, input.bytes);
  diagnostics::Problems ignored;
  Node root;
  if (!parse_json(source, root, ignored)) return {};
  if (!change.pointer.empty() && change.pointer.front() != '/') return {};
  std::string out = input.bytes;
  const std::string value = json_of(change.value);
  if (const Node* there = node_at(root, change.pointer)) {
    return out.replace(there->begin, there->end - there->begin, value);
  }
  std::vector<std::string_view> rest = parts_of(change.pointer);
  std::string way;
  while (!rest.empty() && node_at(root, way + "/" + std::string(rest.front())) != nullptr) {
    way += "/" + std::string(rest.front());
    rest.erase(rest.begin());
  }
  const Node& holder = *node_at(root, way);
  const std::string_view next = rest.front();
  rest.erase(rest.begin());
  const bool is_list = holder.kind == Node::Kind::list;
  if (is_list ? !adds_to(holder, next) : holder.kind != Node::Kind::object) return {};
  const bool empty = is_list ? holder.items.empty() : holder.members.empty();
  const std::size_t at = empty     ? holder.end - 1
                         : is_list ? holder.items.back().end
                                   : holder.members.back().value.end;
  const std::string entry = (is_list ? "" : key_of(next) + ": ") + wrapped(rest, value);
  return out.insert(at, (empty ? "" : ", ") + entry);
}

}  // namespace basinwright::readers
