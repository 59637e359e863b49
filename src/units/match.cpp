#include <algorithm>
#include <array>
#include <vector>

#include "basinwright/units/spellings.hpp"
#include "names.hpp"

namespace basinwright::units {
namespace {

constexpr std::array kinds{
    Kind::length, Kind::area, Kind::volume, Kind::mass, Kind::duration, Kind::degree, Kind::share};

char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

bool letter(char c) {
  return lower(c) >= 'a' && lower(c) <= 'z';
}

/// Bytes of an exponent `2` or `3` as people type it, or 0.
std::size_t exponent_length(std::string_view text, char exponent) {
  if (text.starts_with(exponent)) return 1;
  if (text.size() > 1 && text[0] == '^' && text[1] == exponent) return 2;
  return text.starts_with(exponent == '2' ? "\u00B2" : "\u00B3") ? 2 : 0;
}

std::size_t blanks_length(std::string_view text) {
  std::size_t sum = 0;
  while (const std::size_t one = blank_length(text.substr(sum))) sum += one;
  return sum;
}

/// Bytes of `text` that spell `spelling`, or 0.
std::size_t spelled_length(std::string_view text, std::string_view spelling, bool exact) {
  std::size_t at = 0;
  for (const char c : spelling) {
    const std::string_view rest = text.substr(at);
    if (c == ' ') {
      at += blanks_length(rest);
      continue;
    }
    std::size_t step = 0;
    if (digit(c)) {
      step = exponent_length(rest, c);
    } else if (!rest.empty()) {
      step = (exact ? rest[0] == c : lower(rest[0]) == lower(c)) ? 1 : 0;
    }
    if (step == 0) return 0;
    at += step;
  }
  return at;
}

/// Whether a name may end before `rest`: not inside a word, an exponent or a foreign sign.
bool ends_as_word(std::string_view name, std::string_view rest) {
  if (rest.empty() || blank_length(rest) > 0) return true;
  const char next = rest.front();
  if (letter(name.back()) && letter(next)) return false;
  if (digit(next)) return !digit(name.back());
  const bool mark =
      static_cast<unsigned char>(next) >= 0x80 || next == '^' || next == '\'' || next == '"';
  return !mark && !letter(next);
}

template <class F>
void each_spelling(const UnitName& name, F&& use) {
  std::string_view rest = name.spellings;
  while (!rest.empty()) {
    const std::size_t bar = std::min(rest.find('|'), rest.size());
    use(rest.substr(0, bar));
    rest.remove_prefix(std::min(bar + 1, rest.size()));
  }
}

struct Spelling {
  std::string_view text;
  bool strict = false;
  const UnitName* name = nullptr;
  Kind kind = Kind::none;
};

std::size_t first_byte(std::string_view text) {
  return static_cast<unsigned char>(lower(text.front()));
}

/// All spellings by the byte they begin with, small letters for capitals; each list in the order of
/// kinds and names. None begins with a blank or a digit.
class Spellings {
 public:
  Spellings() {
    for (const Kind kind : kinds) {
      for (const UnitName& name : names_of(kind)) add(name, kind);
    }
  }
  /// Those that `text` may begin with by its first two bytes.
  template <class Use>
  void beginning(std::string_view text, Use use) const {
    const Lists& lists = lists_[first_byte(text)];
    for (const Spelling& one : lists.short_ones) use(one);
    if (text.size() < 2 || !letter(text[1])) return;
    for (const Spelling& one : lists.long_ones) {
      if (lower(one.text[1]) == lower(text[1])) use(one);
    }
  }

 private:
  void add(const UnitName& name, Kind kind) {
    each_spelling(name, [&](std::string_view one) {
      const bool strict = one.starts_with('=');
      if (strict) one.remove_prefix(1);
      Lists& lists = lists_[first_byte(one)];
      const bool goes_on = one.size() > 1 && letter(one[1]);
      (goes_on ? lists.long_ones : lists.short_ones).push_back({one, strict, &name, kind});
    });
  }

  struct Lists {
    std::vector<Spelling> short_ones, long_ones;  ///< The second byte is no letter; is one.
  };
  std::array<Lists, 256> lists_;
};

}  // namespace

NameMatch match_name(std::string_view text, Kind wanted, Case letters) {
  static const Spellings spellings;
  NameMatch best;
  if (text.empty()) return best;
  spellings.beginning(text, [&](const Spelling& one) {
    const bool exact = one.strict && letters == Case::as_listed;
    const std::size_t length = spelled_length(text, one.text, exact);
    const bool nearer = length == best.length && one.kind == wanted && best.kind != wanted;
    if (length == 0 || (length <= best.length && !nearer)) return;
    if (ends_as_word(text.substr(0, length), text.substr(length)))
      best = {one.name, one.kind, length};
  });
  return best;
}

std::vector<std::string_view> unit_spellings() {
  std::vector<std::string_view> out;
  for (const Kind kind : kinds) {
    for (const UnitName& name : names_of(kind)) {
      if (!name.instead.empty()) continue;
      each_spelling(name, [&out](std::string_view spelling) {
        if (spelling.starts_with('=')) spelling.remove_prefix(1);
        out.push_back(spelling);
      });
    }
  }
  return out;
}

std::size_t blank_length(std::string_view text) {
  if (text.empty()) return 0;
  if (text.front() == ' ' || text.front() == '\t') return 1;
  if (text.starts_with("\u00A0")) return 2;
  return text.starts_with("\u202F") || text.starts_with("\u2009") ? 3 : 0;
}

}  // namespace basinwright::units
