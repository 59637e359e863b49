#include "node.hpp"

#include <algorithm>

namespace basinwright::readers {
namespace {

constexpr std::size_t block = 4096;

std::size_t scalars(std::string_view bytes) {
  return static_cast<std::size_t>(std::ranges::count_if(
      bytes, [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

diagnostics::Diagnostic diagnostic(const SourceText& source, Complaint complaint) {
  diagnostics::Diagnostic out{std::string(complaint.code.word),
                              complaint.severity,
                              source.at(complaint.at.begin, complaint.at.end),
                              std::move(complaint.pointer),
                              std::move(complaint.message),
                              std::move(complaint.hint),
                              {}};
  if (complaint.other) out.also = {source.at(complaint.other->begin, complaint.other->end)};
  return out;
}

}  // namespace

SourceText::SourceText(std::string file, std::string bytes)
    : file_(std::move(file)), bytes_(std::move(bytes)) {
  line_starts_.push_back(0);
  for (std::size_t i = bytes_.find('\n'); i != std::string::npos; i = bytes_.find('\n', i + 1))
    line_starts_.push_back(i + 1);
  scalars_.push_back(0);
  const std::string_view all(bytes_);
  for (std::size_t i = 0; i + block <= all.size(); i += block) {
    scalars_.push_back(scalars_.back() + scalars(all.substr(i, block)));
  }
}

std::size_t SourceText::scalars_before(std::size_t offset) const {
  const std::size_t whole = offset / block;
  const std::string_view all(bytes_);
  return scalars_[whole] + scalars(all.substr(whole * block, offset - whole * block));
}

diagnostics::Position SourceText::at(std::size_t begin, std::size_t end) const {
  begin = std::min(begin, bytes_.size());
  end = std::clamp(end, begin, bytes_.size());
  const auto next = std::ranges::upper_bound(line_starts_, begin);
  const std::size_t line = static_cast<std::size_t>(next - line_starts_.begin());
  std::size_t start = line_starts_[line - 1];
  const std::string_view all(bytes_);
  if (start == 0 && all.starts_with("\xEF\xBB\xBF")) start = std::min(begin, std::size_t{3});
  std::size_t stop = next == line_starts_.end() ? end : std::min(end, *next - 1);
  if (stop < end && stop > begin && all[stop - 1] == '\r') --stop;
  const std::size_t before = scalars_before(begin);
  return {file_,
          line,
          before - scalars_before(start) + 1,
          std::max<std::size_t>(1, scalars_before(stop) - before)};
}

void tell(const SourceText& source, diagnostics::Problems& problems, Complaint complaint) {
  if (problems.size() > most_problems) return;
  if (problems.size() == most_problems) {
    complaint = {.code = codes::too_many_problems,
                 .at = {0, 0},
                 .message = "There are more than " + std::to_string(most_problems) + " problems",
                 .hint = "The rest is not said. Is this the file you meant?"};
  }
  problems.add(diagnostic(source, std::move(complaint)));
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
