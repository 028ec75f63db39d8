#!/usr/bin/python3
"""Runs the tests of the judging rooms once for each mutant of a sample, and tells who survives.

    run_mutants.py MUTANTS.json PROGRAMS SURVIVORS WANTED

PROGRAMS is the folder with the mutated build's test programs. A mutant counts when its types have
the other operator; the first WANTED that count are judged. It is killed when a test fails, crashes
or takes ten times as long as without it. SURVIVORS is a page of the documents that lists all who
survive, each a line "- `file: what stands there -> what for it: source line`": under a heading
"### why" those that change nothing that anybody could see, with the reason, and under the heading
"### Open" the others. Fails when fewer than 95 in 100 of those not argued away are killed, or when
the page is not what was found.
"""

import concurrent.futures
import json
import os
import pathlib
import subprocess
import sys
import tempfile
import time

ROOMS = ("rig", "snow", "hazard", "terrain", "passage")
LEAST_KILLED = 0.95


def run(program, mutant=None, reached=None, limit=None):
    """Whether all its tests pass in time; alone in its own process group, so that nothing stays."""
    environment = dict(os.environ)
    if mutant is not None:
        environment["RIMEHAUL_MUTANT"] = str(mutant)
    if reached is not None:
        environment["RIMEHAUL_MUTANTS_REACHED"] = reached
    try:
        return subprocess.run([program, "--abort-after=1"], env=environment, timeout=limit,
                              stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL).returncode == 0
    except subprocess.TimeoutExpired:
        return False


def reached_by(programs):
    """By mutant, the programs that reach it, quickest first; and which have another operator."""
    reaching, possible, seconds = {}, set(), {}
    for program in programs:
        with tempfile.NamedTemporaryFile() as file:
            begun = time.monotonic()
            if not run(program, reached=file.name):
                sys.exit(f"{program}: fails without any mutant")
            seconds[program] = time.monotonic() - begun
            for line in pathlib.Path(file.name).read_text().splitlines():
                mutant, how = map(int, line.split())
                reaching.setdefault(mutant, []).append(program)
                if how == 1:
                    possible.add(mutant)
    for programs_of in reaching.values():
        programs_of.sort(key=seconds.get)
    return reaching, possible, seconds


def read_survivors(path):
    """By survivor the heading that it stands under."""
    heading, listed = None, {}
    for number, line in enumerate(pathlib.Path(path).read_text().splitlines(), 1):
        if line.startswith("### "):
            heading = line[4:]
        elif line.startswith("- `") and line.endswith("`"):
            if heading is None:
                sys.exit(f"{path}:{number}: a survivor under no heading")
            listed[line[3:-1]] = heading
    return listed


def shown(mutant, root):
    source = (root / mutant["file"]).read_text().splitlines()[mutant["line"] - 1].strip()
    text = " ".join(mutant["text"].split())
    return f"{mutant['file']}: {text} -> {mutant['other']}: {source}"


def main():
    mutants_file, folder, survivors_file, wanted = sys.argv[1:]
    root = pathlib.Path(__file__).resolve().parents[2]
    mutants = json.loads(pathlib.Path(mutants_file).read_text())["mutants"]
    programs = [f"{folder}/test_{room}" for room in ROOMS]
    reaching, possible, seconds = reached_by(programs)
    never = [mutant for mutant in mutants if mutant["id"] not in reaching]
    counting = [mutant for mutant in mutants
                if mutant["id"] in possible or mutant["id"] not in reaching][:int(wanted)]

    def lives(mutant):
        return all(run(program, mutant["id"], limit=10 * seconds[program] + 5)
                   for program in reaching.get(mutant["id"], []))

    survivors, done = [], 0
    with concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as pool:
        for mutant, alive in zip(counting, pool.map(lives, counting)):
            done += 1
            if alive:
                survivors.append(mutant)
                how = "never reached" if mutant in never else "survives"
                print(f"{mutant['line']}: {how}: {shown(mutant, root)}", flush=True)
            if done % 50 == 0:
                print(f"{done} of {len(counting)}, {len(survivors)} survive", file=sys.stderr, flush=True)

    listed = read_survivors(survivors_file)
    alive = {shown(mutant, root) for mutant in survivors}
    for line in sorted(alive - set(listed)):
        print(f"not listed in {survivors_file}: {line}")
    for line in sorted(set(listed) - alive):
        print(f"{survivors_file}: does not survive, or is not of this sample: {line}")
    argued = [mutant for mutant in survivors if listed.get(shown(mutant, root), "Open") != "Open"]
    judged = len(counting) - len(argued)
    killed = len(counting) - len(survivors)
    share = killed / judged if judged else 0.0
    print(f"mutants: {len(counting)} of {len(mutants)} count, {len(argued)} argued to change nothing, "
          f"{killed} of the other {judged} killed: {100 * share:.1f} %")
    return alive != set(listed) or len(counting) < int(wanted) or not share >= LEAST_KILLED


if __name__ == "__main__":
    sys.exit(main())
