// Typed reading of a JSON object through its rows of the field table.
#pragma once

#include <deque>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "basinwright/dates/date.hpp"
#include "basinwright/money/money.hpp"
#include "basinwright/readers/field.hpp"
#include "basinwright/sources/source.hpp"
#include "basinwright/units/parse.hpp"
#include "node.hpp"

namespace basinwright::readers {

/// What one file's reading shares: its text, the problems found, the meaning of bare numbers.
struct Context {
  const SourceText& source;
  diagnostics::Problems& problems;
  units::System system = units::System::metric;
  std::shared_ptr<std::deque<std::string>> places = std::make_shared<std::deque<std::string>>();

  void report(
      Code code, const Node& node, std::string pointer, std::string message, std::string hint = {});
  void tell(Complaint complaint) { readers::tell(source, problems, std::move(complaint)); }
  /// The pointer as a text that lives as long as `places`.
  [[nodiscard]] std::string_view keep(std::string pointer);
};

class View;

/// A place in the file, put into words only when there is something to say of it.
class Where {
 public:
  explicit Where(std::string pointer) : text_(std::move(pointer)) {}
  /// A key of an object, or an item of the list there; the view must outlive it.
  Where(const View& view, std::string_view key, std::optional<std::size_t> item = {})
      : view_(&view), key_(key), item_(item) {}
  [[nodiscard]] std::string pointer() const;

 private:
  const View* view_ = nullptr;
  std::string_view key_;
  std::optional<std::size_t> item_;
  std::string text_;
};

/// A JSON object seen through its table. Each getter checks type, unit and limits by the key's row,
/// reports what is wrong in place, and gives nothing then or when the key is absent. A key that no
/// row names is reported by `finish`.
/// @throws std::logic_error when asked for a key that its table does not have
class View {
 public:
  View(const Node& node, std::span<const Field> fields, std::string pointer, Context& context);

  [[nodiscard]] const Node* node(std::string_view key);
  [[nodiscard]] std::optional<std::string> text(std::string_view key);
  [[nodiscard]] std::optional<double> number(std::string_view key);
  [[nodiscard]] std::optional<int> whole(std::string_view key);
  [[nodiscard]] std::optional<bool> boolean(std::string_view key);
  /// The position of the word in the row's choices.
  [[nodiscard]] std::optional<std::size_t> choice(std::string_view key);
  [[nodiscard]] std::optional<dates::Date> date(std::string_view key);
  [[nodiscard]] std::optional<dates::Moment> moment(std::string_view key);
  /// Two clock times in quarters from midnight.
  [[nodiscard]] std::optional<std::pair<int, int>> hours(std::string_view key);
  /// Nothing for "unknown" too.
  [[nodiscard]] std::optional<int> year(std::string_view key);
  [[nodiscard]] std::optional<std::string> money(std::string_view key);
  /// A share that money is multiplied by; one finer than a millionth is reported.
  [[nodiscard]] std::optional<money::Percentage> percentage(std::string_view key);

  /// Any quantity, temperature or fraction; the row's type must be Q's.
  template <class Q>
  [[nodiscard]] std::optional<Q> measure(std::string_view key);
  /// Overwrites `target` when the key is there, with its place in the file as the source.
  template <class Q>
  void set(std::string_view key, sources::Sourced<Q>& target);
  void set_number(std::string_view key, sources::Sourced<double>& target);
  void set_whole(std::string_view key, sources::Sourced<double>& target);

  [[nodiscard]] std::optional<View> object(std::string_view key);
  /// The variant at `key`: its kind and a view of it; nothing when the kind is missing or unknown.
  [[nodiscard]] std::optional<std::pair<std::string_view, View>> variant(std::string_view key);
  /// The items of a list of variants.
  [[nodiscard]] std::vector<std::pair<std::string_view, View>> variants(std::string_view key);
  /// Items of a list of objects, of a map's members, or of one-or-many.
  [[nodiscard]] std::vector<View> objects(std::string_view key);
  [[nodiscard]] std::vector<std::pair<std::string, View>> members(std::string_view key);
  [[nodiscard]] std::vector<std::pair<std::string, std::vector<View>>> member_lists(
      std::string_view key);
  /// A tuple as a view with one pseudo-key for each of its fields.
  [[nodiscard]] std::optional<View> tuple(std::string_view key);
  [[nodiscard]] std::vector<View> tuples(std::string_view key);
  /// A list of texts, of days, of choices (as positions), or of measures.
  [[nodiscard]] std::vector<std::string> texts(std::string_view key);
  [[nodiscard]] std::vector<dates::Date> dates(std::string_view key);
  [[nodiscard]] std::vector<std::size_t> choices(std::string_view key);
  template <class Q>
  [[nodiscard]] std::vector<Q> measures(std::string_view key);
  /// Values of a by_month object, each as a view that knows its one key.
  struct Month;
  [[nodiscard]] std::vector<Month> months(std::string_view key);

  [[nodiscard]] bool has(std::string_view key) const { return node_->find(key) != nullptr; }
  [[nodiscard]] const std::string& pointer() const { return pointer_; }
  [[nodiscard]] std::string pointer(std::string_view key) const;
  [[nodiscard]] const Node& raw() const { return *node_; }
  [[nodiscard]] Context& context() { return *context_; }
  /// Reports two keys whose values clash, both places shown; one of them may rest on its default.
  void clash(std::string_view key,
             std::string_view other,
             std::string message,
             std::string hint = {});
  /// Reports keys the table does not have and required ones that are missing. Call once, at the
  /// end.
  void finish();

 private:
  [[nodiscard]] const Field& row(std::string_view key) const;
  [[nodiscard]] const Node* of_kind(std::string_view key, Node::Kind kind);
  void fail(
      const Node& at, std::string_view key, Code code, std::string message, std::string hint = {});
  [[nodiscard]] bool within(const Field& field, double si, const Node& at, const Where& where);
  [[nodiscard]] std::optional<double> number_of(const Node& at, const Where& where);
  template <class Q>
  [[nodiscard]] std::optional<Q> parse(const Field& field, const Node& at, const Where& where);
  template <class Q>
  [[nodiscard]] std::optional<Q> read(const Field& field, const Node& at, const Where& where);
  [[nodiscard]] std::optional<View> tuple_at(const Field& field, const Node& at, std::string where);
  [[nodiscard]] std::optional<std::pair<std::string_view, View>> variant(const Field& field,
                                                                         const Node& at,
                                                                         std::string where);
  /// The texts in a list, each with its place.
  [[nodiscard]] std::vector<std::pair<const Node*, Where>> text_items(std::string_view key);
  [[nodiscard]] std::vector<View> objects_at(const Field& field,
                                             const Node& at,
                                             const std::string& where);

  std::shared_ptr<Node> owned_;  ///< Of a tuple: members made from its items.
  std::shared_ptr<std::vector<Field>>
      own_fields_;  ///< Of a variant: its form's and the common ones.
  const Node* node_;
  std::span<const Field> fields_;
  std::string pointer_;
  Context* context_;
  bool by_position_ = false;  ///< Of a tuple: its keys stand for places in a list.
};

struct View::Month {
  unsigned number = 0;
  std::string_view key;  ///< As written.
  View view;
};

}  // namespace basinwright::readers
