"""The reference values of `tests/heat/history.rs` and `tests/heat/wet_cloth.rs`, from the solver of `history.py`.

    rows.py          print the rows of each table
    rows.py wet      print those of the wet cloths alone
"""

import multiprocessing
import sys

import numpy as np
from history import cut, film_bottom, printed_water, stages, start, steps

ZERO = 273.15
GRID = {"film": 12, "cloth": 32, "rtol": 1e-6, "atol": 1e-5}
FIBRES = {  # density kg/m3, specific heat J/(kg K), its slope, regain at 65 % RH
    "cotton": (1540.0, 1250.0, 3.0, 0.075),
    "polyester": (1390.0, 1030.0, 4.0, 0.004),
    "nylon": (1140.0, 1450.0, 5.0, 0.041),
    "viscose": (1520.0, 1350.0, 3.5, 0.13),
    "elastane": (1150.0, 1500.0, 3.0, 0.012),
}
# The kinetics that the tests name; they are the reference's own, whatever ships.
INKS = {
    "ordinary": (148.0, 4.0, 6.0, 160.0, 100e3, 10.0, 90.0, 110e3),
    "low-cure": (122.0, 4.0, 6.0, 135.0, 100e3, 10.0, 80.0, 110e3),
}


def ink(name):
    half, width, time, reference, energy, gel_time, gel_reference, gel_energy = INKS[name]
    return {
        "half_fused": half + ZERO, "width": width, "fusion_time": time, "fusion_reference": reference + ZERO,
        "fusion_energy": energy, "gel_time": gel_time, "gel_reference": gel_reference + ZERO, "gel_energy": gel_energy,
    }


def cloth(weight, thickness, **shares):
    volume, heat, slope, regain = (sum(share * FIBRES[name][i] for name, share in shares.items()) for i in range(4))
    fill = weight / thickness / volume
    fibre, air = 0.20, 0.031
    conductivity = 0.5 * (fill * fibre + (1.0 - fill) * air) + 0.5 / (fill / fibre + (1.0 - fill) / air)
    return {
        "areal_mass": weight / 1000.0, "thickness": thickness / 1000.0, "conductivity": conductivity,
        "heat_capacity": heat, "heat_capacity_slope": slope, "regain_65": regain,
    }


def fleece(weight, thickness):
    return cloth(weight, thickness, cotton=0.8, polyester=0.2)


COTTON = cloth(150.0, 0.6, cotton=1.0)
OPEN = {"seconds": 60.0, "air": 298.15, "h_top": 20.0, "h_bottom": 10.0, "radiates": True}


def case(front, film, panel, set_c, dwell, kinetics, **changed):
    stack = {
        "film": {"thickness": film * 1e-6, "density": 1300.0}, "blocker": None, "front": front, "back": front, "board": None, "gap": 40.0,
        "humidity": 0.65, "added_water": 0.0, "enters": 298.15,
        "near_infrared": {"film": 0.3, "through": 0.15, "cloth": 0.5},
    }
    zone = {
        "length": 1.8, "air_offset": 0.0, "h_top": 30.0, "h_bottom": 15.0, "panel_offset": panel, "exchange": 0.15,
        "emitter": "mid-infrared",
    }
    belt = {"heat_capacity": 600.0, "contact": 40.0, "enters": 70.0 + ZERO}
    for where in (stack, zone, belt):
        where.update({key: value for key, value in changed.items() if key in where})
    dryer = {"zones": [zone], "belt": belt, "humidity_ratio": 0.012, "rests": [OPEN]}
    return {
        "name": "row", "set": set_c + ZERO, "belt_speed": 1.8 / dwell, "stop": 0.0, "stack": stack, "dryer": dryer,
        "ink": ink(kinetics),
    }


def follow(case, grid=GRID, looks=()):
    """Peaks of the film's top and bottom, fused share, water as it leaves; and the state at some moments in the dryer."""
    stack = cut(case, grid)
    state = start(stack, case)
    top, bottom, left, seen = 0.0, 0.0, None, []
    for index, (seconds, around) in enumerate(stages(case)):
        since = 0.0 if index == 0 else case["dryer"]["zones"][0]["length"] / case["belt_speed"]
        marks = [look - since for look in looks if 0.0 < look - since <= seconds] + [seconds]
        at = 0.0
        for mark in marks:
            if mark <= at:
                continue
            for state in steps(case, stack, state, around, mark - at, grid):
                bottom = max(bottom, film_bottom(stack, state, around.through))
                top = max(top, state[0])
            at = mark
            if mark + since in looks:
                first = 2 * (stack.bottom + 1)
                front = state[first : first + 2 * stack.front : 2]
                seen.append((state[0], film_bottom(stack, state, around.through), front.mean(), state[2 * stack.bottom + 1]))
        if index == 0:
            left = printed_water(stack, state)
    return top, bottom, state[2 * stack.bottom - 1], left, seen


def dwell_to_fuse(make):
    low, high = 10.0, 120.0
    for _ in range(12):
        middle = 0.5 * (low + high)
        low, high = (middle, high) if follow(make(middle))[2] < 0.9 else (low, middle)
    return 0.5 * (low + high)


TRI_BLEND = {"polyester": 0.5, "cotton": 0.25, "viscose": 0.25}
SEVEN = [
    ("cotton jersey", COTTON),
    ("50/50", cloth(150.0, 0.55, cotton=0.5, polyester=0.5)),
    ("polyester", cloth(140.0, 0.45, polyester=1.0)),
    ("nylon and elastane", cloth(160.0, 0.5, nylon=0.85, elastane=0.15)),
    ("tri-blend", cloth(140.0, 0.5, **TRI_BLEND)),
    ("fleece 280", fleece(280.0, 1.6)),
    ("fleece 400", fleece(400.0, 2.4)),
]
CHANGED = [
    ("bone dry", {"humidity": 0.02}), ("90 % RH", {"humidity": 0.90}), ("a fifth of water", {"added_water": 0.20}),
    ("film 40 µm", {"film_um": 40.0}), ("film 70 µm", {"film_um": 70.0}), ("film 150 µm", {"film_um": 150.0}),
    ("film 250 µm", {"film_um": 250.0}), ("h 20", {"h_top": 20.0}), ("h 45", {"h_top": 45.0}),
    ("exchange 0.08", {"exchange": 0.08}), ("exchange 0.25", {"exchange": 0.25}), ("air 185 °C", {"air_offset": 10.0}),
    ("air 165 °C", {"air_offset": -10.0}), ("no back", {"back": None}),
]
# Cloth, added water, dryer, dwell of the wet table: see `wet_cloth.rs`.
WET = [
    ("cotton fleece", cloth(320.0, 2.4, cotton=1.0), 0.2, 28.0),
    ("cotton fleece", cloth(320.0, 2.4, cotton=1.0), 0.9, 37.0),
    ("80/20 fleece", fleece(280.0, 1.6), 0.3, 40.0),
    ("polyester", cloth(240.0, 1.6, polyester=1.0), 0.3, 23.0),
    ("cotton jersey", COTTON, 0.3, 45.0),
    ("cotton jersey", COTTON, 0.6, 45.0),
]


def seven(row):
    name, front = row
    found = []
    for kinetics, set_c, panel in (("ordinary", 175.0, 225.0), ("low-cure", 150.0, 190.0)):
        def make(dwell):
            return case(front, 100.0, panel, set_c, dwell, kinetics)
        dwell = dwell_to_fuse(make)
        found.append((dwell, follow(make(dwell))[0] - ZERO))
    return name, found


def changed(row):
    name, change = row
    film = change.get("film_um", 100.0)
    return name, dwell_to_fuse(lambda dwell: case(COTTON, film, 225.0, 175.0, dwell, "ordinary", **change))


def wet(row):
    name, front, water, dwell = row
    def on(cells):
        result = follow(case(front, 100.0, 225.0, 200.0, dwell, "low-cure", added_water=water), GRID | {"cloth": cells})
        return np.array(result[1:4])
    bottom, fused, left = 2.0 * on(64) - on(32)
    return name, water, dwell, bottom - ZERO, fused, left


def main(words):
    with multiprocessing.Pool() as pool:
        if "wet" not in words:
            for name, found in pool.imap(seven, SEVEN):
                print(name, " ".join(f"[{dwell:.2f}, {peak:.2f}]" for dwell, peak in found), flush=True)
            for name, dwell in pool.imap(changed, CHANGED):
                print(f"{name}: {dwell:.2f}", flush=True)
            moments = (5.0, 10.0, 20.0, 30.0, 40.0, 59.99, 65.0, 80.0)
            for time, state in zip(moments, follow(case(COTTON, 100.0, 225.0, 175.0, 60.0, "ordinary"), looks=moments)[4]):
                print(f"{time}: " + ", ".join(f"{value - ZERO:.2f}" for value in state[:3]))
            flash = case(COTTON, 150.0, 460.0, 40.0, 8.0, "ordinary", h_top=10.0, h_bottom=5.0, exchange=0.5)
            flash["dryer"]["belt"]["enters"] = 40.0 + ZERO
            for time, state in zip((4.0, 7.99), follow(flash, looks=(4.0, 7.99))[4]):
                print(f"flash {time}: {state[0] - ZERO:.2f}, {state[1] - ZERO:.2f}, gelled {state[3]:.4f}")
        for name, water, dwell, peak, fused, left in pool.imap(wet, WET):
            print(f"{name}, {water}, {dwell}: {peak:.2f}, {fused:.4f}, {100.0 * left:.2f} %", flush=True)
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
