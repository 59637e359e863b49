#!/usr/bin/env python3
"""Reads a page that render/html wrote with Python's own HTML parser.

html_page.py FILE    "element hexadecimal text" a line, in the order of the page, signs left out;
                     "wrong hexadecimal reason" for whatever breaks the rules below.

Rules: WHATWG HTML (nesting, void elements, unique ids, one h1, no heading level left out), WCAG 2.2
(1.3.1 headers with scope and captions, 2.4.1 a way past blocks, 2.4.2 title, 3.1.1 language), and our own promise that
nothing is run or fetched.
"""
import re
import sys
from html.parser import HTMLParser

VOID = {"br", "meta"}
TEXTS = {"title", "h1", "h2", "h3", "p", "li", "th", "td", "dt", "dd", "caption", "figcaption", "text",
         "desc"}
KNOWN = TEXTS | VOID | {"html", "head", "style", "body", "header", "main", "nav", "section", "div", "span", "a", "ul",
                        "ol", "dl", "table", "thead", "tbody", "tr", "figure", "details", "summary", "svg", "g",
                        "path", "defs", "pattern", "clippath"}
ATTRIBUTES = {"class", "id", "href", "lang", "scope", "colspan", "name", "content", "charset", "http-equiv",
              "aria-label", "aria-labelledby", "data-title"}


def hexed(text):
    return text.encode("utf-8").hex() or "-"


class Page(HTMLParser):
    def __init__(self):
        super().__init__(convert_charrefs=True)
        self.open, self.texts, self.ids, self.headings, self.links, self.wrongs = [], [], [], [], [], []
        self.hidden = self.drawn = 0
        self.current = None

    def wrong(self, reason):
        self.wrongs.append(reason)

    def handle_starttag(self, tag, attrs):
        given = dict(attrs)
        if tag not in KNOWN:
            self.wrong(f"element {tag}")
        self.look_at(tag, given)
        if tag == "br":
            if self.current:
                self.current[1].append("\n")
            return
        if tag in VOID:
            return
        classes = (given.get("class") or "").split()
        hides = tag == "span" and ("unseen" in classes or "mark" in classes)
        self.hidden += hides
        self.drawn += tag == "svg"
        self.open.append((tag, hides))
        if tag in TEXTS and not (self.drawn and tag not in ("text", "desc")):
            self.flush()
            self.current = (tag, [])
        if tag in ("h1", "h2", "h3"):
            self.headings.append(int(tag[1]))
        if tag == "table":
            self.captioned = False
        self.captioned = tag == "caption" or getattr(self, "captioned", False)

    def look_at(self, tag, given):
        if "id" in given:
            self.ids.append(given["id"])
        for name, value in given.items():
            if not self.drawn and tag != "svg" and name not in ATTRIBUTES:
                self.wrong(f"attribute {name}")
            if name.startswith("on") or name in ("src", "style", "srcset", "xlink:href"):
                self.wrong(f"attribute {name}")
            if name == "href":
                self.links.append(value)
                if not value.startswith("#"):
                    self.wrong(f"link {value}")
        if tag == "th" and given.get("scope") not in ("col", "row", "rowgroup"):
            self.wrong("header cell without scope")
        if tag in ("html",) and given.get("lang") != "en":
            self.wrong("no language")

    def handle_startendtag(self, tag, attrs):
        self.look_at(tag, dict(attrs))
        if not self.drawn or tag not in KNOWN:
            self.wrong(f"self-closed {tag}")

    def handle_endtag(self, tag):
        if not self.open or self.open[-1][0] != tag:
            self.wrong(f"</{tag}> closes nothing")
            return
        _, hides = self.open.pop()
        self.hidden -= hides
        self.drawn -= tag == "svg"
        if tag == "table" and not self.captioned:
            self.wrong("table without caption")
        if self.current and self.current[0] == tag:
            self.flush()

    def handle_data(self, data):
        if self.open and self.open[-1][0] == "style":
            if "@import" in data or re.search(r"url\(", data):
                self.wrong("style fetches")
        elif self.current and not self.hidden:
            self.current[1].append(data)

    def handle_comment(self, data):
        self.wrong("comment")

    def flush(self):
        if self.current:
            # A box or a line and the space behind it are signs, not text.
            self.texts.append((self.current[0], "".join(self.current[1]).strip(" \n")))
        self.current = None

    def finish(self):
        self.close()
        if self.open:
            self.wrong(f"<{self.open[-1][0]}> is not closed")
        if len(set(self.ids)) != len(self.ids):
            self.wrong("the same id twice")
        for link in self.links:
            if link[1:] not in self.ids:
                self.wrong(f"link {link} leads nowhere")
        if self.headings[:1] != [1] or self.headings.count(1) != 1:
            self.wrong("not one h1 first")
        for before, after in zip(self.headings, self.headings[1:]):
            if after > before + 1:
                self.wrong("a heading level is left out")
        if not any(tag == "title" and text for tag, text in self.texts):
            self.wrong("no title")


def read(path):
    with open(path, encoding="utf-8", newline="") as file:
        text = file.read()
    page = Page()
    if not text.startswith("<!DOCTYPE html>\n"):
        page.wrong("no doctype")
    page.feed(text)
    page.finish()
    return page


if __name__ == "__main__":
    found = read(sys.argv[1])
    for element, words in found.texts:
        print(element, hexed(words))
    for reason in found.wrongs:
        print("wrong", hexed(reason))
