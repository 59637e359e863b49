// Reading numbers and units piece by piece from the front of a text.
#pragma once

#include <optional>
#include <string_view>

#include "basinwright/units/parse.hpp"
#include "names.hpp"

namespace basinwright::units {

/// What a text shall say: a unit of `kind`, or of `kind` for each `per`.
struct Measure {
  std::string_view noun;  ///< Without its article: "length".
  Kind kind = Kind::none;
  Kind per = Kind::none;
  std::string_view units;    ///< For hints when `per` is set; else the table is quoted.
  std::string_view example;  ///< A number as people write it here.
};

/// A text being read; remembers where it stands for the place of an error.
class Scanner {
 public:
  explicit Scanner(std::string_view text) : text_(text) {}
  [[nodiscard]] std::string_view rest() const { return text_.substr(at_); }
  [[nodiscard]] std::size_t offset() const { return at_; }
  void skip(std::size_t bytes) { at_ += bytes; }
  void skip_blanks();
  [[nodiscard]] bool at_number() const;

  /// The number here, moved past. `negative` tells -0 from 0.
  struct Number {
    double magnitude = 0.0;
    bool negative = false;
  };
  [[nodiscard]] Parsed<Number> number();

 private:
  std::string_view text_;
  std::size_t at_ = 0;
};

/// The unit here, moved past: SI units in one of it, and for a plain unit its name in the table.
struct UnitRead {
  double factor = 0.0;
  const UnitName* name = nullptr;
};
[[nodiscard]] Parsed<UnitRead> read_unit(Scanner& scanner, const Measure& wanted);

}  // namespace basinwright::units
