#include "pack_reader.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>
#include <utility>

#include "basinwright/quote/purchases.hpp"
#include "basinwright/sources/pointer.hpp"
#include "basinwright/units/unit.hpp"
#include "product_reader.hpp"

namespace basinwright::readers {
namespace {

using quote::Measure;

struct Size {
  std::int64_t count = 0;  ///< Millilitres, grams or pieces: what the pack choice counts in.
  Measure measure = Measure::pieces;
};

std::string_view measure_words(Measure measure) {
  if (measure == Measure::volume) return "volume";
  return measure == Measure::mass ? "mass" : "pieces";
}

// Reads the sizes of one item's packs, which must all be of one kind.
class Sizes {
 public:
  explicit Sizes(std::optional<Measure> wanted) : wanted_(wanted) {}

  std::optional<std::int64_t> operator()(View& view) {
    const Node* at = view.node("size");
    if (at == nullptr) return {};
    const auto size = read(view, *at);
    if (!size || !fits(view, *at, *size)) return {};
    return size->count;
  }

 private:
  static std::optional<Size> read(View& view, const Node& at) {
    if (at.kind == Node::Kind::number) {
      const auto number = units::parse_number(at.text);
      const double* pieces = std::get_if<double>(&number);
      return whole(view, at, {Measure::pieces, pieces == nullptr ? 0.0 : *pieces});
    }
    if (at.kind == Node::Kind::text) {
      const auto volume = units::parse_volume(at.text);
      if (const auto* v = std::get_if<units::Volume>(&volume))
        return whole(view, at, {Measure::volume, v->in(units::millilitres)});
      const auto mass = units::parse_mass(at.text);
      if (const auto* m = std::get_if<units::Mass>(&mass))
        return whole(view, at, {Measure::mass, m->in(units::grams)});
    }
    view.context().report(at.kind == Node::Kind::text ? codes::not_a_measure : codes::wrong_type,
                          at,
                          view.pointer("size"),
                          at.kind == Node::Kind::text
                              ? "\"" + at.text + "\" is no volume and no mass"
                              : "The size of a pack is a text or a number",
                          "Write \"20 L\", \"25 kg\" or a bare number of pieces.");
    return {};
  }

  // A US gallon is no whole number of millilitres. Rounding up lets n packs cover n kits of the
  // same size, whose sum is rounded up once.
  static std::optional<Size> whole(View& view, const Node& at, std::pair<Measure, double> s) {
    constexpr double largest = 1e9;
    constexpr double slack = 1e-6;
    const auto [measure, count] = s;
    const bool split = measure == Measure::pieces && count != std::floor(count);
    if (count > 0.0 && count <= largest && !split) {
      return Size{std::max(1LL, std::llround(std::ceil(count - slack))), measure};
    }
    view.context().report(codes::out_of_range,
                          at,
                          view.pointer("size"),
                          "A pack holds from 1 to a thousand million millilitres, grams or pieces");
    return {};
  }

  bool fits(View& view, const Node& at, const Size& size) {
    if (wanted_ && size.measure != *wanted_) {
      view.context().report(
          codes::wrong_unit,
          at,
          view.pointer("size"),
          "This item is reckoned in " + std::string(measure_words(*wanted_)),
          *wanted_ == Measure::mass ? "Write it like \"25 kg\"." : "Write it like \"20 L\".");
      return false;
    }
    if (first_ == nullptr) {
      first_ = &at;
      measure_ = size.measure;
    }
    if (size.measure == measure_) return true;
    view.context().tell({.code = codes::facts_clash,
                         .at = at.span(),
                         .pointer = view.pointer("size"),
                         .message = "One pack is " + std::string(measure_words(measure_)) +
                                    ", another " + std::string(measure_words(size.measure)),
                         .hint = "Give all packs of an item in the same kind of unit.",
                         .other = first_->span()});
    return false;
  }

  std::optional<Measure> wanted_;
  Measure measure_ = Measure::pieces;
  const Node* first_ = nullptr;
};

job::Item read_item(const std::string& name,
                    std::vector<View>& packs,
                    std::optional<Measure> wanted,
                    const money::Currency& currency) {
  job::Item item{name, {}};
  Sizes size_of(wanted);
  for (View& view : packs) {
    purchase::Pack pack;
    const auto size = size_of(view);
    const auto price = read_money(view, "price", currency);
    if (const auto stock = view.whole("stock")) pack.stock = *stock;
    pack.supplier = view.text("supplier").value_or("");
    pack.batch = view.text("batch").value_or("");
    view.finish();
    if (!size || !price) continue;
    pack.size = *size;
    pack.price = *price;
    pack.id = std::to_string(*size);
    item.packs.push_back(std::move(pack));
  }
  return item;
}

// What each item is reckoned in.
constexpr std::array<std::pair<std::string_view, Measure>, 16> items{
    {{"coating", Measure::volume},
     {"primer", Measure::volume},
     {"thinner", Measure::volume},
     {"filler", Measure::volume},
     {"mortar", Measure::mass},
     {"acid", Measure::volume},
     {"hypochlorite", Measure::volume},
     {"degreaser", Measure::volume},
     {"bicarbonate", Measure::mass},
     {"thiosulfate", Measure::mass},
     {"liquid chlorine", Measure::volume},
     {"chlorine granules", Measure::mass},
     {"soda ash", Measure::mass},
     {"calcium chloride", Measure::mass},
     {"stabiliser", Measure::mass},
     {"salt", Measure::mass}}};
constexpr std::array<std::string_view, 3> of_a_system{"", " primer", " thinner"};

// Nothing when no step needs an item of that name. The products of a coating system are liquids.
std::optional<Measure> measure_of(const std::string& item, const job::RateBook& book) {
  const bool granules = book.chemicals.chlorine_kind == job::ChlorineKind::calcium_hypochlorite;
  if (granules && item == "hypochlorite") return Measure::mass;
  for (const auto& [name, measure] : items) {
    if (name == item) return measure;
  }
  for (const std::string_view product : of_a_system) {
    const bool ends = std::string_view(item).ends_with(product);
    if (ends && book.systems.contains(item.substr(0, item.size() - product.size()))) {
      return Measure::volume;
    }
  }
  return {};
}

std::vector<std::string> names_in(const job::RateBook& book) {
  std::vector<std::string> known;
  known.reserve(items.size());
  for (const auto& [name, measure] : items) known.emplace_back(name);
  for (const auto& [name, system] : book.systems) {
    for (const std::string_view product : of_a_system) known.push_back(name + std::string(product));
  }
  return known;
}

// A book may sell what no step needs; a name that nearly is one of those that do is a slip.
void doubt_name(const Member& item, const std::vector<std::string>& known, View& top) {
  const std::string_view near = diagnostics::nearest(item.key, {known.begin(), known.end()});
  if (near.empty()) return;
  top.context().tell({.code = codes::unknown_key,
                      .at = item.key_span(),
                      .pointer = top.pointer("packs") + "/" + sources::pointer_part(item.key),
                      .message = "Nothing is bought under the name \"" + item.key + "\"",
                      .hint = "Did you mean \"" + std::string(near) + "\"?",
                      .severity = diagnostics::Severity::warning});
}

}  // namespace

void read_packs(View& top, job::RateBook& book) {
  for (auto& [name, packs] : top.member_lists("packs")) {
    book.items[name] = read_item(name, packs, measure_of(name, book), book.currency);
  }
  const Node* packs = top.node("packs");
  if (packs == nullptr) return;
  const auto known = names_in(book);
  for (const Member& item : packs->members) {
    if (!measure_of(item.key, book)) doubt_name(item, known, top);
  }
}

void read_own_packs(View& chemical,
                    const std::string& item,
                    const Node* packs,
                    job::RateBook& book) {
  auto own = chemical.objects("packs");
  if (!chemical.has("packs")) return;
  if (const Node* other = packs == nullptr ? nullptr : packs->find(item)) {
    chemical.context().tell({.code = codes::facts_clash,
                             .at = chemical.node("packs")->span(),
                             .pointer = chemical.pointer("packs"),
                             .message = "This item's packs are also given among all \"packs\"",
                             .hint = "Keep one of the two lists.",
                             .other = other->span()});
  }
  book.items[item] = read_item(item, own, measure_of(item, book), book.currency);
}

}  // namespace basinwright::readers
