#!/usr/bin/python3
"""Least costs over eight neighbours: our CellDistances beside MCP_Geometric of scikit-image.

    cmake -S . -B build -G Ninja -DRIMEHAUL_BENCH=ON && ninja -C build cell_distances
    tests/bench/mcp_bench.py build/tests/bench/cell_distances [SIDE ...]

Both work on the same raster of costs, 2000 cells each way if no other side is asked for, from a
cell near the corner to all others, in processes of their own, turn about, five rounds. Told are the
medians of processor time of the search alone and of peak memory, with ours over theirs (below 1
we take less), whole processes and, as `net`, less what each holds before it has read a cost. Theirs
counts making the MCP_Geometric object and find_costs. Costs must agree to 1e-9 of themselves.
Needs the package python3-skimage.
"""

import os
import statistics
import subprocess
import sys
import tempfile
import time

import numpy as np

ROUNDS = 5
START = (20, 20)


def peak_mb():
    """The most memory that was ever resident, since this program was started."""
    with open("/proc/self/status") as status:
        return next(int(line.split()[1]) / 1024 for line in status if line.startswith("VmHWM:"))


def theirs(costs_path, side, out_path):
    """Runs in a process of its own; prints seconds and the memory before and at the most."""
    from skimage.graph import MCP_Geometric

    before = peak_mb()
    costs = np.fromfile(costs_path, np.float32).reshape(side, side)
    start = time.process_time()
    search = MCP_Geometric(np.where(costs > 0, costs, -1.0))
    found, _ = search.find_costs([START], find_all_ends=True)
    seconds = time.process_time() - start
    print(seconds, before, peak_mb())
    found.tofile(out_path)


def measured(command):
    """Seconds of the search, and peak MB of a child before it read the costs and after."""
    return [float(word) for word in subprocess.check_output(command, text=True).split()]


def costs_of(side):
    """Smooth hills of random height and size, a tenth of the cells barred, 1 to about 20."""
    dice = np.random.default_rng(1)
    rise = np.zeros((side, side))
    for cells in (4, 16, 64, 256):
        knots = dice.normal(size=(cells + 1, cells + 1)) / np.sqrt(cells)
        at = np.linspace(0, cells, side, endpoint=False)
        low = at.astype(int)
        share = at - low
        rows = knots[low] * (1 - share)[:, None] + knots[low + 1] * share[:, None]
        rise += rows[:, low] * (1 - share) + rows[:, low + 1] * share
    south, east = np.gradient(rise)
    costs = 1 + 19 * np.minimum(1, np.hypot(south, east) / np.quantile(np.hypot(south, east), 0.9))
    costs[dice.random((side, side)) < 0.1] = 0
    costs[START] = 1
    return costs.astype(np.float32)


def bench(ours, side):
    with tempfile.TemporaryDirectory() as folder:
        costs_path, our_out, their_out = (os.path.join(folder, name) for name in ("c", "o", "t"))
        costs_of(side).tofile(costs_path)
        rows = []
        for _ in range(ROUNDS):
            at = [str(side), str(side), str(START[1]), str(START[0])]
            our_s, our_before_mb, our_mb = measured([ours, costs_path, *at, our_out])
            their_s, their_before_mb, their_mb = measured(
                [sys.executable, __file__, "--theirs", costs_path, str(side), their_out])
            rows.append((our_s, their_s, our_mb, their_mb, our_mb - our_before_mb,
                         their_mb - their_before_mb))
            mine, other = np.fromfile(our_out), np.fromfile(their_out)
            reached = np.isfinite(other)
            if not np.array_equal(reached, np.isfinite(mine)):
                sys.exit("the two do not reach the same cells")
            apart = np.max(np.abs(mine[reached] - other[reached]) / np.maximum(other[reached], 1))
            if not apart <= 1e-9:
                sys.exit(f"costs differ by up to {apart:.3g} of themselves")
        our_s, their_s, our_mb, their_mb, our_net, their_net = map(statistics.median, zip(*rows))
        print(f"{side} x {side}, {reached.mean():.1%} reached, costs at most {apart:.2g} apart")
        print(f"  time    {our_s:8.3f} s   {their_s:8.3f} s   ratio {our_s / their_s:.3f}"
              f"  (1/{their_s / our_s:.1f})")
        print(f"  memory  {our_mb:8.1f} MB  {their_mb:8.1f} MB  ratio {our_mb / their_mb:.3f}"
              f"  (1/{their_mb / our_mb:.1f})")
        print(f"  net     {our_net:8.1f} MB  {their_net:8.1f} MB  ratio {our_net / their_net:.3f}"
              f"  (1/{their_net / our_net:.1f})")


if __name__ == "__main__":
    if len(sys.argv) == 5 and sys.argv[1] == "--theirs":
        theirs(sys.argv[2], int(sys.argv[3]), sys.argv[4])
    elif len(sys.argv) >= 2:
        for side in [int(word) for word in sys.argv[2:]] or [2000]:
            bench(sys.argv[1], side)
    else:
        sys.exit(__doc__)
