// A typed value for machine formats: what JSON can say, with exact decimals kept as text.
#pragma once

#include <cstdint>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace basinwright::document {

class Value;
using Array = std::vector<Value>;
/// Members in the order they were added; keys are unique.
using Object = std::vector<std::pair<std::string, Value>>;

/// null, bool, whole number, number, text, list or object.
class Value {
 public:
  using Data = std::variant<std::nullptr_t, bool, std::int64_t, double, std::string, Array, Object>;
  Value() : data_(nullptr) {}
  Value(std::nullptr_t) : data_(nullptr) {}
  Value(bool b) : data_(b) {}
  Value(int i) : data_(std::int64_t{i}) {}
  Value(std::int64_t i) : data_(i) {}
  Value(std::size_t i) : data_(static_cast<std::int64_t>(i)) {}
  Value(double d) : data_(d) {}
  Value(const char* s) : data_(std::string(s)) {}
  Value(std::string s) : data_(std::move(s)) {}
  Value(std::string_view s) : data_(std::string(s)) {}
  Value(Array a) : data_(std::move(a)) {}
  Value(Object o) : data_(std::move(o)) {}
  [[nodiscard]] const Data& data() const { return data_; }
  [[nodiscard]] Data& data() { return data_; }
  [[nodiscard]] bool is_null() const { return std::holds_alternative<std::nullptr_t>(data_); }
  friend bool operator==(const Value&, const Value&) = default;

 private:
  Data data_;
};

}  // namespace basinwright::document
