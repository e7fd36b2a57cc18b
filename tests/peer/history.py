"""The history of a stack by other means: another solver on another grid, written from the equations alone.

Cell-centred finite volumes (the film's bottom is no node but follows from the flux through it), solved by SciPy's LSODA
together with gelation and fusion; Numba compiles the rates. Nothing here calls the product: constants and equations are
those of the module docs of `src/dryer/solve/chain.rs`, `src/dryer/solve/water.rs`, `src/textile/moisture.rs` and
`src/cure/mod.rs`, saturation pressure is Wagner and Pruss's (IAPWS 1992) where the product takes IAPWS-IF97.

    history.py CASES                compare with the product's results, which stand in CASES; exit 1 where one is too far off
    history.py --workers N CASES    the same on N processes in place of as many as there are cores
    history.py --keep FILE CASES    and keep what this solver finds
    history.py --time CASES         print the mean seconds a case on a coarse grid, loosely solved

Measured on 2026-12-01 by `cargo xtask peer --sample 2000`, the product against this solver:

                            median    98 %      99.5 %    worst     limit
    1434 dry  film peak, K  0.022     0.088     0.134     0.237     0.3
              fused         0.0000    0.0022    0.0034    0.0040    0.01
              water, kg/kg  0.00000   0.00014   0.00029   0.00047   0.003
    566 wet   film peak, K  0.015     0.222     0.328     0.707     0.3
              fused         0.0000    0.0021    0.0034    0.0054    0.01
              water, kg/kg  0.00004   0.00042   0.00051   0.00056   0.003

Wet is 5 to 100 % of added water. Three film peaks are beyond: 1978 and 1104 by 0.16 and 0.17 K, 202 by 0.41 K, soaked cloths
of some 2 mm whose film peaks while a drying front passes from node to node. In them the product is off, not this solver; on
its finer cells two more are at 0.31 K, 741 (dry, on a board) and 770. Before the product's cloth got twice the nodes and a
third of the tolerance of water, 22 were beyond, by up to 1.8 K; a wet history takes 2.1 times as long for it. This solver
takes 0.26 s a case; its own error of a wet peak is up to 0.3 K on the first cells, 0.1 K on the finer.
"""

import argparse
import json
import math
import multiprocessing
import sys
import time
from typing import NamedTuple

import numba
import numpy as np
from scipy.integrate import LSODA

SIGMA = 5.670374419e-8  # W/(m2 K4)
GAS = 8.314462618  # J/(mol K)
WATER = 0.018015268  # kg/mol
ATMOSPHERE = 101325.0  # Pa
AIR_GAS = 287.05  # J/(kg K)
AIR_HEAT = 1019.0  # J/(kg K)
WATER_HEAT = 4186.0  # J/(kg K)
EMISSIVITY = 0.90
LEWIS_2_3 = 0.90 ** (2.0 / 3.0)
DIFFUSIVITY = 2.5e-5  # m2/s at 298 K
STILL_AIR = WATER * ATMOSPHERE * DIFFUSIVITY / (GAS * 298.0)  # conductance of a metre to vapour at 298 K, kg/(m s)
OPENING = 0.4
STEAM = 0.97  # share of the atmosphere from which the potential goes on along ln p
GAP = 2.0  # conductance of the air between front and back, in air layers below the garment
WICKING = 1e-7  # m2/s
WET_CONDUCTIVITY = 0.57  # W/(m K) that a cloth full of water would gain
WATER_DENSITY = 1000.0
HOTTEST = 453.15  # K, beyond which the pressure over cloth is held
COLDEST = 250.0  # K, below which no state lies: where LSODA tries one, its rates stay finite and the step is refused
LEAST_REGAIN = 8e-3  # at 65 % RH, for the vapour
FILM_HEAT, FILM_SLOPE, FILM_K = 1450.0, 2.0, 0.18
FILM_ON_CLOTH, FILM_ON_FILM = 2000.0, 50_000.0  # W/(m2 K)
ROOM_RATIO = 0.0099  # kg/kg

LIMITS = np.array([0.3, 0.01, 0.003])  # K, fused share, kg/kg: how far the product may be off

FINE = {"film": 12, "cloth": 48, "rtol": 1e-6, "atol": 1e-5}
COARSE = {"film": 3, "cloth": 6, "rtol": 1e-4, "atol": 1e-2}


compiled = numba.njit(cache=True, error_model="numpy")


@compiled
def saturation_pressure(kelvin):
    """Wagner & Pruss 1992, Pa."""
    tau = 1.0 - kelvin / 647.096
    root = math.sqrt(tau)
    series = (
        -7.85951783 * tau
        + 1.84408259 * tau * root
        - 11.7866497 * tau**3
        + 22.6807411 * tau**3 * root
        - 15.9618719 * tau**4
        + 1.80122502 * tau**7 * root
    )
    return 22.064e6 * math.exp(647.096 / kelvin * series)


@compiled
def clip(value, low, high):
    return min(max(value, low), high)


def vapour(ratio):
    """Vapour pressure of air with so much water, Pa."""
    return ratio / (ratio + 0.622) * ATMOSPHERE


def regain(phi, at_65):
    return at_65 * 0.55 * phi * (1.0 / (0.25 + phi) + 1.0 / (1.25 - phi))


@compiled
def over_cloth(water, temperature, at_65):
    """Potential of the vapour over a cell of cloth, and the heat that leaving costs, J/kg."""
    w = max(water, 0.0) / at_65
    b = 0.825 - w
    root = math.sqrt(b * b + 1.25 * w * w)
    phi = min(0.625 * w / (b + root) if b > 0.0 else (root - b) / (2.0 * w), 1.0)
    sorption = 195e3 * (1.0 - phi) * (1.0 / (0.2 + phi) + 1.0 / (1.05 - phi))
    held = clip(temperature, COLDEST, HOTTEST)
    activity = min(phi * math.exp(-sorption * WATER / GAS * (1.0 / held - 1.0 / 298.15)), 1.0)
    share = activity * saturation_pressure(held) / ATMOSPHERE
    below = -math.log(1.0 - min(share, STEAM))
    potential = below if share < STEAM else below + STEAM / (1.0 - STEAM) * math.log(share / STEAM)
    return potential, 2.792e6 - 160.0 * held - 3.43 * held**2 + sorption


class Ink(NamedTuple):
    """Kinetics of gelation and fusion: s, K, J/mol."""

    gel_time: float
    gel_reference: float
    gel_energy: float
    fusion_time: float
    fusion_reference: float
    fusion_energy: float
    half_fused: float
    width: float


class Around(NamedTuple):
    """What surrounds the stack: air, what it lets pass, and radiation as `lit` says."""

    air: float  # K
    h_top: float  # W/(m2 K)
    h_bottom: float
    vapour: float  # Pa
    source: float  # W/m2
    through: float  # W/m2
    emission: float  # W/(m2 K4)
    belt: float  # W/(m2 K4)


class Stack(NamedTuple):
    """The layers cut into cells, from the film's top to the belt, which is the last cell.

    The state is interleaved, temperature and water of each cell in turn, so that the Jacobian is a band. A film holds no
    water: the place of its last cell's water holds the gelled share, that of the cell above it the fused share.
    """

    # Of each cell.
    mass: np.ndarray  # kg/m2
    heat: np.ndarray  # J/(kg K) at 25 °C
    slope: np.ndarray  # J/(kg K2)
    half: np.ndarray  # resistance of heat from its middle to its face, m2 K/W
    contact: np.ndarray  # resistance of heat between its face and the next cell's, m2 K/W
    bottom: int  # the film's last cell; cloth begins below it
    front: int  # number of cells of the printed cloth
    # Of each cell of cloth.
    width: np.ndarray  # m
    density: np.ndarray  # kg/m3
    at_65: np.ndarray  # regain for the vapour
    bound: np.ndarray  # water that the fibres bind, kg/kg
    held: np.ndarray  # water at the entry, kg/kg
    joined: np.ndarray  # whether the next cell is of the same cloth
    board: float  # resistance of a board to vapour, m2 s/kg


def cut(case, detail):
    """The stack of a case in cells."""
    stack, belt = case["stack"], case["dryer"]["belt"]
    layers = []  # (cells, mass, thickness, conductivity, heat capacity, its slope, conductance to the next layer)
    films = [film for film in (stack["film"], stack["blocker"]) if film]
    for film in films:
        below = FILM_ON_CLOTH if film is films[-1] else FILM_ON_FILM
        mass = film["density"] * film["thickness"]
        layers.append((detail["film"], mass, film["thickness"], FILM_K, FILM_HEAT, FILM_SLOPE, below))
    board = stack["board"]
    cloths = [cloth for cloth in (stack["front"], stack["back"]) if cloth]
    for k, cloth in enumerate(cloths):
        below = belt["contact"] if k + 1 == len(cloths) and not board else stack["gap"]
        capacity, rise = cloth["heat_capacity"], cloth["heat_capacity_slope"]
        mass, thickness = cloth["areal_mass"], cloth["thickness"]
        layers.append((detail["cloth"], mass, thickness, cloth["conductivity"], capacity, rise, below))
    if board:
        mass, thickness = board["density"] * board["thickness"], board["thickness"]
        layers.append((detail["cloth"], mass, thickness, board["conductivity"], board["heat_capacity"], 0.0, belt["contact"]))
    mass, heat, slope, half, contact = [], [], [], [], []
    for cells, areal_mass, thickness, conductivity, capacity, rise, below in layers:
        mass += [areal_mass / cells] * cells
        heat += [capacity] * cells
        slope += [rise] * cells
        half += [0.5 * thickness / cells / conductivity] * cells
        contact += [0.0] * (cells - 1) + [1.0 / below]
    # The belt: all its heat in one cell without resistance.
    of_cells = [mass + [1.0], heat + [belt["heat_capacity"]], slope + [0.0], half + [0.0], contact]

    cells = detail["cloth"]
    regain_65 = [cloth["regain_65"] for cloth in cloths]
    of_cloths = [
        [cloth["thickness"] / cells for cloth in cloths],
        [cloth["areal_mass"] / cloth["thickness"] for cloth in cloths],
        [max(at_65, LEAST_REGAIN) for at_65 in regain_65],
        [regain(1.0, at_65) for at_65 in regain_65],
        [regain(stack["humidity"], at_65) + stack["added_water"] for at_65 in regain_65],
    ]
    joined = np.arange(1, cells * len(cloths) + 1) % cells > 0
    # Still air that holds vapour back like the board.
    still = board["thickness"] * board["vapour_resistance"] if board else 0.0
    return Stack(
        *(np.array(values, dtype=float) for values in of_cells),
        detail["film"] * len(films) - 1,
        cells,
        *(np.repeat(np.array(values, dtype=float), cells) for values in of_cloths),
        joined,
        still / STILL_AIR,
    )


def start(stack, case):
    """The state at the entry."""
    state = np.zeros(2 * len(stack.mass))
    state[::2] = case["stack"]["enters"]
    state[-2] = case["dryer"]["belt"]["enters"]
    first = stack.bottom + 1
    state[2 * first + 1 : 2 * (first + len(stack.held)) + 1 : 2] = stack.held
    return state


@compiled
def half_cell(stack, cell, state):
    """Resistance of heat from a cell's middle to its face, m2 K/W: water conducts beside the fibres."""
    k = cell - stack.bottom - 1
    dry = stack.half[cell]
    if k < 0 or k >= len(stack.width):
        return dry
    volume = max(state[2 * cell + 1], 0.0) * stack.density[k] / WATER_DENSITY
    return 1.0 / (1.0 / dry + 2.0 * WET_CONDUCTIVITY * volume / stack.width[k])


@compiled
def under_film(stack, state, through):
    """Flux out of the film: what a lamp sends through it heats the cloth's face, half a cell above the next middle."""
    cell = stack.bottom
    into_cloth = half_cell(stack, cell + 1, state)
    fall = state[2 * cell] - state[2 * cell + 2] - through * into_cloth
    return fall / (stack.half[cell] + stack.contact[cell] + into_cloth)


@compiled
def film_bottom(stack, state, through):
    """Temperature of the face under the last film cell, by the flux that leaves it."""
    return state[2 * stack.bottom] - under_film(stack, state, through) * stack.half[stack.bottom]


@compiled
def into_face(stack, state, around):
    """Flux into the top: the face's own temperature is the root of its balance, by Newton's method."""
    into_cell = 1.0 / stack.half[0]
    face = state[0]
    for _ in range(6):
        gain = around.h_top * (around.air - face) + around.source - around.emission * face**4
        gain -= into_cell * (face - state[0])
        face += gain / (around.h_top + 4.0 * around.emission * face**3 + into_cell)
    return into_cell * (face - state[0])


@compiled
def rates(stack, state, around, ink):
    cells = len(stack.mass)
    out = np.zeros(2 * cells)

    # Heat through every face: into the top, from cell to cell, out of the belt.
    above, upper = into_face(stack, state, around), half_cell(stack, 0, state)
    for cell in range(cells):
        here = state[2 * cell]
        if cell == cells - 1:
            below = -around.h_bottom * (around.air - here) - around.belt * (around.air**4 - here**4)
        elif cell == stack.bottom:
            below, upper = under_film(stack, state, around.through), half_cell(stack, cell + 1, state)
        else:
            lower = half_cell(stack, cell + 1, state)
            below, upper = (here - state[2 * cell + 2]) / (upper + stack.contact[cell] + lower), lower
        out[2 * cell] = above - below
        above = below
    first = stack.bottom + 1
    out[2 * first] += around.through

    # Vapour and wicking between the cells of cloth, and vapour from the last one into the air below.
    into_air = WATER * AIR_GAS / GAS / (AIR_HEAT * LEWIS_2_3) * around.h_bottom
    outside = -math.log(1.0 - around.vapour / ATMOSPHERE)
    cloth = len(stack.width)
    potential, leaving, half, free = np.empty(cloth), np.empty(cloth), np.empty(cloth), np.empty(cloth)
    for k in range(cloth):
        temperature, water = state[2 * (first + k)], state[2 * (first + k) + 1]
        potential[k], leaving[k] = over_cloth(water, temperature, stack.at_65[k])
        warmer = math.sqrt(max(temperature, COLDEST) / 298.0)
        half[k] = 0.5 * stack.width[k] / (OPENING * STILL_AIR * warmer * math.sqrt(warmer))
        free[k] = max(water - stack.bound[k], 0.0)
    arrives, wicks_in = 0.0, 0.0
    for k in range(cloth):
        wicks = 0.0
        if k + 1 == cloth:
            leaves = (potential[k] - outside) / (half[k] + stack.board + 1.0 / into_air)
        elif stack.joined[k]:
            leaves = (potential[k] - potential[k + 1]) / (half[k] + half[k + 1])
            wicks = WICKING * stack.density[k] / stack.width[k] * (free[k] - free[k + 1])
        else:
            leaves = (potential[k] - potential[k + 1]) / (half[k] + half[k + 1] + 1.0 / (GAP * into_air))
        out[2 * (first + k)] -= (leaves - arrives) * leaving[k]
        out[2 * (first + k) + 1] = -(leaves - arrives + wicks - wicks_in) / stack.mass[first + k]
        arrives, wicks_in = leaves, wicks

    # From heat to the rise of temperature.
    for cell in range(cells):
        capacity = stack.heat[cell] + stack.slope[cell] * clip(state[2 * cell] - 298.0, 0.0, 180.0)
        if 0 <= cell - first < cloth:
            capacity += max(state[2 * cell + 1], 0.0) * WATER_HEAT
        out[2 * cell] /= stack.mass[cell] * capacity

    at_bottom = max(film_bottom(stack, state, around.through), COLDEST)
    fused, gelled = state[2 * stack.bottom - 1], state[2 * stack.bottom + 1]
    gels = math.exp(-ink.gel_energy / GAS * (1.0 / at_bottom - 1.0 / ink.gel_reference)) / ink.gel_time
    fuses = math.exp(-ink.fusion_energy / GAS * (1.0 / at_bottom - 1.0 / ink.fusion_reference)) / ink.fusion_time
    most = 1.0 / (1.0 + math.exp(-(at_bottom - ink.half_fused) / ink.width))
    out[2 * stack.bottom + 1] = gels * (1.0 - gelled)
    out[2 * stack.bottom - 1] = gelled * fuses * max(most - fused, 0.0)
    return out


def lit(zone, air, panel, near_infrared):
    """Radiation on the top: what it keeps, what passes to the cloth, what it sends out; and the belt's."""
    exchange, kept, passed = zone["exchange"], 1.0, 0.0
    if panel is None or zone["emitter"] == "none":
        exchange, panel = 0.0, air
    elif zone["emitter"] == "near-infrared":
        kept, passed = near_infrared["film"], near_infrared["through"] * near_infrared["cloth"]
    seen = exchange * kept
    walls = 0.5 * max(EMISSIVITY - seen, 0.0)
    return {
        "source": SIGMA * (seen * panel**4 + walls * air**4),
        "through": SIGMA * exchange * passed * max(panel**4 - air**4, 0.0),
        "emission": SIGMA * (seen + walls),
        "belt": 0.5 * SIGMA,
    }


def stages(case):
    """How long and amid what: every zone, then every rest behind the mouth."""
    dryer, case_set = case["dryer"], case["set"]
    for i, zone in enumerate(dryer["zones"]):
        last = i + 1 == len(dryer["zones"])
        seconds = zone["length"] / case["belt_speed"] + (case["stop"] if last else 0.0)
        air = case_set + zone["air_offset"]
        panel = None if zone["panel_offset"] is None else case_set + zone["panel_offset"]
        radiation = lit(zone, air, panel, case["stack"]["near_infrared"])
        yield seconds, Around(air, zone["h_top"], zone["h_bottom"], vapour(dryer["humidity_ratio"]), **radiation)
    for rest in dryer["rests"]:
        emission, belt = (EMISSIVITY * SIGMA, 0.5 * SIGMA) if rest["radiates"] else (0.0, 0.0)
        radiation = {"source": emission * rest["air"] ** 4, "through": 0.0, "emission": emission, "belt": belt}
        yield rest["seconds"], Around(rest["air"], rest["h_top"], rest["h_bottom"], vapour(ROOM_RATIO), **radiation)


def steps(case, stack, state, around, seconds, detail):
    """The states that LSODA passes through in so many seconds, the last at their end."""
    ink = Ink(**case["ink"])
    absolute = np.full(len(state), detail["atol"])
    absolute[1::2] *= 1e-3
    solver = LSODA(
        lambda _, at: rates(stack, at, around, ink), 0.0, state, seconds,
        rtol=detail["rtol"], atol=absolute, lband=3, uband=3,
    )
    while solver.status == "running":
        message = solver.step()
        if solver.status == "failed" or not np.isfinite(solver.y).all():
            raise RuntimeError(f"{case['name']}: {message}")
        yield solver.y


def solve(case, detail):
    """Hottest film bottom, K, its fused share when all is cool, and the water of the printed cloth as it leaves, kg/kg."""
    stack = cut(case, detail)
    state = start(stack, case)
    peak, left, zones = 0.0, 0.0, len(case["dryer"]["zones"])
    for index, (seconds, around) in enumerate(stages(case)):
        for state in steps(case, stack, state, around, seconds, detail):
            peak = max(peak, film_bottom(stack, state, around.through))
        if index + 1 == zones:
            left = printed_water(stack, state)
    return np.array([peak, state[2 * stack.bottom - 1], left])


def printed_water(stack, state):
    """Mean water of the printed cloth, kg/kg."""
    first = stack.bottom + 1
    return float(np.maximum(state[2 * first + 1 : 2 * (first + stack.front) + 1 : 2], 0.0).mean())


def extrapolated(case, cells):
    """The same without the error of the cells: it falls with their number where a drying front passes from cell to cell."""
    coarse, fine = solve(case, FINE | {"cloth": cells}), solve(case, FINE | {"cloth": 2 * cells})
    return 2.0 * fine - coarse


def apart(case, found):
    """The product's result less this one's."""
    return np.array([case["ours"][what] for what in ("peak", "fused", "water")]) - found


def converged(case):
    """The best that is known: where the product seems to be off, on cells so fine that a front no longer moves the peak.

    A front that passes from one of 32 cells to the next moves it by up to 3 K, and extrapolation does not take that away.
    """
    found = extrapolated(case, 32) if case["stack"]["added_water"] > 0.05 else solve(case, FINE)
    return extrapolated(case, 96) if (np.abs(apart(case, found)) > LIMITS).any() else found


def compare(cases, workers, keep):
    print(f"numba compiles: {solve(cases[0], COARSE)[0] - 273.15:.0f} °C", flush=True)  # once, before there are workers
    off, kept = np.zeros((len(cases), 3)), []
    with multiprocessing.Pool(workers) as pool:
        for row, case, found in zip(off, cases, pool.imap(converged, cases, chunksize=4)):
            row[:] = apart(case, found)
            kept.append([case["name"], *(round(float(value), 6) for value in found)])
            note = "  MISSED" if (np.abs(row) > LIMITS).any() else ""
            print(
                f"{case['name']:18} {found[0] - 273.15:7.2f} °C, fused {found[1]:.4f}, water {100.0 * found[2]:6.2f} %; "
                f"ours off by {row[0]:+.3f} K, {row[1]:+.4f}, {100.0 * row[2]:+.3f} %{note}",
                flush=True,
            )
    if keep:
        with open(keep, "w", encoding="utf-8") as file:
            file.write("[\n" + ",\n".join(map(json.dumps, kept)) + "\n]\n")
    off = np.abs(off)
    wet = np.array([case["stack"]["added_water"] > 0.0 for case in cases])
    for kind, of in (("dry", off[~wet]), ("wet", off[wet])):
        print(f"{len(of)} {kind} cases")
        for i, (what, unit) in enumerate((("film peak", "K"), ("fused", ""), ("water left", "kg/kg"))):
            parts = np.percentile(of[:, i], [50, 98, 99.5, 100]) if len(of) else np.full(4, np.nan)
            shown = ", ".join(f"{name} {part:.5f}" for name, part in zip(("median", "98 %", "99.5 %", "worst"), parts))
            print(f"  {what:10} {shown} of {LIMITS[i]} {unit}; {(of[:, i] > LIMITS[i]).sum()} beyond")
    misses = int((off > LIMITS).any(axis=1).sum())
    print(f"{misses} of {len(cases)} missed")
    return misses


def timed(cases):
    solve(cases[0], COARSE)  # numba compiles
    start = time.perf_counter()
    off = [0.0, 0.0]
    for case in cases:
        peak, fused, _ = solve(case, COARSE)
        ours = case["converged"]
        off = [max(off[0], abs(peak - ours["peak"])), max(off[1], abs(fused - ours["fused"]))]
    seconds = (time.perf_counter() - start) / len(cases)
    print(json.dumps({"seconds": seconds, "peak": off[0], "fused": off[1]}))


def main(words):
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("cases", type=argparse.FileType(encoding="utf-8"))
    options.add_argument("--time", action="store_true")
    options.add_argument("--workers", type=int)
    options.add_argument("--keep")
    options = options.parse_args(words)
    cases = json.load(options.cases)
    if options.time:
        timed(cases)
        return 0
    return 1 if not cases or compare(cases, options.workers, options.keep) else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
