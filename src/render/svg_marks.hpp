// Marks of a drawing as elements, with the definitions they call for.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "basinwright/document/drawing.hpp"

namespace basinwright::render {

/// Writes marks and gathers the patterns and clip paths they use.
class SvgMarks {
 public:
  /// @param prefix  Begins every identifier.
  explicit SvgMarks(std::string_view prefix) : prefix_(prefix) {}

  void operator()(const document::Shape& shape);
  void operator()(const document::Label& label);

  /// The `defs` element; empty when nothing was called for.
  [[nodiscard]] std::string definitions() const;
  [[nodiscard]] const std::string& elements() const { return elements_; }

 private:
  [[nodiscard]] std::string paint_of(document::Fill fill);
  [[nodiscard]] std::string clip_of(const std::vector<document::Trail>& within);

  std::string prefix_;
  std::vector<document::Fill> patterns_;
  std::vector<std::string> clips_;
  std::string elements_;
};

}  // namespace basinwright::render
