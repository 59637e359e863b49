#!/usr/bin/env python3
"""Every page in every format: the same numbers, and hostile names whole and harmless.

documents.py PROGRAM SOURCE    "wrong ..." a line for what differs; "SKIPPED ..." for what cannot be looked at

Readers from outside: Python's own json, csv and HTML parser, xmllint, and the icalendar library where it is installed.
"""
import collections
import csv
import io
import json
import os
import re
import subprocess
import sys
import tempfile

SLOW = bool(os.environ.get("BASINWRIGHT_SLOW_BUILD"))  # Sanitizers: a part of the examples and names is enough.
PROGRAM, SOURCE = os.path.abspath(sys.argv[1]), os.path.abspath(sys.argv[2])
sys.path.insert(0, os.path.join(SOURCE, "tests", "render"))
import html_page  # noqa: E402

try:
    from icalendar import Calendar
except ImportError:
    Calendar = None
    print("SKIPPED: python3-icalendar is not installed, so calendars are not read back by it")
XMLLINT = "/usr/bin/xmllint" if os.path.exists("/usr/bin/xmllint") else None
if not XMLLINT:
    print("SKIPPED: xmllint is not installed, so drawings are not held against XML")

NUMBER = re.compile(r"\d+(?:[.,:]\d+)*")
# As nobody should write a name; more of them in tests/render/sample.hpp.
HOSTILE = [
    "<script>alert(1)</script>", "\"><img src=x onerror=alert(1)>", "</title></style></svg>", "<!-- x --> & &lt; &#65;",
    "=1+1", "+49 30", "-2+3", "@SUM(A1)", "a | b \\| c \\", "![i](javascript:alert(1)) [l](x)", "*b* _u_ `c` # h",
    "; DROP TABLE pools; --", "{{7*7}} ${HOME} %s %n {0}", "new\nline", "tab\there", "BEGIN:VEVENT\nSUMMARY:x",
    "a;b,c\\d:e\"f", "\u202edesrever", "שלום עולם", "عمق المسبح ٢٫٥", "👩🏽‍🎨🏊‍♀️", "全角文字の名前", "e\u0301a\u030a",
    "\u0007bell\u001b[31mred\u001b[0m", "\u007f\u009b31m", "line\u2028separator", "\ufeffmark", "' or 1=1", "\\n\\r\\t\\0",
    "../../etc/passwd", "C:\\nul", "1e999 NaN undefined", "０１２", "x" * 300, "ﬁ ﬀ ß İ ı", "\u00ad\u200b\u2060soft",
]
wrongs = 0


def wrong(*words):
    global wrongs
    wrongs += 1
    print("wrong", *words)


def run(*arguments, statuses=(0, 3)):
    result = subprocess.run([PROGRAM, *arguments, "--quiet"], capture_output=True, timeout=60, check=False)
    if result.returncode not in statuses:
        wrong("status", result.returncode, arguments, result.stderr.decode("utf-8", "replace")[:300])
    return result.stdout.decode("utf-8")


def numbers(text):
    return collections.Counter(NUMBER.findall(text))


def page_of(html):
    with tempfile.NamedTemporaryFile("w", suffix=".html", encoding="utf-8", newline="") as file:
        file.write(html)
        file.flush()
        return html_page.read(file.name)


def is_list_number(line):
    return re.match(r"\s*\d+[.)] ", line)


def text_numbers(text):
    """Numbers of lists are the format's own."""
    return numbers("\n".join(re.sub(r"^\s*\d+[.)] ", "", line) for line in text.split("\n")))


def html_numbers(html, drawn):
    page = page_of(html)
    for reason in page.wrongs:
        wrong("html:", reason)
    # The title says again what the heading says; an unseen caption what the section's title says.
    return numbers("\n".join(text for tag, text in page.texts if tag not in ("title",) and (drawn or tag != "text")))


def same_numbers(name, options):
    for command in ("quote", "checklist", "handover", "takeoff", "jobsheet"):
        def of(form):
            return run(command, *options, "--format", form)
        plain, marked, paged = text_numbers(of("text")), text_numbers(of("markdown")), html_numbers(of("html"), False)
        if set(plain) != set(marked):
            wrong(name, command, "text and markdown:", set(plain) ^ set(marked))
        # Headings come again in captions and contents; a job pack says how numbers were reached.
        missing = set(plain) - set(paged)
        more = set(paged) - set(plain)
        if missing or (more and command not in ("jobsheet",)):
            wrong(name, command, "text and html:", missing, more)


def same_money(name, options):
    """Lines of the price in JSON, in CSV and as people read them."""
    tree = json.loads(run("jobsheet", *options, "--format", "json"))
    text = run("jobsheet", *options)
    if not tree.get("price"):
        return
    table = run("jobsheet", *options, "--format", "csv", "--table", "price.lines")
    rows = list(csv.DictReader(io.StringIO(table, newline="")))
    if [(r["what"], r["amount"]) for r in rows] != [(r["what"], r["amount"]) for r in tree["price"]["lines"]]:
        wrong(name, "price lines in csv and json")
    for line in tree["price"]["lines"]:
        shown = f"{float(line['amount']):,.2f}" if "." in line["amount"] else f"{int(line['amount']):,}"
        if shown not in text:
            wrong(name, "no", shown, "in the text")
    tasks = list(csv.DictReader(io.StringIO(run("jobsheet", *options, "--format", "csv", "--table", "programme.tasks"),
                                            newline="")))
    if [t["start"] for t in tasks] != [t["start"] for t in tree["programme"]["tasks"]]:
        wrong(name, "tasks in csv and json")
    if Calendar:
        calendar = Calendar.from_ical(run("jobsheet", *options, "--format", "ics"))
        starts = collections.Counter(e["DTSTART"].dt.isoformat()[:16] for e in calendar.walk("VEVENT") if "DTEND" in e)
        if starts != collections.Counter(t["start"] for t in tree["programme"]["tasks"]):
            wrong(name, "tasks in the calendar and in json")
        uids = [str(e["UID"]) for e in calendar.walk() if "UID" in e]
        if len(set(uids)) != len(uids):
            wrong(name, "an identifier comes twice")


def is_shown(name, text):
    """The letters and digits of a name in their order, whatever wrapping and escaping did between them."""
    def kept(words):
        return "".join(c for c in words if c.isalnum())
    def unescaped(words):
        return re.sub(r"\\x[0-9A-Fa-f]{2}|\\u[0-9A-Fa-f]{4}", "", words)
    return kept(unescaped(re.sub(r"[\x00-\x1f\x7f-\x9f\u2028\u202e]", "", name))) in kept(unescaped(text))


def hostile(folder):
    with open(os.path.join(SOURCE, "examples", "plain-pool.json"), encoding="utf-8") as file:
        job = json.load(file)
    for i in range(0, len(HOSTILE), 16 if SLOW else 4):
        names = (HOSTILE + HOSTILE)[i:i + 4]
        job["job"].update(number=names[0], client={"name": names[1], "address": names[2]})
        job["terms"] = {"notes": [names[3]]}
        path = os.path.join(folder, f"job {i} ' & <b>.json")
        with open(path, "w", encoding="utf-8") as file:
            json.dump(job, file)
        options = (path, "--today", "2027-01-04")
        check_hostile(names, options)


def check_hostile(names, options):
    tree = json.loads(run("quote", *options, "--format", "json"))
    if tree["quotation"]["client"]["name"] != names[1]:
        wrong("json does not give back", repr(names[1]), repr(tree["quotation"]["client"]["name"]))
    for form in ("text", "markdown", "html"):
        out = run("quote", *options, "--format", form)
        if re.search(r"[\x00-\x09\x0b-\x1f\x7f\x80-\x9f\u202e]", out):
            wrong(form, "lets a control character through for", repr(names))
        if form == "markdown":
            out = out.replace("<br>", "")
        if form == "html":
            page = page_of(out)
            for reason in page.wrongs:
                wrong("html:", reason, repr(names))
            out = "\n".join(text for _, text in page.texts)
        for name in names:
            if name and not is_shown(name, out):
                wrong(form, "does not show", repr(name))
    for command, form in (("jobsheet", "html"), ("checklist", "html"), ("handover", "html")):
        for reason in page_of(run(command, *options, "--format", form)).wrongs:
            wrong(command, "html:", reason, repr(names))
    drawing = run("takeoff", *options, "--format", "svg") if XMLLINT else None
    for svg in filter(None, (drawing, XMLLINT and run("jobsheet", *options, "--format", "svg"))):
        result = subprocess.run([XMLLINT, "--nonet", "--noout", "-"], input=svg.encode(), capture_output=True, check=False)
        if result.returncode:
            wrong("xmllint:", result.stderr.decode()[:200], repr(names))
    for row in csv.reader(io.StringIO(run("quote", *options, "--format", "csv"), newline="")):
        for cell in row:
            if cell[:1] in ("=", "+", "@", "\t", "\r") or (cell[:1] == "-" and not re.fullmatch(r"-[\d.]+", cell)):
                wrong("csv: a formula", repr(cell))
    if Calendar:
        calendar = Calendar.from_ical(run("jobsheet", *options, "--format", "ics"))
        if not all(is_shown(names[1], str(e["SUMMARY"])) for e in calendar.walk() if "SUMMARY" in e):
            wrong("ics does not show", repr(names[1]))


def main():
    for example in sorted(os.listdir(os.path.join(SOURCE, "examples")))[:3 if SLOW else None]:
        path = os.path.join(SOURCE, "examples", example)
        if not example.endswith(".json") or "rates" in example or "weather" in example:
            continue
        rates = path.replace(".json", ".rates.json")
        options = [path, "--today", "2027-01-04"] + (["--rates", rates] if os.path.exists(rates) else [])
        same_numbers(example, options)
        same_money(example, options)
    with tempfile.TemporaryDirectory() as folder:
        hostile(folder)
    sys.exit(1 if wrongs else 0)


if __name__ == "__main__":
    main()
