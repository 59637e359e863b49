#!/usr/bin/env python3
"""Reads what the renderers wrote with readers that are not ours, and prints what it found.

read_back.py csv FILE          cells as hexadecimal UTF-8, a line a record, separated by spaces
read_back.py json FILE         the same tree on one line
read_back.py utf8 FILE         each line's bytes (hexadecimal) decoded with replacement, as before
read_back.py widths FILE       "code point, width" a line against the Unicode database; misses
read_back.py widest FILE       display width of the widest line
read_back.py html FILE         "element hexadecimal text" a line for a page that cmark-gfm wrote

Ends with 77 where this Python cannot tell.
"""
import csv
import json
import sys
import unicodedata
from html.parser import HTMLParser


def hexed(text):
    return text.encode("utf-8").hex() or "-"


def show_csv(path):
    with open(path, encoding="utf-8", newline="") as file:
        for record in csv.reader(file, strict=True):
            print(" ".join(hexed(cell) for cell in record))


def show_json(path):
    with open(path, encoding="utf-8") as file:
        print(json.dumps(json.load(file), separators=(",", ":")))


def show_utf8(path):
    with open(path, encoding="ascii") as file:
        for line in file:
            print(hexed(bytes.fromhex(line.strip()).decode("utf-8", "replace")))


def width(character):
    """Columns by General_Category and East_Asian_Width, independent of the tables under test."""
    code = ord(character)
    if code == 0xAD or code in (0x6DD, 0x70F, 0x890, 0x891, 0x8E2, 0x110BD, 0x110CD):
        return 1
    if 0x600 <= code <= 0x605:
        return 1
    if unicodedata.category(character) in ("Mn", "Me", "Cf", "Zl", "Zp"):
        return 0
    if 0x1160 <= code <= 0x11FF or 0xD7B0 <= code <= 0xD7FF:
        return 0
    return 2 if unicodedata.east_asian_width(character) in "WF" else 1


def show_widths(path):
    if unicodedata.unidata_version != "14.0.0":
        sys.exit(77)
    with open(path, encoding="ascii") as file:
        for line in file:
            code, ours = (int(word) for word in line.split())
            character = chr(code)
            if unicodedata.category(character) == "Cn":
                continue
            if width(character) != ours:
                print(f"U+{code:04X}: {ours} for {width(character)}")


def show_widest(path):
    with open(path, encoding="utf-8", newline="\n") as file:
        print(max(sum(width(c) for c in line.rstrip("\n")) for line in file))


class Page(HTMLParser):
    """Texts of the elements that hold them; any element out of the ordinary is named too."""

    KEPT = ("h1", "h2", "h3", "p", "li", "th", "td")
    PLAIN = ("html", "table", "thead", "tbody", "tr", "ul", "ol", "blockquote", "hr", "br",
             "strong", "em")

    def __init__(self):
        super().__init__(convert_charrefs=True)
        self.element = None
        self.text = ""

    def handle_starttag(self, tag, attrs):
        if tag in self.KEPT:
            self.flush()
            self.element = tag
        elif tag == "br":
            self.text += "\n"
        elif tag not in self.PLAIN:
            print("unexpected", hexed(tag))

    def handle_endtag(self, tag):
        if tag in self.KEPT:
            self.flush()

    def handle_data(self, data):
        if self.element:
            self.text += data

    def handle_comment(self, data):
        print("unexpected", hexed("comment"))

    def flush(self):
        if self.element and (self.text.strip("\n") or self.element in ("th", "td")):
            print(self.element, hexed(self.text.strip("\n")))
        self.element = None
        self.text = ""


def show_html(path):
    with open(path, encoding="utf-8", newline="\n") as file:
        page = Page()
        page.feed(file.read())
        page.close()


if __name__ == "__main__":
    globals()["show_" + sys.argv[1]](sys.argv[2])
