#include "view.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "basinwright/sources/pointer.hpp"
#include "measures.hpp"

namespace basinwright::readers {
namespace {

std::vector<std::string_view> split(std::string_view words) {
  std::vector<std::string_view> out;
  while (!words.empty()) {
    const std::size_t space = std::min(words.find(' '), words.size());
    out.push_back(words.substr(0, space));
    words.remove_prefix(std::min(space + 1, words.size()));
  }
  return out;
}

std::optional<std::size_t> place_among(std::string_view words, std::string_view word) {
  for (std::size_t place = 0; !words.empty(); ++place) {
    const std::size_t space = std::min(words.find(' '), words.size());
    if (words.substr(0, space) == word) return place;
    words.remove_prefix(std::min(space + 1, words.size()));
  }
  return {};
}

std::string joined(const std::vector<std::string_view>& words) {
  std::string out;
  for (const std::string_view w : words) out += (out.empty() ? "" : ", ") + std::string(w);
  return out;
}

}  // namespace

void Context::report(
    Code code, const Node& node, std::string pointer, std::string message, std::string hint) {
  tell({.code = code,
        .at = node.span(),
        .pointer = std::move(pointer),
        .message = std::move(message),
        .hint = std::move(hint)});
}

std::string_view Context::keep(std::string pointer) {
  return places->emplace_back(std::move(pointer));
}

std::string Where::pointer() const {
  if (view_ == nullptr) return text_;
  std::string pointer = view_->pointer(key_);
  if (item_) pointer += '/' + std::to_string(*item_);
  return pointer;
}

View::View(const Node& node, std::span<const Field> fields, std::string pointer, Context& context)
    : node_(&node), fields_(fields), pointer_(std::move(pointer)), context_(&context) {}

std::string View::pointer(std::string_view key) const {
  const std::string part =
      by_position_ ? std::to_string(&row(key) - fields_.data()) : sources::pointer_part(key);
  std::string out;
  out.reserve(pointer_.size() + 1 + part.size());
  out += pointer_;
  out += '/';
  out += part;
  return out;
}

const Field& View::row(std::string_view key) const {
  const auto it = std::ranges::find(fields_, key, &Field::key);
  if (it == fields_.end()) throw std::logic_error("no row for key " + std::string(key));
  return *it;
}

void View::fail(
    const Node& at, std::string_view key, Code code, std::string message, std::string hint) {
  context_->report(code, at, pointer(key), std::move(message), std::move(hint));
}

const Node* View::node(std::string_view key) {
  static_cast<void>(row(key));
  return node_->find(key);
}

const Node* View::of_kind(std::string_view key, Node::Kind kind) {
  const Node* at = node(key);
  if (at == nullptr || at->kind == kind) return at;
  fail(*at,
       key,
       codes::wrong_type,
       "\"" + std::string(key) + "\" is " + std::string(words(at->kind)) + ", but " +
           std::string(words(kind)) + " belongs here");
  return nullptr;
}

std::optional<std::string> View::text(std::string_view key) {
  const Node* at = of_kind(key, Node::Kind::text);
  return at == nullptr ? std::nullopt : std::optional(at->text);
}

std::optional<bool> View::boolean(std::string_view key) {
  const Node* at = of_kind(key, Node::Kind::boolean);
  return at == nullptr ? std::nullopt : std::optional(at->truth);
}

bool View::within(const Field& field, double si, const Node& at, const Where& where) {
  const bool low = field.above_low ? si > field.low : si >= field.low;
  if (low && si >= least_of(field) && si <= field.high) return true;
  auto [code, message] = outside(field, si);
  context_->report(code, at, where.pointer(), std::move(message));
  return false;
}

std::optional<double> View::number_of(const Node& at, const Where& where) {
  const auto parsed = units::parse_number(at.text);
  if (const double* value = std::get_if<double>(&parsed)) return *value;
  context_->report(codes::number_range,
                   at,
                   where.pointer(),
                   "This number is too small or too large to reckon with",
                   "Write a number that a tape, scale or price could give.");
  return {};
}

std::optional<double> View::number(std::string_view key) {
  const Node* at = of_kind(key, Node::Kind::number);
  if (at == nullptr) return {};
  const Where where(*this, key);
  const auto value = number_of(*at, where);
  if (!value || !within(row(key), *value, *at, where)) return {};
  return value;
}

std::optional<int> View::whole(std::string_view key) {
  const std::optional<double> value = number(key);
  if (!value) return {};
  if (*value != std::floor(*value) || std::abs(*value) > 1e9) {
    fail(*node(key), key, codes::wrong_type, "\"" + std::string(key) + "\" takes a whole number");
    return {};
  }
  return static_cast<int>(*value);
}

std::optional<std::size_t> View::choice(std::string_view key) {
  const Node* at = of_kind(key, Node::Kind::text);
  if (at == nullptr) return {};
  return choice_of(row(key), *at, Where(*this, key), *context_);
}

std::optional<dates::Date> View::date(std::string_view key) {
  const Node* at = of_kind(key, Node::Kind::text);
  if (at == nullptr) return {};
  return date_of(*at, Where(*this, key), *context_);
}

std::optional<dates::Moment> View::moment(std::string_view key) {
  const Node* at = of_kind(key, Node::Kind::text);
  if (at == nullptr) return {};
  const auto when = dates::parse_moment(at->text);
  if (!when) {
    fail(*at,
         key,
         codes::not_a_date,
         "\"" + at->text + "\" is no time on a quarter hour",
         "Write it as 2027-05-31T08:15.");
  }
  return when;
}

std::optional<std::pair<int, int>> View::hours(std::string_view key) {
  const Node* at = of_kind(key, Node::Kind::list);
  if (at == nullptr) return {};
  if (at->items.size() == 2 && at->items[0].kind == Node::Kind::text &&
      at->items[1].kind == Node::Kind::text) {
    const auto from = dates::parse_clock(at->items[0].text);
    const auto to = dates::parse_clock(at->items[1].text);
    if (from && to && *from < *to) return std::pair(*from, *to);
  }
  fail(*at,
       key,
       codes::not_hours,
       "These are not two times of a day",
       "Write them as [\"07:00\", \"16:00\"], on a quarter hour.");
  return {};
}

std::optional<int> View::year(std::string_view key) {
  const Node* at = node(key);
  if (at == nullptr || (at->kind == Node::Kind::text && at->text == "unknown")) return {};
  if (at->kind != Node::Kind::text && at->kind != Node::Kind::number) {
    fail(*at, key, codes::wrong_type, "A year is a number, or a text such as \"2019\"");
    return {};
  }
  const Field& field = row(key);
  const bool day = dates::parse_date(at->text).has_value();
  const auto value = units::parse_number(day ? at->text.substr(0, 4) : at->text);
  const double* year = std::get_if<double>(&value);
  if (year == nullptr || *year != std::floor(*year) || *year < field.low || *year > field.high) {
    fail(*at,
         key,
         codes::not_a_date,
         "\"" + at->text + "\" is no year",
         "Write 2019, \"2019-06-01\" or \"unknown\".");
    return {};
  }
  return static_cast<int>(*year);
}

std::optional<std::string> View::money(std::string_view key) {
  const Node* at = node(key);
  if (at == nullptr) return {};
  if (at->kind != Node::Kind::text && at->kind != Node::Kind::number) {
    fail(*at, key, codes::wrong_type, "An amount is a number or a text such as \"12.50\"");
    return {};
  }
  const auto value = units::parse_number(at->text);
  const bool plain = at->text.find_first_not_of("0123456789.-") == std::string::npos;
  if (!plain || !std::holds_alternative<double>(value)) {
    fail(*at,
         key,
         codes::not_an_amount,
         "\"" + at->text + "\" is not an amount of money",
         "Write it as \"12.50\".");
    return {};
  }
  if (!within(row(key), std::get<double>(value), *at, Where(*this, key))) return {};
  return at->text;
}

std::optional<View> View::object(std::string_view key) {
  const Node* at = of_kind(key, Node::Kind::object);
  if (at == nullptr) return {};
  return View(*at, row(key).fields, pointer(key), *context_);
}

void View::set_number(std::string_view key, sources::Sourced<double>& target) {
  if (const auto value = number(key)) {
    target = {*value, {sources::Kind::given, "", context_->keep(pointer(key))}};
  }
}

void View::set_whole(std::string_view key, sources::Sourced<double>& target) {
  if (const auto value = whole(key)) {
    target = {static_cast<double>(*value),
              {sources::Kind::given, "", context_->keep(pointer(key))}};
  }
}

void View::clash(std::string_view key,
                 std::string_view other,
                 std::string message,
                 std::string hint) {
  if (!has(key)) std::swap(key, other);
  const Node* beside = node(other);
  context_->tell({.code = codes::facts_clash,
                  .at = node(key)->span(),
                  .pointer = pointer(key),
                  .message = std::move(message),
                  .hint = std::move(hint),
                  .other = beside == nullptr ? std::nullopt : std::optional(beside->span())});
}

void View::finish() {
  if (context_->problems.size() > most_problems) return;
  for (const Member& member : node_->members) {
    const bool known_here = std::ranges::find(fields_, member.key, &Field::key) != fields_.end();
    if (known_here || member.key == "$schema") continue;
    std::vector<std::string_view> known;
    for (const Field& field : fields_) known.push_back(field.key);
    const std::string_view near = diagnostics::nearest(member.key, known);
    context_->tell({.code = codes::unknown_key,
                    .at = member.key_span(),
                    .pointer = pointer_ + "/" + sources::pointer_part(member.key),
                    .message = "There is no key \"" + member.key + "\" here",
                    .hint = near.empty() ? "Known here: " + joined(known) + "."
                                         : "Did you mean \"" + std::string(near) + "\"?"});
  }
  for (const Field& field : fields_) {
    if (!field.required || node_->find(field.key) != nullptr) continue;
    context_->report(codes::missing_key,
                     *node_,
                     pointer(field.key),
                     "The key \"" + std::string(field.key) + "\" is missing",
                     std::string(field.doc) + ".");
  }
}

std::optional<dates::Date> date_of(const Node& at, const Where& where, Context& context) {
  const auto day = dates::parse_date(at.text);
  if (!day) {
    context.report(codes::not_a_date,
                   at,
                   where.pointer(),
                   "\"" + at.text + "\" is no day of the calendar",
                   "Write it as 2027-05-31, in a year from 1900 to 9990.");
  }
  return day;
}

std::optional<std::size_t> choice_of(const Field& field,
                                     const Node& at,
                                     const Where& where,
                                     Context& context) {
  if (const auto place = place_among(field.choices, at.text)) return place;
  const auto choices = split(field.choices);
  const std::string_view near = diagnostics::nearest(at.text, choices);
  context.report(codes::not_a_choice,
                 at,
                 where.pointer(),
                 "\"" + at.text + "\" is none of: " + joined(choices),
                 near.empty() ? "" : "Did you mean \"" + std::string(near) + "\"?");
  return {};
}

}  // namespace basinwright::readers
