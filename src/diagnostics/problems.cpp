#include <algorithm>
#include <tuple>
#include <utility>

#include "basinwright/diagnostics/diagnostic.hpp"

namespace basinwright::diagnostics {
namespace {

bool any(const std::vector<Diagnostic>& all, Severity severity) {
  return std::ranges::any_of(all,
                             [severity](const Diagnostic& d) { return d.severity == severity; });
}

bool stands_before(const Diagnostic& a, const Diagnostic& b) {
  return std::tie(a.at.file, a.at.line, a.at.column) < std::tie(b.at.file, b.at.line, b.at.column);
}

}  // namespace

void Problems::add(Diagnostic diagnostic) {
  all_.push_back(std::move(diagnostic));
}

void Problems::append(const Problems& other) {
  const std::vector<Diagnostic> theirs = other.all_;  // `other` may be this very list
  all_.insert(all_.end(), theirs.begin(), theirs.end());
}

bool Problems::has_errors() const {
  return any(all_, Severity::error);
}

bool Problems::has_warnings() const {
  return any(all_, Severity::warning);
}

std::vector<Diagnostic> Problems::sorted() const {
  std::vector<Diagnostic> out = all_;
  std::ranges::stable_sort(out, stands_before);
  return out;
}

std::string_view name(Severity severity) {
  switch (severity) {
    case Severity::error:
      return "error";
    case Severity::warning:
      return "warning";
    case Severity::note:
      return "note";
  }
  return "";
}

}  // namespace basinwright::diagnostics
