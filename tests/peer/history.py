"""The history of a stack by other means: another solver on another grid, written from the equations alone.

Cell-centred finite volumes (the film's bottom is no node but follows from the flux through it), solved by SciPy's LSODA
together with gelation and fusion. Nothing here calls the product: constants and equations are those of the module docs of
`src/dryer/solve/chain.rs`, `src/dryer/solve/water.rs`, `src/textile/moisture.rs` and `src/cure/mod.rs`, saturation pressure is Wagner and
Pruss's (IAPWS 1992) where the product takes IAPWS-IF97.

    history.py CASES            compare with the product's results, which stand in CASES; exit 1 where one is too far off
    history.py --time CASES     print the mean seconds a case on a coarse grid, loosely solved
"""

import json
import multiprocessing
import sys
import time

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
OPENING = 0.4
STEAM = 0.97  # share of the atmosphere from which the potential goes on along ln p
GAP = 2.0  # conductance of the air between front and back, in air layers below the garment
WICKING = 1e-7  # m2/s
WET_CONDUCTIVITY = 0.57  # W/(m K) that a cloth full of water would gain
WATER_DENSITY = 1000.0
HOTTEST = 453.15  # K, beyond which the pressure over cloth is held
LEAST_REGAIN = 8e-3  # at 65 % RH, for the vapour
FILM_HEAT, FILM_SLOPE, FILM_K = 1450.0, 2.0, 0.18
FILM_ON_CLOTH, FILM_ON_FILM = 2000.0, 50_000.0  # W/(m2 K)
ROOM_RATIO = 0.0099  # kg/kg

LIMITS = np.array([0.3, 0.01, 0.003])  # K, fused share, kg/kg: how far the product may be off

FINE = {"film": 12, "cloth": 48, "rtol": 1e-7, "atol": 1e-6}
COARSE = {"film": 3, "cloth": 6, "rtol": 1e-4, "atol": 1e-2}


def saturation_pressure(kelvin):
    """Wagner & Pruss 1992, Pa."""
    tau = 1.0 - kelvin / 647.096
    series = (
        -7.85951783 * tau
        + 1.84408259 * tau**1.5
        - 11.7866497 * tau**3
        + 22.6807411 * tau**3.5
        - 15.9618719 * tau**4
        + 1.80122502 * tau**7.5
    )
    return 22.064e6 * np.exp(647.096 / kelvin * series)


def vapour(ratio):
    """Vapour pressure of air with so much water, Pa."""
    return ratio / (ratio + 0.622) * ATMOSPHERE


def regain(phi, at_65):
    return at_65 * 0.55 * phi * (1.0 / (0.25 + phi) + 1.0 / (1.25 - phi))


class Stack:
    """The layers cut into cells, from the film's top to the belt, which is the last cell.

    The state is interleaved, temperature and water of each cell in turn, so that the Jacobian is a band. A film holds no
    water: the place of its last cell's water holds the gelled share, that of the cell above it the fused share.
    """

    def __init__(self, case, detail):
        stack, belt = case["stack"], case["dryer"]["belt"]
        mass, heat, slope, half = [], [], [], []  # of each cell; half: resistance from its middle to its face, m2 K/W
        self.joints = []  # (last cell of a layer, contact below it in W/(m2 K))
        pieces = []

        def cut(cells, areal_mass, thickness, conductivity, capacity, rise):
            mass.extend([areal_mass / cells] * cells)
            heat.extend([capacity] * cells)
            slope.extend([rise] * cells)
            half.extend([0.5 * thickness / cells / conductivity] * cells)

        films = [film for film in (stack["film"], stack["blocker"]) if film]
        for i, film in enumerate(films):
            areal = film["density"] * film["thickness"]
            cut(detail["film"], areal, film["thickness"], FILM_K, FILM_HEAT, FILM_SLOPE)
            below = FILM_ON_FILM if i + 1 < len(films) else FILM_ON_CLOTH
            self.joints.append((len(mass) - 1, below))
        self.bottom = len(mass) - 1
        front, back = stack["front"], stack["back"]
        board = stack["board"]
        for cloth in [front, back] if back else [front]:
            cells, thickness = detail["cloth"], cloth["thickness"]
            conductivity, capacity = cloth["conductivity"], cloth["heat_capacity"]
            cut(cells, cloth["areal_mass"], thickness, conductivity, capacity, cloth["heat_capacity_slope"])
            self.joints.append((len(mass) - 1, stack["gap"] if (back and cloth is front) or board else belt["contact"]))
            pieces.extend([(cloth, thickness / cells)] * cells)
        if board:
            thickness = board["thickness"]
            areal = board["density"] * thickness
            cut(detail["cloth"], areal, thickness, board["conductivity"], board["heat_capacity"], 0.0)
            self.joints.append((len(mass) - 1, belt["contact"]))
        # The belt: all its heat in one cell without resistance.
        mass.append(1.0)
        heat.append(belt["heat_capacity"])
        slope.append(0.0)
        half.append(0.0)
        self.mass, self.heat, self.slope = np.array(mass), np.array(heat), np.array(slope)
        self.half = np.array(half)
        between = self.half[:-1] + self.half[1:]
        for cell, contact in self.joints:
            between[cell] += 1.0 / contact
        self.between = between
        self.cells = len(mass)

        # The cells of cloth.
        self.first = self.bottom + 1
        self.front = detail["cloth"]
        self.cloth = slice(self.first, self.first + len(pieces))
        self.water = slice(2 * self.cloth.start + 1, 2 * self.cloth.stop, 2)
        # Still air that holds vapour back like the board.
        still = board["thickness"] * board["vapour_resistance"] if board else 0.0
        self.board = still / (WATER * ATMOSPHERE * DIFFUSIVITY / (GAS * 298.0))
        width = np.array([width for _, width in pieces])
        density = np.array([cloth["areal_mass"] / cloth["thickness"] for cloth, _ in pieces])
        regain_65 = np.array([cloth["regain_65"] for cloth, _ in pieces])
        self.at_65 = np.maximum(regain_65, LEAST_REGAIN)
        self.bound = regain(1.0, regain_65)
        self.held = regain(stack["humidity"], regain_65) + stack["added_water"]
        self.half_vapour = 0.5 * width / (WATER * ATMOSPHERE * OPENING * DIFFUSIVITY / (GAS * 298.0))
        inside = np.ones(len(pieces) - 1)
        if back:
            inside[self.front - 1] = 0.0
        self.wicking = inside * WICKING * density[:-1] / width[:-1]
        self.inside = inside
        self.width = width
        self.volume = density / WATER_DENSITY  # of water in a cell's volume, for each kg/kg

    def start(self, case):
        state = np.zeros(2 * self.cells)
        state[::2] = case["stack"]["enters"]
        state[self.water] = self.held
        return state

    def under_film(self, temperatures, between, through):
        """Flux out of the film: what a lamp sends through it heats the cloth's face, half a cell above the next middle."""
        cell = self.bottom
        into = between[cell] - self.half[cell] - 1.0 / FILM_ON_CLOTH
        fall = temperatures[cell] - temperatures[cell + 1] - through * into
        return fall / between[cell]

    def film_bottom(self, state, through):
        """Temperature of the face under the last film cell, by the flux that leaves it."""
        temperatures = state[::2]
        between = self.resistances(state[self.water])
        flux = self.under_film(temperatures, between, through)
        return temperatures[self.bottom] - flux * self.half[self.bottom]

    def resistances(self, waters):
        """Of heat from each cell's middle to the next, m2 K/W: water conducts beside the fibres."""
        dry = self.half[self.cloth]
        wet = 1.0 / (1.0 / dry + 2.0 * WET_CONDUCTIVITY * self.volume * np.maximum(waters, 0.0) / self.width)
        half = self.half.copy()
        half[self.cloth] = wet
        return self.between + (half - self.half)[:-1] + (half - self.half)[1:]

    def vapour(self, waters, temperatures):
        """Potential of the vapour over each cell of cloth, and the heat that leaving costs, J/kg."""
        w = np.maximum(waters, 0.0) / self.at_65
        b = 0.825 - w
        root = np.sqrt(b * b + 1.25 * w * w)
        with np.errstate(divide="ignore", invalid="ignore"):
            phi = np.where(b > 0.0, 0.625 * w / (b + root), (root - b) / (2.0 * w))
        phi = np.minimum(phi, 1.0)
        sorption = 195e3 * (1.0 - phi) * (1.0 / (0.2 + phi) + 1.0 / (1.05 - phi))
        activity = np.minimum(phi * np.exp(-sorption * WATER / GAS * (1.0 / np.minimum(temperatures, HOTTEST) - 1.0 / 298.15)), 1.0)
        share = activity * saturation_pressure(np.clip(temperatures, 250.0, HOTTEST)) / ATMOSPHERE
        below = -np.log(1.0 - np.minimum(share, STEAM))
        potential = below + STEAM / (1.0 - STEAM) * np.log(np.maximum(share, STEAM) / STEAM)
        held = np.minimum(temperatures, HOTTEST)
        return potential, 2.792e6 - 160.0 * held - 3.43 * held**2 + sorption

    def rates(self, state, around, ink):
        temperatures, waters = state[::2], state[self.water]
        fused, gelled = state[2 * self.bottom - 1], state[2 * self.bottom + 1]
        air = around["air"]

        # What crosses the top: from the surrounding to the face, through half a cell, to the first cell. The face's own
        # temperature is the root of that balance, by Newton's method.
        into_cell = 1.0 / self.half[0]
        face = temperatures[0]
        for _ in range(6):
            gain = around["h_top"] * (air - face) + around["source"] - around["emission"] * face**4
            gain -= into_cell * (face - temperatures[0])
            face += gain / (around["h_top"] + 4.0 * around["emission"] * face**3 + into_cell)
        between = self.resistances(waters)
        flux = np.empty(self.cells + 1)
        flux[0] = into_cell * (face - temperatures[0])
        flux[1:-1] = (temperatures[:-1] - temperatures[1:]) / between
        belt = temperatures[-1]
        flux[-1] = -around["h_bottom"] * (air - belt) - around["belt"] * (air**4 - belt**4)
        flux[self.bottom + 1] = self.under_film(temperatures, between, around["through"])
        heat = flux[:-1] - flux[1:]
        heat[self.bottom + 1] += around["through"]

        # Vapour and wicking between the cells of cloth, and vapour from the last one into the air below.
        cloth = self.cloth
        inside = temperatures[cloth]
        potential, leaving = self.vapour(waters, inside)
        into_air = WATER * AIR_GAS / GAS / (AIR_HEAT * LEWIS_2_3) * around["h_bottom"]
        half = self.half_vapour / (inside / 298.0) ** 0.75
        resistance = half[:-1] + half[1:] + (1.0 - self.inside) / (GAP * into_air)
        moves = np.zeros(len(waters) + 1)
        moves[1:-1] = (potential[:-1] - potential[1:]) / resistance
        outside = -np.log(1.0 - around["vapour"] / ATMOSPHERE)
        moves[-1] = (potential[-1] - outside) / (half[-1] + self.board + 1.0 / into_air)
        leaves = moves[1:] - moves[:-1]
        free = np.maximum(waters - self.bound, 0.0)
        wicks = np.zeros(len(waters) + 1)
        wicks[1:-1] = self.wicking * (free[:-1] - free[1:])
        heat[cloth] -= leaves * leaving
        dried = -(leaves + wicks[1:] - wicks[:-1]) / self.mass[cloth]

        capacity = self.mass * (self.heat + self.slope * np.clip(temperatures - 298.0, 0.0, 180.0))
        capacity[cloth] += np.maximum(waters, 0.0) * self.mass[cloth] * WATER_HEAT

        bottom = temperatures[self.bottom] - flux[self.bottom + 1] * self.half[self.bottom]
        gels = np.exp(-ink["gel_energy"] / GAS * (1.0 / bottom - 1.0 / ink["gel_reference"])) / ink["gel_time"]
        fuses = np.exp(-ink["fusion_energy"] / GAS * (1.0 / bottom - 1.0 / ink["fusion_reference"]))
        fuses /= ink["fusion_time"]
        most = 1.0 / (1.0 + np.exp(-(bottom - ink["half_fused"]) / ink["width"]))
        out = np.zeros(len(state))
        out[::2] = heat / capacity
        out[self.water] = dried
        out[2 * self.bottom + 1] = gels * (1.0 - gelled)
        out[2 * self.bottom - 1] = gelled * fuses * max(most - fused, 0.0)
        return out


def lit(zone, air, panel, near_infrared):
    """Radiation on the top: what it keeps, what passes to the cloth, what it sends out."""
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
        around = {"air": air, "h_top": zone["h_top"], "h_bottom": zone["h_bottom"], "vapour": vapour(dryer["humidity_ratio"])}
        yield seconds, around | lit(zone, air, panel, case["stack"]["near_infrared"])
    for rest in dryer["rests"]:
        around = {"air": rest["air"], "h_top": rest["h_top"], "h_bottom": rest["h_bottom"], "vapour": vapour(ROOM_RATIO)}
        emission = EMISSIVITY * SIGMA if rest["radiates"] else 0.0
        around |= {"source": emission * rest["air"] ** 4, "through": 0.0, "emission": emission}
        yield rest["seconds"], around | {"belt": 0.5 * SIGMA if rest["radiates"] else 0.0}


def solve(case, detail):
    """Hottest film bottom, K, its fused share when all is cool, and the water of the printed cloth as it leaves, kg/kg."""
    stack = Stack(case, detail)
    state = stack.start(case)
    state[-2] = case["dryer"]["belt"]["enters"]
    peak, left, zones = 0.0, 0.0, len(case["dryer"]["zones"])
    printed = slice(2 * stack.first + 1, 2 * (stack.first + stack.front) + 1, 2)
    for index, (seconds, around) in enumerate(stages(case)):
        def rates(_, at):
            return stack.rates(at, around, case["ink"])

        absolute = np.full(len(state), detail["atol"])
        absolute[1::2] *= 1e-3
        solver = LSODA(rates, 0.0, state, seconds, rtol=detail["rtol"], atol=absolute, lband=3, uband=3)
        while solver.status == "running":
            message = solver.step()
            if solver.status == "failed":
                raise RuntimeError(f"{case['name']}: {message}")
            peak = max(peak, stack.film_bottom(solver.y, around["through"]))
        state = solver.y
        if index + 1 == zones:
            left = float(np.maximum(state[printed], 0.0).mean())
    return np.array([peak, state[2 * stack.bottom - 1], left])


def converged(case):
    """The same without the error of the cells: it falls with their number where a drying front passes from cell to cell."""
    if case["stack"]["added_water"] <= 0.05:
        return solve(case, FINE)
    coarse, fine = solve(case, FINE | {"cloth": 32}), solve(case, FINE | {"cloth": 64})
    return 2.0 * fine - coarse


def compare(cases):
    worst, misses = np.zeros(3), 0
    with multiprocessing.Pool() as pool:
        solutions = list(zip(cases, pool.imap(converged, cases, chunksize=4)))
    for case, found in solutions:
        ours = np.array([case["ours"][what] for what in ("peak", "fused", "water")])
        off = np.abs(found - ours)
        missed = bool((off > LIMITS).any())
        misses += missed
        worst = np.maximum(worst, off)
        note = "  MISSED" if missed else ""
        peak, fused, water = found
        print(
            f"{case['name']:32} {peak - 273.15:7.2f} °C, fused {fused:.4f}, water {100.0 * water:.2f} %; "
            f"ours off by {off[0]:.3f} K, {off[1]:.4f}, {100.0 * off[2]:.3f} %{note}",
            flush=True,
        )
    print(
        f"{len(cases)} cases: worst {worst[0]:.3f} K of {LIMITS[0]}, fused {worst[1]:.4f} of {LIMITS[1]}, "
        f"water {100.0 * worst[2]:.3f} % of {100.0 * LIMITS[2]:.1f}; {misses} missed"
    )
    return misses


def timed(cases):
    start = time.perf_counter()
    off = [0.0, 0.0]
    for case in cases:
        peak, fused, _ = solve(case, COARSE)
        ours = case["converged"]
        off = [max(off[0], abs(peak - ours["peak"])), max(off[1], abs(fused - ours["fused"]))]
    seconds = (time.perf_counter() - start) / len(cases)
    print(json.dumps({"seconds": seconds, "peak": off[0], "fused": off[1]}))


def main(words):
    time_only = "--time" in words
    files = [word for word in words if not word.startswith("--")]
    if len(files) != 1:
        print(__doc__)
        return 2
    with open(files[0], encoding="utf-8") as file:
        cases = json.load(file)
    if time_only:
        timed(cases)
        return 0
    return 1 if compare(cases) or not cases else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
