"""Best tie-rod joint for the least toe change over the travel, found by SciPy.

    python3 optimum_reference.py                write optimum.json
    python3 optimum_reference.py --check        recompute and compare, write nothing

One joint of the tie rod moves in y and z (its x stays), the rod is cut anew at design so that the
static toe holds, and two scores are made small over the 21 heights at rack 0: the RMS of the toe
change and the largest |toe change|. The same constraint equations as corner_reference.py, for all
heights at once; every optimum is evaluated again with corner_reference.py.
"""

import argparse
import json
import math
import sys

import numpy as np
from scipy.optimize import brentq, fsolve, least_squares, minimize

from corner_reference import Corner, measures, solve
from toe_curve import Curve

CASES = [("corner_01_rod_behind", "inner"), ("corner_02_rod_ahead", "inner"),
         ("corner_03_long_travel_upper_spring", "inner"), ("corner_04_skewed_axes", "inner"),
         ("corner_06_rear_fixed_link", "inner"), ("corner_08_static_toe_and_camber", "inner"),
         ("corner_01_rod_behind", "outer"), ("corner_02_rod_ahead", "outer"),
         ("corner_06_rear_fixed_link", "outer")]
REACH = {"inner": 60.0, "outer": 30.0}  # starts this far either side of design, mm
BOX = {"inner": 150.0, "outer": 60.0}  # searched this far either side of design, mm
RISE_DEG = 0.01  # width of the valley is given for this rise of the RMS


def rms(change):
    return math.sqrt(np.mean(change ** 2))


def largest(change):
    return float(np.abs(change).max())


def box(curve):
    reach = BOX[curve.joint]
    return curve.design - reach, curve.design + reach


def starts(curve):
    reach = REACH[curve.joint]
    return [curve.design + [i * reach, j * reach] for i in (-1, 0, 1) for j in (-1, 0, 1)]


def best_rms(curve, start):
    """Least squares, then the gradient's root, so that the place is good to 1e-8 mm or so."""
    found = least_squares(lambda p: curve(p)[0], start, jac=lambda p: curve(p)[1],
                          bounds=box(curve), xtol=1e-14, ftol=1e-14, gtol=1e-14, max_nfev=200).x

    def gradient(p):
        change, slope = curve(p)
        return slope.T @ change * 1e3

    root = fsolve(gradient, found, xtol=1e-13, full_output=True)[0]  # judged below, not by status
    inside = np.abs(root - curve.design).max() < BOX[curve.joint]
    return root if inside and rms(curve(root)[0]) <= rms(curve(found)[0]) * (1 + 1e-9) else found


def best_largest(curve, start):
    """Epigraph form: the least t with -t <= toe change <= t, by SLSQP, toe in 1e-3 degrees."""
    first = np.append(start, largest(curve(start)[0]) * 1e3)

    def rows(p):
        change, slope = (1e3 * a for a in curve(p[:2]))
        value = np.concatenate([p[2] - change, p[2] + change])
        return value, np.column_stack([np.vstack([-slope, slope]), np.ones(len(value))])

    low, high = box(curve)
    for _ in range(2):  # again: SLSQP's quasi-Newton matrix goes stale in a flat valley
        found = minimize(lambda p: p[2], first, jac=lambda p: np.array([0.0, 0.0, 1.0]),
                         method="SLSQP", bounds=[*zip(low, high), (0.0, None)],
                         constraints={"type": "ineq", "fun": lambda p: rows(p)[0],
                                      "jac": lambda p: rows(p)[1]},
                         options={"ftol": 1e-13, "maxiter": 100})
        first = found.x
    return found.x[:2]


def sharpened(curve, place):
    """Solve the optimality conditions on the heights that reach the largest |toe change|.

    Returns the place, the heights and their multipliers (all >= 0 at a true minimum)."""
    change = curve(place)[0]
    order = np.argsort(-np.abs(change))
    top = np.abs(change[order[0]])
    active = [i for i in order[:3] if top - np.abs(change[i]) < 1e-5 + 1e-3 * top]
    sign, count = np.sign(change[active]), len(active)

    def conditions(p):
        value, slope = curve(p[:2])
        weights = p[3:]
        push = (weights * sign) @ slope[active]
        return np.concatenate([1e3 * (sign * value[active] - p[2]), 1e3 * push, [weights.sum() - 1]])

    guess = np.concatenate([place, [top], np.full(count, 1.0 / count)])
    found, _, status, _ = fsolve(conditions, guess, xtol=1e-13, full_output=True)
    good = (np.abs(conditions(found)).max() < 1e-8 and found[3:].min() >= 0
            and largest(curve(found[:2])[0]) <= top * (1 + 1e-9))
    return (found[:2], active, found[3:]) if good else (place, active, None)


def hessian(curve, place, step=1e-3):
    """Second derivatives of the mean square, by central differences of its gradient."""
    gradient = lambda p: (lambda c, s: 2 * s.T @ c / len(c))(*curve(p))
    columns = [(gradient(place + step * e) - gradient(place - step * e)) / (2 * step)
               for e in np.eye(2)]
    return (np.array(columns) + np.array(columns).T) / 2


def valley(curve, place):
    """Half-widths, along the two axes of the bowl, within which the RMS rises by RISE_DEG."""
    bends, axes = np.linalg.eigh(hessian(curve, place))
    bottom, widths = rms(curve(place)[0]), []
    for axis in axes.T:
        rise = lambda d: rms(curve(place + d * axis)[0]) - bottom - RISE_DEG
        sides = []
        for way in (1.0, -1.0):
            d = 0.01
            while rise(way * d) < 0 and d < BOX[curve.joint]:
                d *= 1.5
            sides.append(abs(brentq(rise, 0.0, way * d)) if rise(way * d) > 0 else None)
        widths.append(None if None in sides else min(sides))
    return {"hessian_yz": hessian(curve, place).tolist(), "weak_direction_yz": axes[:, 0].tolist(),
            "weak_half_width": widths[0], "stiff_half_width": widths[1]}


def distinct(curve, places, score):
    """Different minima, best first, and how many starts came to each."""
    minima = []
    for place in sorted(places, key=lambda p: score(curve(p)[0])):
        same = next((m for m in minima if np.linalg.norm(m[0] - place) < 1e-3), None)
        if same:
            same[1] += 1
        else:
            minima.append([place, 1])
    return minima


def confirmed(curve, place):
    """Toe changes at a place by corner_reference.py; stops when the two ways part."""
    corner = Corner(curve.with_joint(place))
    toe = [measures(solve(corner, t, 0.0), t)["toe_deg"] for t in curve.travels]
    design = measures(solve(corner, 0.0, 0.0), 0.0)["toe_deg"]
    change = np.array(toe) - design
    if not np.abs(change - curve(place)[0]).max() < 1e-11:
        raise ValueError("the two solutions differ")
    return change


def described(curve, place, minima, score):
    """What both optima report."""
    spec = curve.with_joint(place)
    rod = np.array(spec["tie_rod"]["outer"]) - np.array(spec["tie_rod"]["inner"])
    change = confirmed(curve, place)
    return {"place": spec["tie_rod"][curve.joint], "tie_rod_length": float(np.linalg.norm(rod)),
            "rms_deg": rms(change), "largest_deg": largest(change),
            "starts": sum(m[1] for m in minima), "starts_that_reached_it": minima[0][1],
            "other_minima_score_y_z": [[score(curve(m[0])[0]), *m[0]] for m in minima[1:]],
            "toe_change_deg": change.tolist()}


def case(name, joint):
    """Both optima of one joint of one geometry."""
    with open(f"{name}.json", encoding="utf-8") as file:
        curve = Curve(json.load(file)["corner"], joint)
    by_rms = distinct(curve, [best_rms(curve, s) for s in starts(curve)], rms)
    some = [by_rms[0][0], *starts(curve)[::2]]
    by_largest = distinct(curve, [best_largest(curve, s) for s in some], largest)
    place, active, weights = sharpened(curve, by_largest[0][0])
    change = curve(curve.design)[0]
    low = described(curve, by_rms[0][0], by_rms, rms)
    low["valley"] = valley(curve, by_rms[0][0])
    even = described(curve, place, by_largest, largest)
    even["travels_at_the_largest"] = sorted(float(curve.travels[i]) for i in active)
    even["conditions_of_a_minimum_hold"] = weights is not None
    return {"corner": name, "free_joint": joint,
            "design": {"place": curve.spec["tie_rod"][joint], "rms_deg": rms(change),
                       "largest_deg": largest(change)},
            "least_rms": low, "least_largest": even}


def tidy(value):
    """15 significant digits throughout."""
    if isinstance(value, dict):
        return {k: tidy(v) for k, v in value.items()}
    if isinstance(value, list):
        return [tidy(v) for v in value]
    return float(f"{value:.15g}") if isinstance(value, float) else value


def write(cases):
    blocks = []
    for one in cases:
        lines = ",\n".join(f"  {json.dumps(k)}: {json.dumps(v)}" for k, v in tidy(one).items())
        blocks.append("{\n" + lines + "\n}")
    with open("optimum.json", "w", encoding="utf-8") as file:
        file.write("[\n" + ",\n".join(blocks) + "\n]\n")


def apart(old, new):
    """Largest difference of the places (mm) and of the scores (degrees)."""
    places = [np.abs(np.array(old[k]["place"]) - new[k]["place"]).max()
              for k in ("least_rms", "least_largest")]
    scores = [abs(old[k][s] - new[k][s]) for k in ("design", "least_rms", "least_largest")
              for s in ("rms_deg", "largest_deg")]
    return max(places), max(scores)


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n\n")[0])
    parser.add_argument("--check", action="store_true", help="compare only, write nothing")
    check, cases, failed = parser.parse_args().check, [], False
    for name, joint in CASES:
        cases.append(case(name, joint))
        print(f"{name} {joint}: RMS {cases[-1]['least_rms']['rms_deg']:.6f}, "
              f"largest {cases[-1]['least_largest']['largest_deg']:.6f} degrees", flush=True)
    if not check:
        write(cases)
        return
    with open("optimum.json", encoding="utf-8") as file:
        stored = json.load(file)
    for old, new in zip(stored, cases, strict=True):
        place, score = apart(old, new)
        failed |= not (place < 1e-6 and score < 1e-9)
        print(f"{old['corner']} {old['free_joint']}: differs by {place:.1e} mm, {score:.1e} degrees")
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    main()
