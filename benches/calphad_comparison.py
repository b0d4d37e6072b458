"""Times equilibria against pycalphad with the same parameters, and prints the largest differences.

A script for development, not part of the tests. It needs pycalphad (`pip install pycalphad`, in an
environment of its own) and a thermodynamic database with the parameters that
`recalesce::phases::parameter_lines` lists:

    python benches/calphad_comparison.py DATABASE.tdb [PROGRAM]

The program, if none is given the one that `cargo run --release` builds, is asked in JSON lines. Its times are those of the
warm points of `cargo bench --bench equilibrium`, since a question through a pipe also pays for reading
and writing; what is printed for it here includes both.
"""

import json
import statistics
import subprocess
import sys
import time

from pycalphad import Database, Workspace
from pycalphad import variables as v

STEELS = {
    "0.8C": {"c": 0.8},
    "1.0C 1.5Cr": {"c": 1.0, "cr": 1.5},
    "1.0C 5Cr 1.1Mo 0.25V": {"c": 1.0, "cr": 5.0, "mo": 1.1, "v": 0.25},
}
TEMPERATURES_C = range(800, 1001, 10)
PHASES = {
    "FCC_A1": "austenite",
    "BCC_A2": "ferrite",
    "CEMENTITE_D011": "cementite",
    "M7C3_D101": "m7c3",
    "M23C6_D84": "m23c6",
    "M6C_E93": "m6c",
}
# Filled share of the carbon sites above which the face-centred phase is MC.
MC_CARBON = 0.3
MASSES_G_MOL = {"C": 12.011, "CR": 51.996, "FE": 55.847, "MO": 95.94, "V": 50.9415}


def ours(program, steel):
    """Mass fractions and carbon in austenite at each temperature, and milliseconds per point."""
    composition = dict.fromkeys(["c", "mn", "si", "cr", "ni", "mo", "v", "w", "p", "s"], 0.0) | steel
    questions = [
        json.dumps({"question": "equilibrium", "composition": composition, "temperature_c": t})
        for t in TEMPERATURES_C
    ]
    started = time.perf_counter()
    done = subprocess.run(program, input="\n".join(questions) + "\n", capture_output=True, text=True, check=True)
    each_ms = 1e3 * (time.perf_counter() - started) / len(questions)
    points = []
    for line in done.stdout.splitlines():
        phases = json.loads(line)["phases"]
        shares = {phase["name"]: phase["mass_fraction"] for phase in phases}
        carbon = [phase["composition"]["c"] for phase in phases if phase["name"] == "austenite"]
        points.append((shares, carbon[0] if carbon else None))
    return points, each_ms


def mole_fractions(steel):
    """Mole fractions of what is alloyed to the iron."""
    moles = {name.upper(): content / MASSES_G_MOL[name.upper()] for name, content in steel.items()}
    moles["FE"] = (100 - sum(steel.values())) / MASSES_G_MOL["FE"]
    whole = sum(moles.values())
    return {v.X(name): n / whole for name, n in moles.items() if name != "FE"}


def theirs(database, steel):
    """The same from pycalphad, with the workspace kept from point to point."""
    elements = ["FE", *(name.upper() for name in steel)]
    conditions = {v.N: 1, v.P: 101325, v.T: TEMPERATURES_C[0] + 273.15} | mole_fractions(steel)
    phases = [name for name in PHASES if name in database.phases]
    workspace = Workspace(database, [*elements, "VA"], phases, conditions)
    points, times_ms = [], []
    for celsius in TEMPERATURES_C:
        started = time.perf_counter()
        workspace.conditions[v.T] = celsius + 273.15
        sets = list(workspace.get_composition_sets())
        times_ms.append(1e3 * (time.perf_counter() - started))
        points.append(read(sets))
    # the first point pays for compiling
    return points, statistics.median(times_ms[1:])


def read(sets):
    """Mass fractions by phase, and carbon in austenite, wt %."""
    grams, carbon = {}, None
    for phase in sets:
        names = [name for name in phase.phase_record.nonvacant_elements]
        masses = [MASSES_G_MOL[name] * x for name, x in zip(names, phase.X)]
        place = names.index("C")
        name = PHASES[phase.phase_record.phase_name]
        if name == "austenite":
            filled = phase.X[place] / (1 - phase.X[place])
            if filled > MC_CARBON:
                name = "mc"
            else:
                carbon = 100 * masses[place] / sum(masses)
        grams[name] = grams.get(name, 0) + phase.NP * sum(masses)
    whole = sum(grams.values())
    return {name: mass / whole for name, mass in grams.items()}, carbon


def main():
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    database = Database(sys.argv[1])
    program = sys.argv[2:] or ["cargo", "run", "--release", "--locked", "--quiet"]
    print("steel                  ours, ms   theirs, ms   phase fraction   carbon, wt %")
    for title, steel in STEELS.items():
        points, each_ms = ours(program, steel)
        others, their_ms = theirs(database, steel)
        fraction, carbon = 0.0, 0.0
        for (shares, dissolved), (their_shares, their_dissolved) in zip(points, others):
            for name in shares.keys() | their_shares.keys():
                fraction = max(fraction, abs(shares.get(name, 0) - their_shares.get(name, 0)))
            carbon = max(carbon, abs((dissolved or 0) - (their_dissolved or 0)))
        print(f"{title:22} {each_ms:8.2f} {their_ms:12.1f} {fraction:16.1e} {carbon:14.1e}")


if __name__ == "__main__":
    main()
