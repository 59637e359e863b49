#include "node.hpp"

#include <algorithm>

namespace basinwright::readers {

SourceText::SourceText(std::string file, std::string bytes)
    : file_(std::move(file)), bytes_(std::move(bytes)) {
  line_starts_.push_back(0);
  for (std::size_t i = 0; i < bytes_.size(); ++i) {
    if (bytes_[i] == '\n') line_starts_.push_back(i + 1);
  }
}

namespace {

std::size_t scalars(std::string_view bytes) {
  return static_cast<std::size_t>(std::ranges::count_if(
      bytes, [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

}  // namespace

diagnostics::Position SourceText::at(std::size_t begin, std::size_t end) const {
  begin = std::min(begin, bytes_.size());
  end = std::clamp(end, begin, bytes_.size());
  const auto next = std::ranges::upper_bound(line_starts_, begin);
  const std::size_t line = static_cast<std::size_t>(next - line_starts_.begin());
  std::size_t start = line_starts_[line - 1];
  if (start == 0 && std::string_view(bytes_).starts_with("\xEF\xBB\xBF"))
    start = std::min(begin, std::size_t{3});
  const std::string_view all(bytes_);
  const std::size_t stop = std::min(end, all.find('\n', begin));
  return {file_,
          line,
          scalars(all.substr(start, begin - start)) + 1,
          std::max<std::size_t>(1, scalars(all.substr(begin, stop - begin)))};
}

const Node* Node::find(std::string_view key) const {
  const auto it = std::ranges::find(members, key, &Member::key);
  return it == members.end() ? nullptr : &it->value;
}

std::string_view words(Node::Kind kind) {
  switch (kind) {
    case Node::Kind::null:
      return "null";
    case Node::Kind::boolean:
      return "true or false";
    case Node::Kind::number:
      return "a number";
    case Node::Kind::text:
      return "a text";
    case Node::Kind::list:
      return "a list";
    case Node::Kind::object:
      return "an object";
  }
  return "";
}

}  // namespace basinwright::readers
