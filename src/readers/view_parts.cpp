#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <utility>

#include "measures.hpp"
#include "view.hpp"

namespace basinwright::readers {
namespace {

constexpr std::array<std::string_view, 12> month_names{"january",
                                                       "february",
                                                       "march",
                                                       "april",
                                                       "may",
                                                       "june",
                                                       "july",
                                                       "august",
                                                       "september",
                                                       "october",
                                                       "november",
                                                       "december"};

// 1 to 12 for "7", "07" or "july"; 0 for anything else.
unsigned month_of(std::string_view key) {
  if (key.size() == 2 && key.starts_with('0')) key.remove_prefix(1);
  for (unsigned m = 1; m <= 12; ++m) {
    if (key == month_names[m - 1] || key == std::to_string(m)) return m;
  }
  return 0;
}

// A list with one value for each field, as an object whose keys are the fields'.
std::shared_ptr<Node> as_object(const Node& list, std::span<const Field> fields) {
  auto object = std::make_shared<Node>();
  object->kind = Node::Kind::object;
  object->begin = list.begin;
  object->end = list.end;
  for (std::size_t i = 0; i < list.items.size() && i < fields.size(); ++i) {
    const Node& item = list.items[i];
    object->members.push_back({std::string(fields[i].key), item.begin, item.end, item});
  }
  return object;
}

}  // namespace

std::optional<View> View::tuple_at(const Field& field, const Node& at, std::string where) {
  const auto least =
      static_cast<std::size_t>(std::ranges::count_if(field.fields, &Field::required));
  if (at.kind != Node::Kind::list || at.items.size() < least ||
      at.items.size() > field.fields.size()) {
    std::string form;
    for (const Field& f : field.fields) form += (form.empty() ? "" : ", ") + std::string(f.key);
    context_->report(codes::wrong_type, at, std::move(where), "A list [" + form + "] belongs here");
    return {};
  }
  auto object = as_object(at, field.fields);
  View view(*object, field.fields, std::move(where), *context_);
  view.owned_ = std::move(object);
  view.by_position_ = true;
  return view;
}

std::optional<View> View::tuple(std::string_view key) {
  const Node* at = node(key);
  return at == nullptr ? std::nullopt : tuple_at(row(key), *at, pointer(key));
}

std::vector<View> View::tuples(std::string_view key) {
  std::vector<View> out;
  const Node* at = of_kind(key, Node::Kind::list);
  if (at == nullptr) return out;
  for (std::size_t i = 0; i < at->items.size(); ++i) {
    auto view = tuple_at(row(key), at->items[i], fmt::format("{}/{}", pointer(key), i));
    if (view) out.push_back(std::move(*view));
  }
  return out;
}

std::optional<std::pair<std::string_view, View>> View::variant(const Field& field,
                                                               const Node& at,
                                                               std::string where) {
  if (at.kind != Node::Kind::object) {
    context_->report(codes::wrong_type,
                     at,
                     std::move(where),
                     fmt::format("{} stands where an object belongs", words(at.kind)));
    return {};
  }
  const auto choices = [&] {
    std::string words;
    for (const Alternative& a : field.alternatives)
      words += (words.empty() ? "" : " ") + std::string(a.kind);
    return words;
  };
  const Node* kind = at.find("kind");
  if (kind == nullptr || kind->kind != Node::Kind::text) {
    const bool missing = kind == nullptr;
    context_->report(missing ? codes::missing_key : codes::wrong_type,
                     missing ? at : *kind,
                     where + "/kind",
                     missing ? "The key \"kind\" is missing" : "\"kind\" is a text",
                     "One of: " + choices() + ".");
    return {};
  }
  const auto of_kind = std::ranges::find(field.alternatives, kind->text, &Alternative::kind);
  if (of_kind == field.alternatives.end()) {
    const std::string known = choices();
    const Field words_of_kind{
        .key = "kind", .type = Type::choice, .doc = "Which form this is", .choices = known};
    static_cast<void>(choice_of(words_of_kind, *kind, Where(where + "/kind"), *context_));
    return {};
  }
  const Alternative& chosen = *of_kind;
  auto fields = std::make_shared<std::vector<Field>>();
  fields->reserve(chosen.fields.size() + field.fields.size() + 1);
  fields->insert(fields->end(), chosen.fields.begin(), chosen.fields.end());
  fields->insert(fields->end(), field.fields.begin(), field.fields.end());
  fields->push_back({.key = "kind", .type = Type::text, .doc = "Which form this is"});
  View view(at, *fields, std::move(where), *context_);
  view.own_fields_ = std::move(fields);
  return std::pair(chosen.kind, std::move(view));
}

std::optional<std::pair<std::string_view, View>> View::variant(std::string_view key) {
  const Node* at = node(key);
  if (at == nullptr) return {};
  return variant(row(key), *at, pointer(key));
}

std::vector<std::pair<std::string_view, View>> View::variants(std::string_view key) {
  std::vector<std::pair<std::string_view, View>> out;
  const Node* at = of_kind(key, Node::Kind::list);
  if (at == nullptr) return out;
  for (std::size_t i = 0; i < at->items.size(); ++i) {
    auto one = variant(row(key), at->items[i], fmt::format("{}/{}", pointer(key), i));
    if (one) out.push_back(std::move(*one));
  }
  return out;
}

std::vector<View> View::objects_at(const Field& field, const Node& at, const std::string& where) {
  std::vector<View> out;
  if (at.kind == Node::Kind::object && field.type == Type::one_or_many) {
    out.emplace_back(at, field.fields, where, *context_);
    return out;
  }
  if (at.kind != Node::Kind::list) {
    context_->report(codes::wrong_type,
                     at,
                     where,
                     fmt::format("{} stands where a list belongs", words(at.kind)));
    return out;
  }
  for (std::size_t i = 0; i < at.items.size(); ++i) {
    const std::string item = fmt::format("{}/{}", where, i);
    if (at.items[i].kind == Node::Kind::object) {
      out.emplace_back(at.items[i], field.fields, item, *context_);
    } else {
      context_->report(codes::wrong_type, at.items[i], item, "An object belongs here");
    }
  }
  return out;
}

std::vector<View> View::objects(std::string_view key) {
  const Node* at = node(key);
  return at == nullptr ? std::vector<View>() : objects_at(row(key), *at, pointer(key));
}

std::vector<std::pair<std::string, View>> View::members(std::string_view key) {
  std::vector<std::pair<std::string, View>> out;
  const Node* at = of_kind(key, Node::Kind::object);
  if (at == nullptr) return out;
  const View map(*at, {}, pointer(key), *context_);
  for (const Member& m : at->members) {
    if (m.value.kind != Node::Kind::object) {
      context_->report(codes::wrong_type, m.value, map.pointer(m.key), "An object belongs here");
      continue;
    }
    out.emplace_back(m.key, View(m.value, row(key).fields, map.pointer(m.key), *context_));
  }
  return out;
}

std::vector<std::pair<std::string, std::vector<View>>> View::member_lists(std::string_view key) {
  std::vector<std::pair<std::string, std::vector<View>>> out;
  const Node* at = of_kind(key, Node::Kind::object);
  if (at == nullptr) return out;
  const View map(*at, {}, pointer(key), *context_);
  for (const Member& m : at->members) {
    out.emplace_back(m.key, objects_at(row(key), m.value, map.pointer(m.key)));
  }
  return out;
}

std::vector<View::Month> View::months(std::string_view key) {
  std::vector<Month> out;
  std::array<const Member*, 12> seen{};
  const Node* at = of_kind(key, Node::Kind::object);
  if (at == nullptr) return out;
  const View map(*at, {}, pointer(key), *context_);
  for (const Member& m : at->members) {
    const unsigned month = month_of(m.key);
    if (month == 0) {
      context_->tell({.code = codes::unknown_key,
                      .at = m.key_span(),
                      .pointer = map.pointer(m.key),
                      .message = "\"" + m.key + "\" is no month",
                      .hint = "Write 1 to 12, or the month's name in small letters."});
      continue;
    }
    const Member* const before = std::exchange(seen[month - 1], &m);
    if (before != nullptr) {
      context_->tell({.code = codes::facts_clash,
                      .at = m.key_span(),
                      .pointer = map.pointer(m.key),
                      .message = "This month stands here twice",
                      .hint = "Keep one of the two.",
                      .other = before->key_span()});
    }
    Field value = row(key);
    value.type = value.element;
    value.key = m.key;
    auto fields = std::make_shared<std::vector<Field>>(1, value);
    View view(*at, *fields, map.pointer(), *context_);
    view.own_fields_ = std::move(fields);
    out.push_back({month, m.key, std::move(view)});
  }
  return out;
}

std::vector<std::pair<const Node*, Where>> View::text_items(std::string_view key) {
  std::vector<std::pair<const Node*, Where>> out;
  const Node* at = of_kind(key, Node::Kind::list);
  if (at == nullptr) return out;
  for (std::size_t i = 0; i < at->items.size(); ++i) {
    const Where where(*this, key, i);
    if (at->items[i].kind == Node::Kind::text) {
      out.emplace_back(&at->items[i], where);
    } else {
      context_->report(codes::wrong_type, at->items[i], where.pointer(), "A text belongs here");
    }
  }
  return out;
}

std::vector<std::string> View::texts(std::string_view key) {
  std::vector<std::string> out;
  for (const auto& [item, where] : text_items(key)) out.push_back(item->text);
  return out;
}

std::vector<dates::Date> View::dates(std::string_view key) {
  std::vector<dates::Date> out;
  for (const auto& [item, where] : text_items(key)) {
    if (const auto day = date_of(*item, where, *context_)) out.push_back(*day);
  }
  return out;
}

std::vector<std::size_t> View::choices(std::string_view key) {
  std::vector<std::size_t> out;
  for (const auto& [item, where] : text_items(key)) {
    if (const auto index = choice_of(row(key), *item, where, *context_)) out.push_back(*index);
  }
  return out;
}

}  // namespace basinwright::readers
