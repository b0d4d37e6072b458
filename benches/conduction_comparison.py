"""Lays the cooling curves of the program beside those of a general stiff solver.

A script for development, not part of the tests. It needs scipy (`pip install scipy`, in an
environment of its own):

    python benches/conduction_comparison.py [PROGRAM]

The program, if none is given the one that `cargo run --release` builds, is asked in JSON lines for
the cooling of sections in quenchants of the list. The same is computed by the method of lines on
evenly spaced cells, by backward differentiation with a tolerance of 1e-7, and the times at which
the centre passes some temperatures are printed with their differences; of a blade those of the
core of the spine and of the edge, by finite elements in the true shape on two meshes, carried on to
the limit of ever finer ones, where the program takes two or three layers that follow the flanks. Properties: undercooled austenite, linear between the nodes that `recalesce::sources::simsir_gur_2008` cites.
"""

import csv
import json
import pathlib
import subprocess
import sys

import numpy as np
from scipy.integrate import solve_ivp
from scipy.sparse import coo_array, csr_array, diags_array, lil_array

ROOT = pathlib.Path(__file__).resolve().parent.parent
START_C = 800.0
AT_C = [700.0, 540.0, 400.0, 300.0, 200.0]
MEDIA = ["water60", "oil_fast", "oil_medium", "plate_Al_foil", "air_still"]
BLADE_MEDIA = ["water20", "oil_fast", "oil_medium", "air_still"]
NODES_C = [0.0, 300.0, 600.0, 900.0]
CONDUCTIVITY = [15.0, 18.0, 21.7, 25.1]
CAPACITY = [4.15e6, 4.40e6, 4.67e6, 4.90e6]
CELLS = 160
SQUARE_CELLS = 48
# Rows between the middle plane and the flank; columns from edge to core and from there to the face.
BLADE_MESHES = [(6, 66, 18), (12, 132, 36)]
BLADES_MM = [(0.5, 4.0, 30.0), (0.3, 2.5, 20.0), (1.0, 6.0, 50.0), (3.0, 4.0, 40.0)]


def media():
    """Surface temperatures, coefficients and bath of each quenchant."""
    found = {}
    with open(ROOT / "src/physics/heat/media.csv", newline="", encoding="utf-8") as file:
        for row in csv.DictReader(file):
            knots = [[float(x) for x in knot.split(":")] for knot in row["h_w_m2k"].split()]
            temperatures, h = np.array(knots).T
            found[row["name"]] = (temperatures, h, float(row["bath_c"]))
    return found


def flux(surface_c, medium):
    temperatures, h, bath_c = medium
    return np.exp(np.interp(surface_c, temperatures, np.log(h))) * (surface_c - bath_c)


def at_surface(cell_c, half_cell, medium):
    """Flux where half a cell of steel lies between the cell's middle and the surface."""
    surface = np.array(cell_c, dtype=float)
    for _ in range(60):
        k = np.interp(surface, NODES_C, CONDUCTIVITY)
        out, more = (flux(surface + d, medium) for d in (0.0, 1e-3))
        error = k * (cell_c - surface) / half_cell - out
        slope = -k / half_cell - (more - out) / 1e-3
        surface = surface - np.clip(error / slope, -25.0, 25.0)
    return flux(surface, medium)


def one_dimension(size_m, power, medium):
    faces = np.linspace(0.0, size_m, CELLS + 1)
    volume = np.diff(faces ** (power + 1)) / (power + 1)
    area = faces**power
    step = size_m / CELLS

    def rate(_, t):
        k = np.interp(t, NODES_C, CONDUCTIVITY)
        between = 0.5 * (k[1:] + k[:-1]) * (t[:-1] - t[1:]) / step
        out = at_surface(t[-1:], 0.5 * step, medium)
        flow = np.concatenate([[0.0], between, out]) * area
        return -np.diff(flow) / volume / np.interp(t, NODES_C, CAPACITY)

    sparsity = diags_array([np.ones(CELLS - 1), np.ones(CELLS), np.ones(CELLS - 1)], offsets=[-1, 0, 1])
    return rate, np.full(CELLS, START_C), sparsity.tolil()


def square(half_m, medium):
    n = SQUARE_CELLS
    step = half_m / n

    def rate(_, flat):
        t = flat.reshape(n, n)
        k = np.interp(t, NODES_C, CONDUCTIVITY)
        gain = np.zeros_like(t)
        for turn in (np.asarray, np.transpose):
            tt, kk, g = turn(t), turn(k), turn(gain)
            between = 0.5 * (kk[1:] + kk[:-1]) * (tt[:-1] - tt[1:]) / step
            g[:-1] -= between
            g[1:] += between
            g[-1] -= at_surface(tt[-1], 0.5 * step, medium)
        return (gain / step / np.interp(t, NODES_C, CAPACITY)).ravel()

    sparsity = lil_array((n * n, n * n))
    for i in range(n):
        for j in range(n):
            for a, b in ((i, j), (i + 1, j), (i - 1, j), (i, j + 1), (i, j - 1)):
                if 0 <= a < n and 0 <= b < n:
                    sparsity[i * n + j, a * n + b] = 1
    return rate, np.full(n * n, START_C), sparsity


def blade(edge_m, spine_m, height_m, medium, mesh):
    """Linear triangles over the half of a blade between its middle plane and a straight flank. Also
    returns the numbers of the nodes at the edge and at the core of the spine."""
    intervals, to_core, to_face = mesh
    core_m = max(height_m - 0.5 * spine_m, 0.75 * height_m)
    # Closer together towards the edge, and evenly from the core of the spine to its face.
    columns = np.concatenate([
        core_m * np.linspace(0.0, 1.0, to_core + 1) ** 1.3,
        np.linspace(core_m, height_m, to_face + 1)[1:],
    ])
    half = 0.5 * (edge_m + (spine_m - edge_m) * columns / height_m)
    rows = intervals + 1
    at = np.stack([np.repeat(columns, rows), np.outer(half, np.linspace(0.0, 1.0, rows)).ravel()], axis=1)
    number = np.arange(len(at)).reshape(-1, rows)
    a, b, c, d = (part.ravel() for part in (number[:-1, :-1], number[1:, :-1], number[1:, 1:], number[:-1, 1:]))
    triangles = np.concatenate([np.stack([a, b, c], axis=1), np.stack([a, c, d], axis=1)])
    (x0, y0), (x1, y1), (x2, y2) = (at[triangles[:, corner]].T for corner in range(3))
    area = 0.5 * ((x1 - x0) * (y2 - y0) - (x2 - x0) * (y1 - y0))
    count = len(triangles)
    slopes = [(y1 - y2, y2 - y0, y0 - y1), (x2 - x1, x0 - x2, x1 - x0)]
    gradient = [
        csr_array(coo_array((np.concatenate(parts) / np.tile(2.0 * area, 3), (np.tile(np.arange(count), 3), triangles.T.ravel())), shape=(count, len(at))))
        for parts in slopes
    ]
    volume = np.bincount(triangles.ravel(), np.repeat(area / 3.0, 3))
    face = np.zeros(len(at))
    for line in (number[:, -1], number[0], number[-1]):
        length = np.hypot(*np.diff(at[line], axis=0).T)
        np.add.at(face, line[:-1], 0.5 * length)
        np.add.at(face, line[1:], 0.5 * length)
    outside = face > 0.0

    def rate(_, t):
        k = np.interp(t[triangles].mean(axis=1), NODES_C, CONDUCTIVITY) * area
        gain = -sum(g.T @ (k * (g @ t)) for g in gradient)
        gain[outside] -= face[outside] * flux(t[outside], medium)
        return gain / volume / np.interp(t, NODES_C, CAPACITY)

    sparsity = lil_array((len(at), len(at)))
    for corners in triangles:
        for node in corners:
            sparsity[node, corners] = 1
    return (rate, np.full(len(at), START_C), sparsity), number[0, 0], number[to_core, 0]


def times(problem, centre_of):
    rate, start, sparsity = problem
    events = []
    for at_c in AT_C:
        event = lambda _, t, at_c=at_c: centre_of(t) - at_c
        event.terminal = at_c == AT_C[-1]
        events.append(event)
    solved = solve_ivp(
        rate, (0.0, 1e5), start, "BDF", rtol=1e-7, atol=1e-5, events=events, jac_sparsity=sparsity
    )
    return [float(found[0]) if len(found) else None for found in solved.t_events]


def centre_of_line(t):
    """At the axis itself, by the parabola with no slope there."""
    return (9.0 * t[0] - t[1]) / 8.0


def centre_of_square(t):
    return centre_of_line([centre_of_line(t[:2]), centre_of_line(t[SQUARE_CELLS : SQUARE_CELLS + 2])])


def in_the_limit(size_mm, medium):
    """Times at the core of the spine and at the edge, in the limit of fine meshes: their error falls as
    the square of the distance between nodes, so a third of the difference is left of the finer one."""
    found = []
    for mesh in BLADE_MESHES:
        problem, edge, core = blade(*(1e-3 * mm for mm in size_mm), medium, mesh)
        found.append([times(problem, lambda t, node=node: t[node]) for node in (core, edge)])
    return [[b + (b - a) / 3.0 for a, b in zip(*place)] for place in zip(*found)]


def blades(program, known):
    """Blades in each quenchant: the core of the spine, then the edge."""
    for size_mm in BLADES_MM:
        section = dict(zip(("edge_mm", "spine_mm", "height_mm"), size_mm), shape="blade")
        questions = "\n".join(
            json.dumps({"question": "cooling", "section": section, "medium": name, "start_c": START_C, "at_c": AT_C})
            for name in BLADE_MEDIA
        )
        answers = subprocess.run(program, input=questions, text=True, capture_output=True, check=True, cwd=ROOT).stdout
        worst = 0.0
        for name, line in zip(BLADE_MEDIA, answers.splitlines()):
            answer = json.loads(line)
            places = (("core of the spine", "centre_time_s"), ("edge", "edge_time_s"))
            for (place, ours), reference in zip(places, in_the_limit(size_mm, known[name])):
                apart = [100.0 * (a / b - 1.0) for a, b in zip(answer[ours], reference)]
                worst = max([worst, *map(abs, apart)])
                print("blade", size_mm, place, name, " ".join(f"{x:+.2f}%" for x in apart), flush=True)
        print(f"largest difference of this blade {worst:.2f} %")


def main():
    program = sys.argv[1:] or ["cargo", "run", "--release", "--quiet", "--locked"]
    cases = [
        ({"shape": "plate", "thickness_mm": size}, lambda m, s=size: (one_dimension(5e-4 * s, 0, m), centre_of_line))
        for size in (3.0, 6.0, 12.0)
    ]
    cases.append(({"shape": "round", "diameter_mm": 12.0}, lambda m: (one_dimension(6e-3, 1, m), centre_of_line)))
    cases.append(({"shape": "square", "side_mm": 12.0}, lambda m: (square(6e-3, m), centre_of_square)))
    known = media()
    asked = [(section, solve, name) for section, solve in cases for name in MEDIA]
    questions = "\n".join(
        json.dumps({"question": "cooling", "section": section, "medium": name, "start_c": START_C, "at_c": AT_C})
        for section, _, name in asked
    )
    answers = subprocess.run(program, input=questions, text=True, capture_output=True, check=True, cwd=ROOT).stdout
    worst = 0.0
    blades(program, known)
    for (section, solve, name), line in zip(asked, answers.splitlines()):
        ours = json.loads(line)["centre_time_s"]
        reference = times(*solve(known[name]))
        apart = [100.0 * (a / b - 1.0) for a, b in zip(ours, reference) if a and b]
        worst = max([worst, *map(abs, apart)])
        print(json.dumps(section), name, " ".join(f"{x:+.2f}%" for x in apart), flush=True)
    print(f"largest difference {worst:.2f} %")


if __name__ == "__main__":
    main()
