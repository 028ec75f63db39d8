#!/usr/bin/python3
"""Lists every line and branch of the judging rooms that no test reaches, and fails on any.

    uncovered.py COVERAGE.json EXCLUSIONS ROOT

COVERAGE.json is what `llvm-cov export` writes. EXCLUSIONS has a block for each reason why code can
not be reached: a line `# reason`, then lines `file: the source line, as it stands`, with blanks at
its ends left off. One that excludes nothing any more is a fault as well, unless its reason begins
with "Depends on the processor": what one machine runs another does not have.
"""

import collections
import json
import pathlib
import sys

ROOMS = ("rig", "snow", "passage", "terrain", "hazard")


def read_exclusions(path):
    reason = None
    excluded = {}
    for number, line in enumerate(pathlib.Path(path).read_text().splitlines(), 1):
        if line.startswith("# "):
            reason = line[2:]
        elif line.strip():
            file, found, code = line.partition(": ")
            if not found or reason is None:
                sys.exit(f"{path}:{number}: neither a reason nor `file: source line`")
            excluded[(file, code.strip())] = reason
        else:
            reason = None
    return excluded


def lines_missed(segments):
    """Line by line as llvm-cov counts: a line is missed when nothing that begins on it or covers
    its start was ever run."""
    missed = []
    current = None
    by_line = collections.defaultdict(list)
    for line, column, count, has_count, is_entry, *_ in segments:
        by_line[line].append((count, has_count, is_entry))
    if not by_line:
        return missed
    for line in range(min(by_line), max(by_line) + 1):
        here = by_line.get(line, [])
        counts = [count for count, has_count, is_entry in here if has_count and is_entry]
        if current is not None and current[1]:
            counts.append(current[0])
        if counts and max(counts) == 0:
            missed.append(line)
        if here:
            current = here[-1]
    return missed


def branches_missed(branches):
    taken = collections.Counter()
    places = set()
    for line, column, end_line, end_column, count, false_count, *_ in branches:
        place = (line, column, end_line, end_column)
        places.add(place)
        taken[place, True] += count
        taken[place, False] += false_count
    return [(place, way) for place in sorted(places) for way in (True, False)
            if taken[place, way] == 0], 2 * len(places)


def main():
    coverage, exclusions, root = sys.argv[1:]
    excluded = read_exclusions(exclusions)
    used = set()
    found = lines = branches = 0
    files = json.loads(pathlib.Path(coverage).read_text())["data"][0]["files"]
    for file in files:
        path = pathlib.Path(file["filename"]).resolve()
        try:
            shown = str(path.relative_to(pathlib.Path(root).resolve() / "src"))
        except ValueError:
            continue
        if shown.split("/")[0] not in ROOMS:
            continue
        source = path.read_text().splitlines()
        lines += file["summary"]["lines"]["count"]

        def tell(line, what):
            nonlocal found
            key = (shown, source[line - 1].strip())
            if key in excluded:
                used.add(key)
                return
            found += 1
            print(f"src/{shown}:{line}: {what}: {source[line - 1].strip()}")

        for line in lines_missed(file["segments"]):
            tell(line, "never run")
        missed, all_ways = branches_missed(file["branches"])
        branches += all_ways
        for (line, column, end_line, end_column), way in missed:
            part = source[line - 1][column - 1:end_column - 1] if line == end_line else "..."
            tell(line, f"never {'true' if way else 'false'}: {part}")
    measured = {str(pathlib.Path(file["filename"]).resolve()) for file in files}
    for room in ROOMS:
        for path in sorted((pathlib.Path(root).resolve() / "src" / room).glob("*.cpp")):
            if str(path) not in measured:
                found += 1
                print(f"src/{room}/{path.name}: in no test program of the rooms")
    here_or_there = {key for key, reason in excluded.items()
                     if reason.startswith("Depends on the processor")}
    for file, code in sorted(set(excluded) - used - here_or_there):
        found += 1
        print(f"{exclusions}: {file}: reached by now, or gone: {code}")
    print(f"coverage: {lines} lines and {branches} ways out of branches, {len(used)} source lines "
          f"excluded, {found} not reached")
    return found != 0


sys.exit(main())
