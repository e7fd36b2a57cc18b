"""Dye at dragged settings by SciPy's BDF as a method of lines: the table `tests/dye/dragged.json`.

    q_t = (D c_x)_x,  q = c + B c / (c + K),  x from the cloth
    at the cloth    -D c_x = heat's dye + V_own (a_own - c / c_sat)
    at the surface   D c_x = V_facing (a_facing - c / c_sat)

In real time, with cells, quadrature and cure of its own. The heat histories are the product's (`history.py` holds those to
another solver). Equations and constants are those of the module docs of `src/migration` and `src/cure`. Needs numpy and
scipy.

    cargo test -p whitehold --lib cases_for_the_peer -- --ignored --nocapture | grep '^\\[' > CASES
    python3 tests/peer/dragged.py CASES > tests/dye/dragged.json
"""

import json
import sys

import numpy as np
from scipy.integrate import solve_ivp
from scipy.interpolate import CubicHermiteSpline
from scipy.sparse import diags, lil_matrix

GAS = 8.314462618  # J/(mol K)
HALF_BOUND = 0.02  # kg/m³
SATURATION, SOLUTION, FIBRE = 0.05, 20e3, 1390.0  # kg/kg at 130 °C, J/mol, kg/m³
SATURATED = SATURATION * FIBRE  # kg/m³
GAP, IN_AIR, CONTACT, PRESSED, UPPER = 150e-6, 4.5e-6, 0.2, 3.0, 0.35
SURFACE_TIME, SURFACE_ENERGY = 10.0, 60e3
UNFUSED = 10.0
VISIBLE = 30e-6  # m
DAY = 86_400.0  # s
CELLS = 160


def arrhenius(kelvin, seconds, reference, energy):
    return np.exp(-energy / GAS * (1.0 / kelvin - 1.0 / reference)) / seconds


def free(held, capacity):
    """Langmuir's balance in the form that does not cancel."""
    b = HALF_BOUND + capacity - held
    root = np.sqrt(b * b + 4.0 * np.maximum(held, 0.0) * HALF_BOUND)
    return np.where(b > 0.0, 2.0 * HALF_BOUND * held / (b + root), 0.5 * (root - b))


def vapour_flux(dye, kelvin):
    """From saturated fibre over the gap, kg/(m² s)."""
    a, b, c = dye["vapour"]
    pressure = np.exp(a - b / (kelvin + c))
    return IN_AIR * (kelvin / 298.0) ** 1.75 / GAP * pressure * dye["molar_mass"] / (GAS * kelvin)


def activity(dye, kelvin):
    """Dye on the fibre over dye at saturation."""
    return np.minimum(dye["on_fibre"] / SATURATION * np.exp(SOLUTION / GAS * (1.0 / kelvin - 1.0 / 403.15)), 1.0)


class Heat:
    """What heat does at each moment: path, loss and dye that arrives, on a fine grid of time."""

    def __init__(self, case):
        dye, ink = case["dye"], case["ink"]
        samples = [sample for i, sample in enumerate(case["samples"]) if i == 0 or sample[0] > case["samples"][i - 1][0]]
        times = [sample[0] for sample in samples]
        bottom = CubicHermiteSpline(times, [s[1][0] for s in samples], [s[1][1] for s in samples])
        face = CubicHermiteSpline(times, [s[2][0] for s in samples], [s[2][1] for s in samples])
        self.ends = times[-1]
        time = np.linspace(times[0], self.ends, 8001)

        def cures(at, state):
            gelled, fused = state
            kelvin = float(bottom(at))
            most = 1.0 / (1.0 + np.exp(-(kelvin - ink["half_fused"]) / ink["width"]))
            gels = arrhenius(kelvin, ink["gel_time"], ink["gel_reference"], ink["gel_energy"])
            fuses = arrhenius(kelvin, ink["fusion_time"], ink["fusion_reference"], ink["fusion_energy"])
            return [gels * (1.0 - gelled), gelled * fuses * max(most - fused, 0.0)]

        cured = solve_ivp(
            cures, (times[0], self.ends), [0.0, 0.0], method="LSODA", rtol=1e-8, atol=1e-10, t_eval=time, max_step=1.0
        )
        fused = cured.y[1]
        self.fused = float(fused[-1])
        at_bottom, at_face = bottom(time), face(time)
        # Heat that comes after goes on at the end, on a grid of its own; what presses lets nothing escape.
        open_to_air = np.ones_like(time)
        for kelvin, seconds in case["after"]:
            more = time[-1] + np.linspace(0.0, seconds, 2001)[1:]
            time, self.ends = np.concatenate([time, more]), more[-1]
            at_bottom, at_face, fused, open_to_air = (
                np.concatenate([had, np.full(2000, new)])
                for had, new in [(at_bottom, kelvin), (at_face, kelvin), (fused, self.fused), (open_to_air, 0.0)]
            )
        self.activity = float(activity(dye, np.array(298.15)))
        upper = dye["on_fibre"] * dye["share"] * dye["areal_mass"] * UPPER

        def summed(rate):
            return np.concatenate([[0.0], np.cumsum(0.5 * (rate[1:] + rate[:-1]) * np.diff(time))])

        vapour = summed(vapour_flux(dye, at_face) * activity(dye, at_face) * dye["share"])
        pressed = np.where(open_to_air > 0.0, 1.0, PRESSED * PRESSED)
        theta = summed(pressed * dye["diffusivity"] * np.exp(-dye["energy"] / GAS * (1.0 / at_face - 1.0 / 403.15)))
        loose = summed(arrhenius(at_face, SURFACE_TIME, 393.15, SURFACE_ENERGY))
        contact = 2.0 * CONTACT * dye["share"] * dye["on_fibre"] * FIBRE * np.sqrt(theta / np.pi)
        left = np.exp(-(vapour + contact) / upper)
        self.left, self.upper = float(left[-1]), upper
        arrived = (1.0 - left) * upper + (1.0 - np.exp(-loose)) * dye["surface"]
        self.brought = float(arrived[-1])
        self.time = time
        self.arrived = arrived
        self.diffuses = film_diffusivity(case, at_bottom) * (1.0 + (UNFUSED - 1.0) * (1.0 - fused))
        self.lost = vapour_flux(dye, at_bottom) * left * open_to_air


def film_diffusivity(case, kelvin):
    at_25c, energy = case["film"]
    return at_25c * np.exp(-energy / GAS * (1.0 / kelvin - 1.0 / 298.15))


class Film:
    """Cells of nearly equal width; a layer ends on a face."""

    def __init__(self, layers):
        whole = sum(layer[0] for layer in layers)
        width, capacity, slow = [], [], []
        for thickness, binds, diffusivity in layers:
            cells = max(round(CELLS * thickness / whole), 8)
            width += [thickness / cells] * cells
            capacity += [binds] * cells
            slow += [diffusivity] * cells
        self.width, self.capacity = np.array(width), np.array(capacity)
        half = 0.5 * self.width / np.array(slow)
        self.half = half
        self.between = 1.0 / (half[:-1] + half[1:])
        self.cells = len(width)

    def top(self, held):
        found, left = 0.0, min(VISIBLE, self.width.sum())
        depth = left
        for concentration, width in zip(free(held, self.capacity)[::-1], self.width[::-1]):
            taken = min(width, left)
            found += concentration * taken
            left -= taken
        return found / depth

    def moves(self, held, diffuses, into, below, above):
        """Rates of `held`, and what enters by each face; a face is (conductance outside, what drives it)."""
        c = free(held, self.capacity)
        flux = np.empty(self.cells + 1)
        flux[1:-1] = diffuses * self.between * (c[:-1] - c[1:])

        def face(outside, drives, cell):
            inside = diffuses / self.half[cell]
            through = outside * inside / (outside + inside) if outside + inside > 0.0 else 0.0
            return through * (drives - c[cell])

        entered = face(*below, 0), face(*above, -1)
        flux[0] = into + entered[0]
        flux[-1] = -entered[1]
        return (flux[:-1] - flux[1:]) / self.width, entered


def solve(case):
    film, heat, dye = Film(case["layers"]), Heat(case), case["dye"]
    pattern = diags([1.0, 1.0, 1.0], [-1, 0, 1], shape=(film.cells, film.cells))
    # A pace that is even between two moments of a coarser grid, so that the solver sees no corner at each point.
    knots = np.unique(np.concatenate([heat.time[::20], heat.time[-1:]]))
    paces = np.diff(np.interp(knots, heat.time, heat.arrived)) / np.diff(knots)
    middles = 0.5 * (knots[1:] + knots[:-1])

    def heated(at, held):
        diffuses = np.interp(at, heat.time, heat.diffuses)
        lost = np.interp(at, heat.time, heat.lost)
        into = np.interp(at, middles, paces)
        return film.moves(held, diffuses, into, (0.0, 0.0), (lost / SATURATED, 0.0))[0]

    held = solve_ivp(
        heated, (heat.time[0], heat.ends), np.zeros(film.cells), method="BDF", rtol=1e-6, atol=1e-9,
        max_step=1.0, jac_sparsity=pattern,
    ).y[:, -1]

    # On the shelf: the film, and what both cloths carry.
    own, faces = heat.upper * heat.left, heat.upper
    state = np.concatenate([held, [own, faces]])
    wide = lil_matrix((film.cells + 2, film.cells + 2))
    wide[: film.cells, : film.cells] = pattern
    wide[0, film.cells] = wide[film.cells - 1, film.cells + 1] = 1.0
    wide[film.cells, [0, film.cells]] = wide[film.cells + 1, [film.cells - 1, film.cells + 1]] = 1.0
    per_dye = heat.activity / heat.upper  # activity for each kg/m² that the yarns carry
    slow = 1.0 + (UNFUSED - 1.0) * (1.0 - heat.fused)
    begins = 0.0
    for seconds, low, high in case["stays"]:
        lasts = min(seconds, case["looked_at"] * DAY - begins)
        if lasts <= 0.0:
            break
        phases = 0.5 * (low + high) + 0.5 * (high - low) * np.sin((np.arange(64) + 0.5) * 2.0 * np.pi / 64)
        diffuses = float(np.mean(film_diffusivity(case, phases))) * slow
        flux = float(np.mean(vapour_flux(dye, phases)))

        def stored(_, state):
            held, (own, faces) = state[:-2], state[-2:]
            give = flux * dye["share"] / SATURATED
            below = give, per_dye * own * SATURATED
            above = (give, per_dye * faces * SATURATED) if case["faced"] else (flux / SATURATED, 0.0)
            rates, (from_own, from_faces) = film.moves(held, diffuses, 0.0, below, above)
            return np.concatenate([rates, [-from_own, -from_faces if case["faced"] else 0.0]])

        state = solve_ivp(
            stored, (0.0, lasts), state, method="BDF", rtol=1e-6, atol=1e-9, jac_sparsity=wide.tocsc()
        ).y[:, -1]
        begins += seconds
    return heat.brought * 1e6, film.top(state[:-2])


def main(words):
    with open(words[0], encoding="utf-8") as file:
        cases = json.load(file)
    rows = []
    for case in cases:
        brought, top = solve(case)
        rows.append(f"  [{case['print']}, {case['set']}, {case['dwell']}, {brought:.4f}, {top:.6g}]")
        ours = case["ours"]
        off = f"{ours[0] / brought - 1.0:+.4%}, {(ours[1] - top) / (top + 1e-3):+.2%}"
        print(f"{rows[-1]}  ours {ours[0]:.4f} {ours[1]:.6g}: {off}", file=sys.stderr, flush=True)
    print("[\n" + ",\n".join(rows) + "\n]")


if __name__ == "__main__":
    main(sys.argv[1:])
