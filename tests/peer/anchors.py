"""Fits the numbers that carry the level of bleeding to the frequencies of `data/anchors.json`.

The product computes the chances (`tests/dye/fit_anchors.rs`, started here); what is fitted and how is this file's own: least
squares of log-odds, each row in units of a quarter of its range, each number held to its range in `data/` as by a normal law of
its logarithm. Rows are left out one at a time by one step of Gauss and Newton from the whole fit.

    anchors.py PROGRAM            print the fit, its rows and the rows left out
    anchors.py PROGRAM --now      print the rows as the data has them

PROGRAM is the test program of `tests/dye`, as `cargo test --test dye --no-run` names it.
"""

import json
import subprocess
import sys

import numpy as np

# Name, start, range.
FITTED = {
    "surface-dye": (3.9, 1.0, 20.0),
    "sportswear-loose-dye": (1.3, 0.8, 3.5),
    "surface-dye-sublimation": (15.5, 3.0, 40.0),
    "dye-on-fibre": (0.5, 0.3, 2.0),
    "red-dye": (1.5, 1.2, 2.5),
    "heather-dye": (0.6, 0.2, 1.0),
    "fluorescent-surface-dye": (2.5, 1.0, 6.0),
    "elastane-loose-dye": (1.5, 1.0, 3.0),
    "heat-dye-spread": (1.5, 0.7, 2.0),
    "loose-dye-spread": (0.8, 0.4, 1.2),
    "capacity/cotton": (0.005, 0.001, 0.05),
    "capacity/non-ghosting": (0.06, 0.005, 0.2),
    "capacity/low-bleed": (0.14, 0.01, 0.4),
    "capacity/polyester": (0.25, 0.03, 0.8),
    "capacity/blocker": (0.4, 0.03, 2.0),
}
# What others take from a number that is fitted.
FOLLOW = {"capacity/soft": "capacity/cotton", "capacity/nylon": "capacity/cotton", "capacity/stretch": "capacity/cotton"}


class Product:
    """The test program, which answers a line with a line."""

    def __init__(self, program):
        self.process = subprocess.Popen(
            [program, "chances_for_a_fit", "--ignored", "--nocapture", "--test-threads", "1"],
            stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True,
        )

    def chances(self, numbers):
        self.process.stdin.write(json.dumps(numbers) + "\n")
        self.process.stdin.flush()
        for line in self.process.stdout:
            if "> {" in line:
                return json.loads(line[line.index("> {") + 2 :])
        raise SystemExit("the program ended")


def logit(p):
    return np.log(p / (1.0 - p))


def main():
    program, *flags = sys.argv[1:]
    with open("data/anchors.json") as file:
        every = json.load(file)["anchors"]
    rows = every if "--now" in flags else [row for row in every if row["fitted"]]
    product = Product(program)
    names = list(FITTED)

    def numbers(x):
        value = {name: float(np.exp(v)) for name, v in zip(names, x)}
        value.update({name: value[of] for name, of in FOLLOW.items()})
        return value

    def odds(x):
        chances = product.chances(numbers(x) if x is not None else {})
        missing = [row["id"] for row in rows if row["id"] not in chances]
        if missing:
            print("no answer:", missing)
        return np.array([logit(np.clip(chances.get(row["id"], 0.5), 1e-4, 1 - 1e-4)) for row in rows])

    target = np.array([logit(row["fails"]["value"]) for row in rows])
    ends = np.array([[logit(end) for end in row["fails"]["range"]] for row in rows])
    weight = 4.0 / (ends[:, 1] - ends[:, 0])
    start = np.log([FITTED[name][0] for name in names])
    # Eight in ten of the prior within the range.
    prior = np.log([FITTED[name][2] / FITTED[name][1] for name in names]) / 2.0 / 1.2816

    def show(found):
        inside = (found >= ends[:, 0]) & (found <= ends[:, 1])
        for row, z, ok in zip(rows, found, inside):
            print(f"  {row['id']:5} {1 / (1 + np.exp(-z)):.3f} for {row['fails']['value']:.3f} {row['fails']['range']} {'' if ok else 'OUT '}{row['case']}")
        print(f"{inside.sum()} of {len(rows)} inside; rms {np.sqrt(np.mean((found - target) ** 2)):.3f}")

    if "--now" in flags:
        show(odds(None))
        return
    x = start.copy()
    found = odds(x)
    cost = lambda found, x: np.sum((weight * (found - target)) ** 2) + np.sum(((x - start) / prior) ** 2)
    damping = 0.1
    for step in range(int(flags[0]) if flags else 6):
        jacobian = np.empty((len(rows), len(names)))
        for i in range(len(names)):
            moved = x.copy()
            moved[i] += 0.1
            jacobian[:, i] = (odds(moved) - found) / 0.1
        a = np.vstack([weight[:, None] * jacobian, np.diag(1.0 / prior)])
        b = np.concatenate([weight * (target - found), (start - x) / prior])
        normal = a.T @ a
        while True:
            move = np.linalg.solve(normal + damping * np.diag(np.diag(normal)), a.T @ b)
            move = np.clip(move, -1.0, 1.0)
            tried = odds(x + move)
            if cost(tried, x + move) < cost(found, x):
                x, found, damping = x + move, tried, damping / 4
                break
            damping *= 4
            if damping > 1e4:
                break
        print(f"step {step}: cost {cost(found, x):.2f}", {n: round(v, 4) for n, v in numbers(x).items()}, flush=True)
        if damping > 1e4:
            break
    show(found)
    spread = np.sqrt(np.diag(np.linalg.inv(normal)))
    for name, v, s, p in zip(names, x, spread, prior):
        print(f"  {name:26} {np.exp(v):.4g} (factor {np.exp(s):.2f}; prior {np.exp(p):.2f})")
    misses, kept = [], 0
    for i, row in enumerate(rows):
        rest = np.delete(a, i, axis=0)
        b_rest = np.delete(np.concatenate([weight * (target - found), (start - x) / prior]), i)
        move = np.linalg.lstsq(rest, b_rest, rcond=None)[0]
        z = found[i] + jacobian[i] @ move
        misses.append(z - target[i])
        kept += ends[i, 0] <= z <= ends[i, 1]
        print(f"  left out {row['id']}: {1 / (1 + np.exp(-z)):.3f} for {row['fails']['value']:.3f}")
    print(f"left out: {kept} of {len(rows)} inside, mean miss {np.mean(np.abs(misses)):.3f} in log-odds")


if __name__ == "__main__":
    main()
