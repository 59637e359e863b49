#include <algorithm>
#include <cctype>
#include <nlohmann/json.hpp>
#include <string>

#include "node.hpp"

namespace basinwright::readers {
namespace {

using Json = nlohmann::json;

// Builds the tree from SAX events. The lexer has vouched for every byte up to the event, so the
// token's span is found by skipping blanks and separators from the end of the one before.
class TreeBuilder : public nlohmann::json_sax<Json> {
 public:
  TreeBuilder(const SourceText& source, diagnostics::Problems& problems, const JsonLimits& limits)
      : source_(source), bytes_(source.bytes()), problems_(problems), limits_(limits) {
    if (bytes_.starts_with("\xEF\xBB\xBF")) cursor_ = 3;
  }

  bool null() override { return place(Node::Kind::null, next_token()) != nullptr; }
  bool boolean(bool value) override {
    Node* const node = place(Node::Kind::boolean, next_token());
    if (node != nullptr) node->truth = value;
    return node != nullptr;
  }
  bool number_integer(number_integer_t) override { return number(); }
  bool number_unsigned(number_unsigned_t) override { return number(); }
  bool number_float(number_float_t, const string_t&) override { return number(); }
  bool binary(binary_t&) override { return false; }

  bool string(string_t& value) override {
    const Span span = next_token();
    if (value.size() > limits_.text) {
      return refuse(codes::too_large, span, "This text is longer than 64 KiB", "Shorten it.");
    }
    Node* const node = place(Node::Kind::text, span);
    if (node != nullptr) node->text = std::move(value);
    return node != nullptr;
  }

  bool key(string_t& value) override {
    const Span span = next_token();
    if (value.size() > limits_.text) {
      return refuse(codes::too_large, span, "This key is longer than 64 KiB", "Shorten it.");
    }
    open_.back()->members.push_back({std::move(value), span.begin, span.end, {}});
    return true;
  }

  bool start_object(std::size_t) override { return open(Node::Kind::object); }
  bool start_array(std::size_t) override { return open(Node::Kind::list); }
  bool end_object() override {
    find_repeated_keys(*open_.back());
    return close();
  }
  bool end_array() override { return close(); }

  bool parse_error(std::size_t position,
                   const std::string& last_token,
                   const Json::exception& error) override {
    if (error.id == 406) {
      return refuse(codes::number_range,
                    next_token(),
                    "This number is too large to be a measure",
                    "Write a number that a tape, scale or price could give.");
    }
    const std::size_t at = std::min(position == 0 ? 0 : position - 1, bytes_.size());
    const Span wrong = wrong_bytes(error.what(), last_token, at);
    return refuse(codes::syntax, wrong, reason(error.what(), at), hint(wrong.begin));
  }

  Node root;

 private:
  static bool in_word(char c) {
    return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '-' || c == '+' || c == '.';
  }

  // The word or text that ends at the byte at which the lexer stopped, else that byte. The lexer's
  // own last token may hold more than one.
  Span wrong_bytes(std::string_view what, const std::string& last_token, std::size_t at) const {
    const std::size_t end = std::min(at + 1, bytes_.size());
    const bool text = what.find("unexpected string") != std::string_view::npos;
    if (text && bytes_.substr(0, end).ends_with(last_token)) return {end - last_token.size(), end};
    if (what.find("invalid string") != std::string_view::npos) return {at, end};
    const bool number = what.find("invalid number") != std::string_view::npos;
    const std::size_t stop = number ? at : end;
    std::size_t begin = stop;
    while (begin > 0 && in_word(bytes_[begin - 1])) --begin;
    return begin == stop ? Span{at, end} : Span{begin, stop};
  }

  // The lexer's complaint in a few words of our own.
  std::string reason(std::string_view what, std::size_t at) const {
    const auto says = [&](std::string_view words) {
      return what.find(words) != std::string_view::npos;
    };
    if (says("missing closing quote")) return "The closing quotation mark is missing";
    if (at >= bytes_.size()) return "The file ends before the JSON is complete";
    if (says("ill-formed UTF-8") || says("invalid BOM")) return "This is not valid UTF-8";
    if (says("control character")) return "A line break or control character stands in a text";
    if (says("invalid string")) return "This escape is not JSON";
    if (says("expected end of input")) return "Something stands after the end of the JSON";
    if (says("object key")) return "A key in quotation marks belongs here";
    if (says("object separator")) return "A colon belongs between a key and its value";
    if (says("invalid number")) return "This is not a JSON number";
    if (says("invalid literal")) return "This is neither a number nor a text in quotation marks";
    if (says("while parsing object")) return "A comma or } belongs here";
    if (says("while parsing array")) return "A comma or ] belongs here";
    return "This is not JSON";
  }

  std::string hint(std::size_t at) const {
    const std::string_view rest = bytes_.substr(at);
    const std::size_t before = bytes_.substr(0, at).find_last_not_of(" \t\r\n");
    const bool after_comma = before != std::string_view::npos && bytes_[before] == ',';
    if (after_comma && (rest.starts_with('}') || rest.starts_with(']'))) {
      return "Take out the last comma.";
    }
    if (rest.starts_with("//") || rest.starts_with("/*")) {
      return "JSON has no comments; put the remark into \"notes\".";
    }
    if (rest.starts_with('\'')) return "Texts stand in double quotation marks.";
    return {};
  }

  static bool is_gap(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == ',' || c == ':';
  }

  Span next_token() {
    while (cursor_ < bytes_.size() && is_gap(bytes_[cursor_])) ++cursor_;
    const std::size_t begin = cursor_;
    std::size_t end = begin;
    if (begin < bytes_.size() && bytes_[begin] == '"') {
      for (++end; end < bytes_.size() && bytes_[end] != '"'; ++end) {
        if (bytes_[end] == '\\') ++end;
      }
      end = std::min(end + 1, bytes_.size());
    } else if (begin < bytes_.size() &&
               std::string_view("{}[]").find(bytes_[begin]) == std::string_view::npos) {
      while (end < bytes_.size() && in_word(bytes_[end])) ++end;
    } else {
      ++end;
    }
    cursor_ = std::min(end, bytes_.size());
    return {begin, cursor_};
  }

  bool number() {
    const Span span = next_token();
    if (span.end - span.begin > limits_.number) {
      return refuse(codes::too_large, span, "This number has more than 64 characters", "Round it.");
    }
    Node* const node = place(Node::Kind::number, span);
    if (node != nullptr) node->text = bytes_.substr(span.begin, span.end - span.begin);
    return node != nullptr;
  }

  // Past the limit, work that grows with the square of a length would take hours.
  bool is_full(Span span) {
    if (open_.empty()) return false;
    // Each value takes a hundred bytes or more, whatever it took in the file.
    if (++values_ > limits_.values) {
      refuse(codes::too_large,
             span,
             "The file holds more than " + std::to_string(limits_.values) + " values",
             "");
      return true;
    }
    // The last member of an object waits for this value.
    const Node& parent = *open_.back();
    const bool in_object = parent.kind == Node::Kind::object;
    const std::size_t held = in_object ? parent.members.size() - 1 : parent.items.size();
    if (held < limits_.items) return false;
    refuse(codes::too_large,
           span,
           "This list or object has more than " + std::to_string(limits_.items) + " entries",
           "");
    return true;
  }

  // The node of the value that comes next, in its place in the tree; nothing past a limit.
  Node* place(Node::Kind kind, Span span) {
    if (is_full(span)) return nullptr;
    Node* node = &root;
    if (!open_.empty()) {
      Node& parent = *open_.back();
      node = parent.kind == Node::Kind::list ? &parent.items.emplace_back()
                                             : &parent.members.back().value;
    }
    node->kind = kind;
    node->begin = span.begin;
    node->end = span.end;
    return node;
  }

  bool open(Node::Kind kind) {
    const Span span = next_token();
    if (open_.size() >= limits_.depth) {
      return refuse(codes::too_deep, span, "Lists and objects are nested more than 64 deep", "");
    }
    Node* const node = place(kind, span);
    if (node == nullptr) return false;
    constexpr std::size_t usual = 6, usual_of_file = 12;
    if (kind == Node::Kind::object) node->members.reserve(open_.empty() ? usual_of_file : usual);
    // Only the innermost open node grows, so the addresses of the outer ones stay.
    open_.push_back(node);
    return true;
  }

  bool close() {
    open_.back()->end = next_token().end;
    open_.pop_back();
    return true;
  }

  static bool has_repeated_keys(const Node& object) {
    for (auto m = object.members.begin(); m != object.members.end(); ++m) {
      if (std::any_of(
              object.members.begin(), m, [&](const Member& other) { return other.key == m->key; }))
        return true;
    }
    return false;
  }

  void find_repeated_keys(const Node& object) {
    constexpr std::size_t few = 16;
    if (object.members.size() < few && !has_repeated_keys(object)) return;
    std::vector<const Member*> members;
    members.reserve(object.members.size());
    for (const Member& m : object.members) members.push_back(&m);
    // In the file's order where keys are the same.
    std::ranges::sort(members, [](const Member* a, const Member* b) {
      const int order = a->key.compare(b->key);
      return order == 0 ? a->key_begin < b->key_begin : order < 0;
    });
    for (std::size_t i = 1; i < members.size(); ++i) {
      if (members[i]->key != members[i - 1]->key) continue;
      tell(source_,
           problems_,
           {.code = codes::repeated_key,
            .at = members[i]->key_span(),
            .message = "The key \"" + members[i]->key + "\" stands twice in this object",
            .hint = "Keep one of the two.",
            .other = members[i - 1]->key_span()});
    }
  }

  bool refuse(Code code, Span span, std::string message, std::string hint_words) {
    tell(source_,
         problems_,
         {.code = code, .at = span, .message = std::move(message), .hint = std::move(hint_words)});
    return false;
  }

  const SourceText& source_;
  std::string_view bytes_;
  diagnostics::Problems& problems_;
  JsonLimits limits_;
  std::size_t cursor_ = 0;
  std::size_t values_ = 0;
  std::vector<Node*> open_;
};

}  // namespace

bool parse_json(const SourceText& source,
                Node& root,
                diagnostics::Problems& problems,
                const JsonLimits& limits) {
  const std::string& bytes = source.bytes();
  if (bytes.size() > limits.bytes) {
    tell(source,
         problems,
         {.code = codes::too_large,
          .at = {0, 0},
          .message = "The file is larger than " + std::to_string(limits.bytes >> 20U) + " MiB"});
    return false;
  }
  // The library takes a NUL for the end of its input and would accept what stands before it.
  const std::size_t nul = bytes.find('\0');
  if (nul != std::string::npos) {
    tell(source,
         problems,
         {.code = codes::syntax,
          .at = {nul, nul + 1},
          .message = "A NUL byte stands in the file",
          .hint = "Save it as UTF-8 text."});
    return false;
  }
  TreeBuilder builder(source, problems, limits);
  if (!Json::sax_parse(bytes, &builder)) return false;
  root = std::move(builder.root);
  return true;
}

}  // namespace basinwright::readers
