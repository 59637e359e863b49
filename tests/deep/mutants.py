#!/usr/bin/env python3
"""Changes one number, sign or comparison at a time in the calculation rooms and runs the fast tests.

    mutants.py BUILD COUNT [--seed N] [--work FOLDER] [--rooms ROOM,...] [--own] [--again LOG]

BUILD is a finished Ninja build with g++ and -DBASINWRIGHT_TOGETHER=OFF, best of all without optimising;
neither it nor the sources are touched: a mutant is compiled beside them and linked before the rooms' libraries. It is killed when a
test of its own room fails, or one of the whole thread's. Each one that survives is printed with its
place and change; docs/mutants.md answers them. Seconds are the processor's, so that a busy machine
kills nothing. --own stops after the tests of the room, --again takes the survivors of an earlier run's output.
"""
import argparse
import json
import pathlib
import random
import re
import resource
import shlex
import subprocess
import tempfile
import xml.etree.ElementTree

ROOMS = ("money units dates shell materials weather preparation coverage chemistry purchase schedule sequence quote "
         "odds season").split()
# After the room's own tests: the rooms that build on it, then the whole thread.
ABOVE = {"materials": ["coverage", "preparation"], "units": ["readers"], "dates": ["schedule", "readers"],
         "schedule": ["sequence"], "weather": ["sequence"]}
THREAD = ["golden", "properties", "report"]
FAST = 2.0  # A test case that takes more is no fast test.
CHANGES = [
    (r" < ", " <= "), (r" > ", " >= "), (r" <= ", " < "), (r" >= ", " > "), (r" == ", " != "), (r" != ", " == "),
    (r"(?<=[\w\)\]]) \+ (?=[\w\(])", " - "), (r"(?<=[\w\)\]]) - (?=[\w\(])", " + "),
    (r"(?<=[\w\)\]]) \* (?=[\w\(])", " / "), (r"(?<=[\w\)\]]) / (?=[\w\(])", " * "),
    (r" \+= ", " -= "), (r" -= ", " += "), (r"&&", "||"), (r"\|\|", "&&"),
    (r"(?<![\w.\"'])(\d+\.\d+)(?![\w.])", lambda m: repr(float(m.group(1)) * 1.25 or 0.25)),
    (r"(?<![\w.\"'{\[<])([1-9]\d?)(?![\w.'\"\]>])", lambda m: str(int(m.group(1)) + 1)),
]
# Words, templates and room kept beforehand are no calculation; an rvalue's && is no "and".
SKIP = re.compile(r"^\s*(//|#|\*|template|case |using |namespace)|static_assert|std::string|\"|operator|<=>|throw |reserve\("
                  r"|[\w>]&& |&&\.\.\.|static_cast<void>")


def places(source):
    found = []
    for room in ROOMS:
        for path in sorted((source / "src" / room).glob("*.cpp")):
            for number, line in enumerate(path.read_text(encoding="utf-8").split("\n")):
                if SKIP.search(line):
                    continue
                code = line.split("//")[0]
                for pattern, new in CHANGES:
                    for match in re.finditer(pattern, code):
                        text = new(match) if callable(new) else new
                        found.append((room, path, number, match.span(), text))
    return found


class Bench:
    """The build and what a test of it takes."""

    def __init__(self, build, work):
        self.build, self.work = build, work
        self.environment = {"PATH": "/usr/bin:/bin", "LC_ALL": "C.UTF-8", "GCOV_PREFIX": str(work / "counts")}
        self.compile = {}
        for entry in json.loads((build / "compile_commands.json").read_text()):
            self.compile[pathlib.Path(entry["file"])] = shlex.split(entry["command"])
        self.source = self.settled("CMAKE_HOME_DIRECTORY")
        self.links, self.fast = {}, {}

    def settled(self, key):
        return pathlib.Path(re.search(rf"^{key}:\w+=(.*)$", (self.build / "CMakeCache.txt").read_text(), re.M).group(1))

    def run(self, command, seconds, out=subprocess.DEVNULL):
        def limits():
            resource.setrlimit(resource.RLIMIT_CPU, (int(seconds) + 1, int(seconds) + 2))
            resource.setrlimit(resource.RLIMIT_AS, (6 << 30, 6 << 30))
            resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
        try:
            return subprocess.run(command, cwd=self.build, env=self.environment, stdin=subprocess.DEVNULL, stdout=out,
                                  stderr=subprocess.DEVNULL, preexec_fn=limits, timeout=1800, check=False, text=True)
        except subprocess.TimeoutExpired:
            return subprocess.CompletedProcess(command, 1, "")

    def link_of(self, program):
        if program not in self.links:
            listed = subprocess.run(["ninja", "-C", self.build, "-t", "commands", f"tests/test_{program}"],
                                    capture_output=True, text=True, check=True).stdout
            line = [line for line in listed.splitlines() if f"-o tests/test_{program}" in line][-1]
            words = shlex.split(re.sub(r"^: && | && :$|cd \S+ && ", "", line).split(" && ")[0])
            self.links[program] = [word for word in words if "ccache" not in word]
        return self.links[program]

    def fast_tests(self, program):
        """A file with the names of the program's fast tests."""
        if program not in self.fast:
            told = self.run([f"tests/test_{program}", "-r", "xml", "-d", "yes"], 900, subprocess.PIPE).stdout
            took = []
            for case in xml.etree.ElementTree.fromstring(told).iter("TestCase"):
                result = case.find("OverallResult")
                if result.get("success") == "true":  # Another's work in the tree may break one beforehand.
                    took.append((result.get("durationInSeconds"), case.get("name")))
            names = [name for seconds, name in took if float(seconds) <= FAST]
            total = sum(float(seconds) for seconds, name in took if name in names)
            file = self.work / f"{program}.tests"
            file.write_text("".join(f'"{name}"\n'.replace(",", "\\,") for name in names))
            if self.run([f"tests/test_{program}", "-a", "-f", file], 900).returncode != 0:
                raise RuntimeError(f"{program} fails before anything is changed")
            self.fast[program] = (file, total)
            print(f"{program}: {len(names)} of {len(took)} tests are fast, {total:.1f} s", flush=True)
        return self.fast[program]

    def compiles(self, path, text):
        mutant = self.work / path.name
        mutant.write_text(text, encoding="utf-8")
        command = [word for word in self.compile[path] if "ccache" not in word]
        command = [str(mutant) if word == str(path) else word for word in command]
        command[command.index("-o") + 1] = str(self.work / "mutant.o")
        for flag, values in (("-MD", 1), ("-MT", 2), ("-MF", 2)):
            if flag in command:
                at = command.index(flag)
                del command[at:at + values]
        # The library checks its bounds, as CI's sanitizers would: a place beyond an array is noticed.
        done = self.run(command + ["-O0", "-D_GLIBCXX_ASSERTIONS", "-I", str(path.parent), "-w"], 300).returncode == 0
        mutant.unlink()
        return done

    def fails(self, program):
        tests, usual = self.fast_tests(program)
        command = list(self.link_of(program))
        at = command.index("-o")
        command[at + 1] = str(self.work / "mutant")
        command[at + 2:at + 2] = [str(self.work / "mutant.o"), "-fuse-ld=lld"]
        if self.run(command, 300).returncode != 0:
            raise RuntimeError(f"{program} cannot be linked: {shlex.join(command)}")
        return self.run([str(self.work / "mutant"), "-a", "-f", str(tests)], 10 + 4 * usual).returncode != 0

    def killer(self, room, thread):
        """The program that notices, or nothing."""
        for program in [room] + ABOVE.get(room, []) + thread:
            if not (self.build / f"tests/test_{program}").exists():
                continue  # No tests of its own, or not built.
            if self.fails(program):
                return program
        return None


def chosen(source, given):
    candidates = [c for c in places(source) if not given.rooms or c[0] in given.rooms.split(",")]
    print(f"{len(candidates)} places", flush=True)
    if given.again:
        left = set(re.findall(r"^\d+ SURVIVES (.*)$", given.again.read_text(encoding="utf-8"), re.M))
        return [c for c in candidates if told(source, c) in left]
    random.Random(given.seed).shuffle(candidates)
    return candidates


def mutated(candidate):
    """The lines of its file with the one changed, and that line before and after."""
    _, path, number, (start, end), text = candidate
    lines = path.read_text(encoding="utf-8").split("\n")
    line = lines[number]
    lines[number] = line[:start] + text + line[end:]
    return lines, line.strip(), lines[number].strip()


def told(source, candidate):
    _, before, after = mutated(candidate)
    return f"{candidate[1].relative_to(source)}:{candidate[2] + 1}: {before}  ->  {after}"


def main():
    options = argparse.ArgumentParser(description=__doc__.split("\n", 1)[0])
    options.add_argument("build", type=pathlib.Path)
    options.add_argument("count", type=int)
    options.add_argument("--seed", type=int, default=1)
    options.add_argument("--work", type=pathlib.Path)
    options.add_argument("--rooms", default="")
    options.add_argument("--own", action="store_true")
    options.add_argument("--again", type=pathlib.Path)
    given = options.parse_args()
    work = given.work or pathlib.Path(tempfile.mkdtemp(prefix="mutants-"))
    work.mkdir(parents=True, exist_ok=True)
    bench = Bench(given.build.resolve(), work.resolve())
    thread = [] if given.own else THREAD
    made, killed, by_room = 0, 0, {}
    for candidate in chosen(bench.source, given):
        if made == given.count:
            break
        room, path = candidate[:2]
        if room not in by_room:  # Unchanged it must pass, linked in the same way.
            if not bench.compiles(path, path.read_text(encoding="utf-8")) or bench.killer(room, thread):
                raise RuntimeError(f"{path} fails before anything is changed")
        if not bench.compiles(path, "\n".join(mutated(candidate)[0])):
            continue  # Not a mutant.
        by = bench.killer(room, thread)
        made += 1
        killed += by is not None
        tally = by_room.setdefault(room, [0, 0])
        tally[0] += by is not None
        tally[1] += 1
        verdict = "SURVIVES" if by is None else f"killed by {by}:"
        print(f"{made} {verdict} {told(bench.source, candidate)}", flush=True)
    for room, (dead, all_made) in sorted(by_room.items()):
        print(f"{room}: {dead} of {all_made}")
    print(f"{killed} of {made} killed")


main()
