"""Dye in a film that binds a part of it, by SciPy's BDF as a method of lines: the table of tests/dye/sheet.rs, and the time.

    q_t = (c_x)_x,  q = c + B c / (c + K),  x from the cloth; time is the path, the integral of D dt, in m².

Dye enters from below at an even pace until the path is HEAT; the free dye of the top 30 µm is shown then and after
further paths. `python3 tests/peer/sheet.py` prints 400 cells to 1e-8 (the table) and 20 cells to 1e-3. With `--time` and
a file of `whitehold-bench cases films` it takes the fewest cells and the loosest tolerance that are as exact as ours, and
prints the time of one film as JSON. Needs numpy and scipy.
"""

import json
import sys

import time

import numpy as np
from scipy.integrate import solve_ivp
from scipy.sparse import diags

HALF_BOUND = 0.02  # kg/m³
HEAT = 1e-9  # m²
PATHS = [2e-10, 1e-9, 5e-9, 2e-8]  # m²
# Film (m), capacity (kg/m³), dye that arrives (kg/m²).
CASES = [(100e-6, 4.0, 250e-6), (100e-6, 4.0, 450e-6), (60e-6, 1.0, 80e-6), (100e-6, 0.0, 50e-6)]


def free(held, capacity):
    """Langmuir's balance in the form that does not cancel."""
    b = HALF_BOUND + capacity - held
    root = np.sqrt(b * b + 4 * held * HALF_BOUND)
    return np.where(b > 0, 2 * HALF_BOUND * held / (b + root), 0.5 * (root - b))


def tops(film, capacity, arrives, cells, rtol):
    width = film / cells
    pattern = diags([np.ones(cells - 1), np.ones(cells), np.ones(cells - 1)], [-1, 0, 1])

    def rates(inflow):
        def rate(_, held):
            c = free(np.maximum(held, 0), capacity)
            flux = np.zeros(cells + 1)
            flux[0] = inflow
            flux[1:-1] = (c[:-1] - c[1:]) / width
            return (flux[:-1] - flux[1:]) / width

        return rate

    def go(inflow, span, start, at):
        return solve_ivp(
            rates(inflow), (0, span), start, method="BDF", rtol=rtol, atol=1e-10, t_eval=at, jac_sparsity=pattern
        ).y.T

    seen = round(30e-6 / width)
    heated = go(arrives / HEAT, HEAT, np.zeros(cells), [HEAT])[-1]
    states = [heated, *go(0.0, PATHS[-1], heated, PATHS)]
    return [float(np.mean(free(np.maximum(state, 0), capacity)[-seen:])) for state in states]


def timed(given):
    """The cheapest solve that is as exact as ours against 400 cells to 1e-8."""
    cases = [tuple(film["film"]) for film in given["films"]]
    exact = [tops(*case, 400, 1e-8) for case in cases]
    # The exact solve shows the heat's end and every later look; ours has the same five.
    off = lambda found: max(abs(a - b) for one, other in zip(found, exact) for a, b in zip(one, other))
    ours = off([film["tops"] for film in given["films"]])
    best = None
    for cells in [10, 20, 30, 40, 60, 80]:
        for rtol in [3e-2, 1e-2, 3e-3, 1e-3, 3e-4, 1e-4]:
            worst = off([tops(*case, cells, rtol) for case in cases])
            if worst <= ours:
                spent = []
                for _ in range(5):
                    began = time.perf_counter()
                    for case in cases:
                        tops(*case, cells, rtol)
                    spent.append((time.perf_counter() - began) / len(cases))
                if best is None or min(spent) < best["seconds"]:
                    best = {"seconds": min(spent), "cells": cells, "rtol": rtol, "off": worst, "ours": ours}
                break
    return best


if __name__ == "__main__" and "--time" in sys.argv:
    with open(sys.argv[-1], encoding="utf-8") as file:
        print(json.dumps(timed(json.load(file))))
elif __name__ == "__main__":
    for cells, rtol in [(400, 1e-8), (20, 1e-3)]:
        for case in CASES:
            began = time.perf_counter()
            found = tops(*case, cells, rtol)
            spent = time.perf_counter() - began
            print(f"{cells} cells, {rtol:.0e}: {case}: " + " ".join(f"{top:.5f}" for top in found) + f"  {spent * 1e3:.0f} ms")
