// Each rule of RFC 8259 with texts that keep and break it, own cases. An outside parser
// (nlohmann-json's `accept`) must agree on every one of them.
#include "reading.hpp"

using namespace reading;

namespace {

using Texts = std::vector<std::string>;

void accepts(const Texts& texts) {
  for (const std::string& text : texts) {
    const Tree tree(text);
    INFO(text);
    CHECK(tree.whole);
    CHECK(tree.problems.empty());
    CHECK(json::accept(text));
  }
}

void refuses(const Texts& texts, const std::string& code = "syntax") {
  for (const std::string& text : texts) {
    const Tree tree(text);
    INFO(text);
    CHECK_FALSE(tree.whole);
    CHECK(codes(tree.problems) == Found{code});
    CHECK(tree.problems.all()[0].at.line > 0);
    CHECK_FALSE(tree.problems.all()[0].message.empty());
    CHECK_FALSE(json::accept(text));
  }
}

std::string text_of(const std::string& json_text) {
  return Tree(json_text).root.text;
}

}  // namespace

TEST_CASE("rfc 8259 section 2, any value is a text, with blanks round it") {
  accepts(
      {"null", "true", "false", "0", "\"\"", "[]", "{}", " 1", "1 ", "\t1", "1\n", "\r\n1\r\n"});
  accepts({"[ 1 , 2 ]", "{ \"a\" : 1 }", "[\t]", "{\r\n}", "[1\n,\n2]", "{\"a\"\t:\r1}"});
  refuses({"", " ", "\n", "\xEF\xBB\xBF"});
  // Blanks are the space, the tab, the line feed and the carriage return, and nothing else.
  refuses({"\v1",
           "\f1",
           "1\v",
           "[1,\f2]",
           "\xC2\xA0"
           "1",
           "1\xE2\x80\xA8",
           "\xE2\x80\x83[]",
           "[1\x08]"});
  refuses({"1 2", "[] []", "{}{}", "null,", "\"a\" \"b\"", "[1]]", "{}}", "true false", "1x"});
}

TEST_CASE("rfc 8259 section 3, three words in small letters") {
  accepts({"[true,false,null]"});
  refuses({"True",
           "FALSE",
           "Null",
           "nul",
           "tru",
           "fals",
           "nulll",
           "truefalse",
           "yes",
           "undefined",
           "None",
           "t",
           "n",
           "'null'"});
  refuses({"NaN", "nan", "Infinity", "-Infinity", "inf", "[NaN]", "{\"a\":Infinity}"});
}

TEST_CASE("rfc 8259 section 4, objects") {
  accepts({"{\"a\":1}", "{\"\":1}", "{\"a\":{\"a\":{\"a\":{}}}}", "{\"a\":1,\"A\":2,\"b\":[]}"});
  accepts({"{\"a\\u0062\":1}", "{\"1\":1}", "{\"{}\":1}"});
  refuses({"{", "}", "{\"a\"", "{\"a\":", "{\"a\":1", "{\"a\":1,", "{\"a\":}", "{:1}", "{,}"});
  refuses({"{\"a\":1,}", "{,\"a\":1}", "{\"a\":1,,\"b\":2}", "{\"a\":1 \"b\":2}", "{\"a\" 1}"});
  refuses({"{a:1}", "{'a':1}", "{1:1}", "{null:1}", "{[]:1}", "{\"a\"=1}", "{\"a\"::1}"});
  refuses({"{\"a\":1]", "{\"a\",\"b\"}", "{\"a\"}", "{\"a\":1;\"b\":2}", "{\"a\":1:2}"});
}

TEST_CASE("rfc 8259 section 5, arrays") {
  accepts({"[1]", "[1,2,3]", "[[],[[]],[[[]]]]", "[null,true,1,\"a\",[],{}]"});
  refuses(
      {"[", "]", "[1", "[1,", "[,]", "[1,]", "[,1]", "[1,,2]", "[1 2]", "[1;2]", "[1:2]", "[1}"});
  refuses({"[\"a\" \"b\"]", "[[]", "[]]", "[1,2", "(1)"});
}

TEST_CASE("rfc 8259 section 6, numbers") {
  accepts({"0",
           "-0",
           "9",
           "-1",
           "10",
           "0.0",
           "0.10",
           "-0.5",
           "1.25",
           "1e1",
           "1E1",
           "1e+1",
           "1e-1",
           "1.5E+02",
           "0e0",
           "-0e-0",
           "1e00",
           "123456789012345678901234567890"});
  refuses({"+1",   "-",   "--1",   "-+1",   "01",    "-01", "00",    "1.",
           ".5",   "-.5", "1.e1",  "1e",    "1e+",   "1E-", "1e1.5", "1e1e1",
           "0x10", "0b1", "1_000", "1,000", "1 000", "- 1", "1f",    "1.2.3"});
  refuses({"[01]",
           "[1.]",
           "[-]",
           "{\"a\":.5}",
           "{\"a\":+1}",
           "\xE2\x88\x92"
           "1",
           "\xD9\xA1"});
}

TEST_CASE("rfc 8259 section 6, a number as large as none can be") {
  refuses({"1e999", "-1e999", "[1e999]", "{\"a\":1e309}", "1E+400"}, "number-range");
  accepts({"1e308", "-1e308", "1e-999"});
}

TEST_CASE("rfc 8259 section 7, strings and their escapes") {
  accepts({R"("\"\\\/\b\f\n\r\t")",
           R"("\u0041")",
           R"("\u00e9\u00E9")",
           R"("\uD83C\uDFCA")",
           R"("\u0000")",
           "\"\x7F\"",
           "\"/\"",
           "\"'\"",
           R"("\\u0041")"});
  CHECK(text_of(R"("\"\\\/\b\f\n\r\t")") == "\"\\/\b\f\n\r\t");
  CHECK(text_of(R"("\u0041\u00e9\u20AC")") == "A\xC3\xA9\xE2\x82\xAC");
  CHECK(text_of(R"("\uD83C\uDFCA")") == "\xF0\x9F\x8F\x8A");
  CHECK(text_of(R"("a\u0000b")") == std::string("a\0b", 3));
  refuses({"\"",
           "\"a",
           "a\"",
           "'a'",
           "\"\\\"",
           R"("\x41")",
           R"("\a")",
           R"("\'")",
           R"("\0")",
           R"("\v")",
           R"("\e")",
           R"("\U0041")",
           "\"\\ \""});
  refuses({R"("\u")",
           R"("\u1")",
           R"("\u12")",
           R"("\u123")",
           R"("\u123g")",
           R"("\u{41}")",
           R"("\u 041")",
           R"("\u-041")",
           "\"\\u00\xC3\xA9\""});
}

TEST_CASE("rfc 8259 section 7, no control character stands bare in a string") {
  for (char c = 1; c < 0x20; ++c) {
    refuses({std::string("\"a") + c + "b\"", std::string("{\"") + c + "\":1}"});
  }
  const Tree tree("[\"a\nb\"]");
  CHECK(tree.problems.all()[0].message == "A line break or control character stands in a text");
}

TEST_CASE("rfc 8259 section 8.1, utf-8 and nothing else") {
  accepts({"\"\xC2\x80\"",
           "\"\xDF\xBF\"",
           "\"\xE0\xA0\x80\"",
           "\"\xED\x9F\xBF\"",
           "\"\xEE\x80\x80\"",
           "\"\xEF\xBF\xBF\"",
           "\"\xF0\x90\x80\x80\"",
           "\"\xF4\x8F\xBF\xBF\"",
           "\xEF\xBB\xBF[1]"});
  // Unicode 15, table 3-7: what is no well-formed sequence.
  refuses({"\"\x80\"",
           "\"\xBF\"",
           "\"\xC0\x80\"",
           "\"\xC1\xBF\"",
           "\"\xC3\"",
           "\"\xC3(\"",
           "\"\xE0\x80\x80\"",
           "\"\xE0\x9F\xBF\"",
           "\"\xE2\x82\"",
           "\"\xED\xA0\x80\"",
           "\"\xED\xBF\xBF\"",
           "\"\xF0\x80\x80\x80\"",
           "\"\xF0\x8F\xBF\xBF\"",
           "\"\xF4\x90\x80\x80\"",
           "\"\xF5\x80\x80\x80\"",
           "\"\xF0\x9F\x8F\"",
           "\"\xFE\"",
           "\"\xFF\"",
           "\"caf\xE9\""});
  refuses({"[\xFF]",
           "{\"\xFF\":1}",
           "\xC3\xA9",
           "\xFF\xFE[",
           "\xEF\xBB[]",
           "\xEF\xBB\xBF\xEF\xBB\xBF[]"});
}

TEST_CASE("rfc 8259 section 8.2, half a surrogate pair names no character") {
  refuses({R"("\uD83C")",
           R"("\uDFCA")",
           R"("\uD83Cx")",
           R"("\uD83C\n")",
           R"("\uD83C\u0041")",
           R"("\uD83C\uD83C")",
           R"("\uDFCA\uD83C")",
           R"({"\uD83C":1})"});
}

TEST_CASE("rfc 8259, what other notations allow") {
  refuses({"// a\n1", "/* a */ 1", "[1, // a\n2]", "# a\n1", "[1] // end", "<a/>", "{\"a\":1} --"});
  refuses(
      {"`a`", "\"a\" + \"b\"", "[1..2]", "{...}", "[\"a\",\n\"b\"\n\"c\"]", "\\u005b]", "@", "$"});
}

TEST_CASE("rfc 8259, what is right for others and refused here") {
  // The library ends its input at a NUL, so the two cannot agree on these.
  for (const std::string& text : Texts{std::string("123\0", 4),
                                       std::string("[1]\0[", 5),
                                       std::string("\"a\0b\"", 5),
                                       std::string("\0", 1)}) {
    const Tree tree(text);
    CHECK_FALSE(tree.whole);
    CHECK(codes(tree.problems) == Found{"syntax"});
    CHECK(tree.problems.all()[0].message == "A NUL byte stands in the file");
  }
  // Section 4: names within an object should be unique.
  const Tree tree("{\"a\": 1, \"b\": {\"c\": 2, \"c\": 3}, \"\\u0061\": 4, \"a\": 5}");
  CHECK(tree.whole);
  CHECK(codes(tree.problems) == Found{"repeated-key", "repeated-key", "repeated-key"});
  const auto found = tree.problems.sorted();
  CHECK(found[0].at.column == 24);
  CHECK(found[0].also[0].column == 16);
  CHECK(found[1].at.column == 33);
  CHECK(found[1].also[0].column == 2);
  CHECK(found[2].also[0].column == 33);
  CHECK(tree.root.find("a")->text == "1");
}
