"""The history of a stack by other means: another solver on another grid, written from the equations alone.

Cell-centred finite volumes (the film's bottom is no node but follows from the flux through it), solved by SciPy's LSODA
together with gelation and fusion. Nothing here calls the product: constants and equations are those of the module docs of
`src/dryer/chain.rs`, `src/dryer/lay.rs`, `src/textile/moisture.rs` and `src/cure/mod.rs`, saturation pressure is Wagner and
Pruss's (IAPWS 1992) where the product takes IAPWS-IF97.

    history.py CASES            compare with the product's results, which stand in CASES; exit 1 where one is too far off
    history.py --time CASES     print the mean seconds a case on a coarse grid, loosely solved
"""

import json
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
DIFFUSIVITY = 2.2e-5  # m2/s at 298 K
OPENING = 0.4
BOILING = 0.97
FILM_HEAT, FILM_SLOPE, FILM_K = 1450.0, 2.0, 0.18
FILM_ON_CLOTH, FILM_ON_FILM = 2000.0, 50_000.0  # W/(m2 K)
ROOM_RATIO = 0.0099  # kg/kg

PEAK, FUSED = 0.1, 0.005  # K, share: how far the product may be off

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


def balance(water, at_65):
    """Humidity in balance with cloth of this regain: the root of w phi^2 - (w - 0.825) phi - 0.3125 w between 0 and 1."""
    w = max(water / at_65, 1e-12)
    b = 0.825 - w
    root = np.sqrt(b * b + 1.25 * w * w)
    phi = 0.625 * w / (b + root) if b > 0.0 else (root - b) / (2.0 * w)
    return min(phi, 1.0)


class Stack:
    """The layers cut into cells, from the film's top to the belt, which is the last cell."""

    def __init__(self, case, detail):
        stack, belt = case["stack"], case["dryer"]["belt"]
        mass, heat, slope, half = [], [], [], []  # of each cell; half: resistance from its middle to its face, m2 K/W
        self.joints = []  # (last cell of a layer, contact below it in W/(m2 K))
        self.cloths = []

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
        cloths = [front, back] if back else [front]
        for cloth in cloths:
            first = len(mass)
            cells, thickness = detail["cloth"], cloth["thickness"]
            conductivity, capacity = cloth["conductivity"], cloth["heat_capacity"]
            cut(cells, cloth["areal_mass"], thickness, conductivity, capacity, cloth["heat_capacity_slope"])
            if back and cloth is front:
                below, path, layers = stack["gap"], front["thickness"] + back["thickness"], 1.5
            elif back:
                below, path, layers = belt["contact"], 0.5 * back["thickness"], 1.0
            elif board:
                # As much cloth as holds vapour back like the board.
                like = board["thickness"] * board["vapour_resistance"] * OPENING
                below, path, layers = stack["gap"], front["thickness"] + like, 1.0
            else:
                below, path, layers = belt["contact"], front["thickness"], 1.0
            self.joints.append((len(mass) - 1, below))
            at_65 = max(cloth["regain_65"], 2e-4)
            start = regain(stack["humidity"], at_65) + stack["added_water"]
            self.cloths.append((slice(first, len(mass)), cloth["areal_mass"], at_65, path, layers, start))
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

    def start(self, case):
        temperatures = np.full(self.cells, case["stack"]["enters"])
        return np.concatenate([temperatures, [cloth[-1] for cloth in self.cloths], [0.0, 0.0]])

    def under_film(self, temperatures, through):
        """Flux out of the film: what a lamp sends through it heats the cloth's face, half a cell above the next middle."""
        cell = self.bottom
        fall = temperatures[cell] - temperatures[cell + 1] - through * self.half[cell + 1]
        return fall / self.between[cell]

    def film_bottom(self, temperatures, through):
        """Temperature of the face under the last film cell, by the flux that leaves it."""
        return temperatures[self.bottom] - self.under_film(temperatures, through) * self.half[self.bottom]

    def rates(self, state, around, ink):
        temperatures = state[: self.cells]
        waters = state[self.cells : -2]
        gelled, fused = state[-2:]
        air = around["air"]

        # What crosses the top: from the surrounding to the face, through half a cell, to the first cell. The face's own
        # temperature is the root of that balance, by Newton's method.
        into_cell = 1.0 / self.half[0]
        face = temperatures[0]
        for _ in range(6):
            gain = around["h_top"] * (air - face) + around["source"] - around["emission"] * face**4
            gain -= into_cell * (face - temperatures[0])
            face += gain / (around["h_top"] + 4.0 * around["emission"] * face**3 + into_cell)
        flux = np.empty(self.cells + 1)
        flux[0] = into_cell * (face - temperatures[0])
        flux[1:-1] = (temperatures[:-1] - temperatures[1:]) / self.between
        belt = temperatures[-1]
        flux[-1] = -around["h_bottom"] * (air - belt) - around["belt"] * (air**4 - belt**4)
        flux[self.bottom + 1] = self.under_film(temperatures, around["through"])
        heat = flux[:-1] - flux[1:]
        heat[self.bottom + 1] += around["through"]

        capacity = self.mass * (self.heat + self.slope * np.clip(temperatures - 298.0, 0.0, 180.0))
        dried = []
        for (cells, mass, at_65, path, layers, _), water in zip(self.cloths, waters):
            water = max(water, 0.0)
            mean = temperatures[cells].mean()
            phi = balance(water, at_65)
            sorption = 195e3 * (1.0 - phi) * (1.0 / (0.2 + phi) + 1.0 / (1.05 - phi))
            activity = min(phi * np.exp(-sorption * WATER / GAS * (1.0 / mean - 1.0 / 298.15)), 1.0)
            pressure = min(activity * saturation_pressure(mean), BOILING * ATMOSPHERE)
            density = 2.0 * ATMOSPHERE / (AIR_GAS * (mean + air))
            transfer = around["h_bottom"] / (density * AIR_HEAT * LEWIS_2_3)
            through = OPENING * DIFFUSIVITY * (mean / 298.0) ** 1.75
            resistance = layers / transfer + path / through
            stefan = np.log((ATMOSPHERE - around["vapour"]) / (ATMOSPHERE - pressure))
            evaporates = WATER * ATMOSPHERE / (GAS * mean) * stefan / resistance
            latent = 2.792e6 - 160.0 * mean - 3.43 * mean**2
            count = cells.stop - cells.start
            heat[cells] -= evaporates * (latent + sorption) / count
            capacity[cells] += water * mass * WATER_HEAT / count
            dried.append(-evaporates / mass)

        bottom = self.film_bottom(temperatures, around["through"])
        gels = np.exp(-ink["gel_energy"] / GAS * (1.0 / bottom - 1.0 / ink["gel_reference"])) / ink["gel_time"]
        fuses = np.exp(-ink["fusion_energy"] / GAS * (1.0 / bottom - 1.0 / ink["fusion_reference"]))
        fuses /= ink["fusion_time"]
        most = 1.0 / (1.0 + np.exp(-(bottom - ink["half_fused"]) / ink["width"]))
        chemistry = [gels * (1.0 - gelled), gelled * fuses * max(most - fused, 0.0)]
        return np.concatenate([heat / capacity, dried, chemistry])


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
    """Hottest film bottom, K, and its fused share when all is cool."""
    stack = Stack(case, detail)
    state = stack.start(case)
    state[stack.cells - 1] = case["dryer"]["belt"]["enters"]
    peak = 0.0
    for seconds, around in stages(case):
        def rates(_, at):
            return stack.rates(at, around, case["ink"])

        absolute = np.full(len(state), detail["atol"])
        absolute[stack.cells :] *= 1e-3
        solver = LSODA(rates, 0.0, state, seconds, rtol=detail["rtol"], atol=absolute)
        while solver.status == "running":
            message = solver.step()
            if solver.status == "failed":
                raise RuntimeError(f"{case['name']}: {message}")
            peak = max(peak, stack.film_bottom(solver.y, around["through"]))
        state = solver.y
    return peak, state[-1]


def compare(cases):
    worst, misses = [0.0, 0.0], 0
    for case in cases:
        peak, fused = solve(case, FINE)
        off = [abs(peak - case["ours"]["peak"]), abs(fused - case["ours"]["fused"])]
        missed = off[0] > PEAK or off[1] > FUSED
        misses += missed
        worst = [max(pair) for pair in zip(worst, off)]
        note = "  MISSED" if missed else ""
        print(f"{case['name']:24} {peak - 273.15:7.2f} °C, fused {fused:.4f}; ours off by {off[0]:.3f} K, {off[1]:.4f}{note}", flush=True)
    print(f"{len(cases)} cases: worst {worst[0]:.3f} K of {PEAK}, fused {worst[1]:.4f} of {FUSED}; {misses} missed")
    return misses


def timed(cases):
    start = time.perf_counter()
    off = [0.0, 0.0]
    for case in cases:
        peak, fused = solve(case, COARSE)
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
