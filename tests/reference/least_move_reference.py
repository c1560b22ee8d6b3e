"""Least movement of tie-rod joints for next to the least toe change over the travel, found by SciPy.

    python3 least_move_reference.py                write least_move.json
    python3 least_move_reference.py --check        recompute and compare, write nothing

With both joints free, or one free fore and aft as well, the least score lies in a long valley. Of all
places within EQUAL degrees of the least score in the box, the one is wanted to which the joints move
least: the sum of the squares of their ways, mm. Scores and travels as in optimum_reference.py.
"""

import argparse
import copy
import json
import math
import sys

import numpy as np
from scipy.optimize import fsolve, least_squares, minimize
from scipy.spatial.transform import Rotation

from corner_reference import Corner, measures, solve, unit
from optimum_reference import largest, rms, tidy
from toe_curve import Curve, equations

WAYS = {"inner free": [("inner", 0), ("inner", 1), ("inner", 2)],
        "outer free": [("outer", 0), ("outer", 1), ("outer", 2)],
        "both in the front plane": [("inner", 1), ("inner", 2), ("outer", 1), ("outer", 2)]}
NAMES = ["corner_01_rod_behind", "corner_02_rod_ahead", "corner_03_long_travel_upper_spring",
         "corner_04_skewed_axes", "corner_06_rear_fixed_link", "corner_08_static_toe_and_camber"]
CASES = [(n, "both in the front plane") for n in NAMES]
CASES += [(n, "inner free") for n in NAMES[:4]] + [(NAMES[0], "outer free")]
BOX = 75.0  # searched this far either way along each direction, mm
EQUAL = 0.001  # scores this near to the least are equal, degrees


class Joints(Curve):
    """Toe change as a function of moves of either joint along any axes, mm from design."""

    def __init__(self, spec, ways):
        super().__init__(spec, "inner")
        self.ways = ways
        self.design = np.array([spec["tie_rod"][j][a] for j, a in ways], float)
        self.near = None

    def with_joint(self, places):
        spec = copy.deepcopy(self.spec)
        for (joint, axis), place in zip(self.ways, places):
            spec["tie_rod"][joint][axis] = float(place)
        return spec

    def moved(self, by):
        return self(self.design + by)

    def _poses(self, corner):
        """From the poses of the place before, where that converges; otherwise from design."""
        if self.near is not None:
            centre, turn = self.near
            target, anchors = corner.centre[2] + self.travels, corner.anchors(0.0)
            for _ in range(6):
                error, matrix = equations(corner, anchors, centre, turn, target)
                if np.abs(error).max() < 1e-11:
                    self.near = centre, turn
                    return centre, turn, matrix
                move = np.linalg.solve(matrix, -error[:, :, None])[:, :, 0]
                centre, turn = centre + move[:, :3], Rotation.from_rotvec(move[:, 3:]) * turn
        centre, turn, matrix = super()._poses(corner)
        self.near = centre, turn
        return centre, turn, matrix

    def _solve(self, places):
        corner = Corner(self.with_joint(places))
        centre, turn, matrix = self._poses(corner)
        axis = turn.apply(corner.spin_axis)
        toe = np.arctan2(axis[:, 0], axis[:, 1])
        rod = centre + turn.apply(corner.outer - corner.centre) - corner.inner
        along = rod / np.linalg.norm(rod, axis=1)[:, None]
        first = unit(corner.outer - corner.inner)
        stretch = {"inner": first - along, "outer": turn.inv().apply(along) - first}
        turning = np.linalg.solve(matrix, np.broadcast_to(np.eye(6)[4][:, None], (len(toe), 6, 1)))
        spin = np.cross(turning[:, 3:, 0], axis)
        rate = (axis[:, 1] * spin[:, 0] - axis[:, 0] * spin[:, 1]) / (axis[:, 0]**2 + axis[:, 1]**2)
        change = toe - math.atan2(corner.spin_axis[0], corner.spin_axis[1])
        columns = np.column_stack([stretch[j][:, a] for j, a in self.ways])
        return np.degrees(change), np.degrees(-rate[:, None] * columns)


def least_rms(curve):
    """The least RMS in the box, from two starts."""
    n, found = len(curve.ways), []
    for start in (np.zeros(n), np.linspace(-20.0, 20.0, n)):
        found.append(least_squares(lambda p: curve.moved(p)[0], start, jac=lambda p: curve.moved(p)[1],
                                   bounds=(-BOX, BOX), xtol=1e-14, ftol=1e-14, gtol=1e-15, max_nfev=200).x)
    return min(found, key=lambda p: rms(curve.moved(p)[0]))


def least_largest(curve, start):
    """The least largest in the box, in epigraph form, by SLSQP with restarts."""
    n, best = len(curve.ways), start

    def rows(p):
        change, slope = (1e3 * a for a in curve.moved(p[:n]))
        value = np.concatenate([p[n] - change, p[n] + change])
        return value, np.column_stack([np.vstack([-slope, slope]), np.ones(len(value))])

    for _ in range(3):
        first = np.append(best, 1e3 * largest(curve.moved(best)[0]))
        found = minimize(lambda p: p[n], first, jac=lambda p: np.eye(n + 1)[n], method="SLSQP",
                         bounds=[(-BOX, BOX)] * n + [(0.0, None)],
                         constraints={"type": "ineq", "fun": lambda p: rows(p)[0],
                                      "jac": lambda p: rows(p)[1]},
                         options={"ftol": 1e-13, "maxiter": 150}).x[:n].clip(-BOX, BOX)
        if largest(curve.moved(found)[0]) < largest(curve.moved(best)[0]):
            best = found
    return best


def pulled(curve, target):
    """The least mean square with a pull back to design, the pull as strong as lets the target be met."""
    n, low, high, place = len(curve.ways), -24.0, -2.0, np.zeros(len(curve.ways))
    for _ in range(24):
        gain = 10 ** (0.5 * (low + high) / 2)
        place = least_squares(lambda p: np.append(curve.moved(p)[0] / math.sqrt(len(curve.travels)), gain * p), place,
                              jac=lambda p: np.vstack([curve.moved(p)[1] / math.sqrt(len(curve.travels)), gain * np.eye(n)]),
                              bounds=(-BOX, BOX), xtol=1e-12, ftol=1e-12, gtol=1e-14, max_nfev=60).x
        if rms(curve.moved(place)[0]) <= target:
            low = 0.5 * (low + high)
        else:
            high = 0.5 * (low + high)
    return place


def shortest(curve, target, kind, starts):
    """The least movement whose score is at most target."""
    n = len(curve.ways)

    def rows(p):
        change, slope = curve.moved(p)
        if kind == "rms":
            return (np.array([1 - rms(change) / target]),
                    -(change @ slope / len(change) / rms(change) / target)[None, :])
        return (np.concatenate([1 - change / target, 1 + change / target]),
                np.vstack([-slope, slope]) / target)

    score, good = (rms if kind == "rms" else largest), []
    for start in starts:
        place = start
        try:
            for _ in range(2):
                place = minimize(lambda p: p @ p / 100, place, jac=lambda p: p / 50, method="SLSQP",
                                 bounds=[(-BOX, BOX)] * n,
                                 constraints={"type": "ineq", "fun": lambda p: rows(p)[0],
                                              "jac": lambda p: rows(p)[1]},
                                 options={"ftol": 1e-13, "maxiter": 100}).x
        except ValueError:  # SLSQP tried a place that can't be posed
            continue
        if score(curve.moved(place)[0]) < target * (1 + 1e-6):
            good.append(place)
    for place in sorted(good, key=lambda p: p @ p):
        sharp = sharpened(rows, place)
        if sharp is not None:
            return sharp, len(good)
    return None, len(good)


def sharpened(rows, place):
    """Solve the conditions of a minimum on the limits that hold it, multipliers >= 0; None where they don't hold."""
    n = len(place)
    value = rows(place)[0]
    active = [i for i in range(len(value)) if value[i] < 1e-5]

    def conditions(q):
        value, slope = rows(q[:n])
        return np.concatenate([q[:n] / 10 - 10 * q[n:] @ slope[active], value[active]])

    slope = rows(place)[1][active]
    guess = np.linalg.lstsq(10 * slope.T, place / 10, rcond=None)[0]
    found, _, _, _ = fsolve(conditions, np.append(place, guess), xtol=1e-13, full_output=True)
    good = np.abs(conditions(found)).max() < 1e-8 and found[n:].min() >= 0
    return found[:n] if good else None


def confirmed(curve, place):
    """The score's curve by corner_reference.py; stops when the two ways part."""
    corner = Corner(curve.with_joint(curve.design + place))
    toe = [measures(solve(corner, t, 0.0), t)["toe_deg"] for t in curve.travels]
    change = np.array(toe) - measures(solve(corner, 0.0, 0.0), 0.0)["toe_deg"]
    if not np.abs(change - curve.moved(place)[0]).max() < 1e-10:
        raise ValueError("the two solutions differ")
    return change


def case(name, ways):
    with open(f"{name}.json", encoding="utf-8") as file:
        curve = Joints(json.load(file)["corner"], WAYS[ways])
    result = {"corner": name, "ways": ways, "directions": [[j, "xyz"[a]] for j, a in WAYS[ways]]}
    low = least_rms(curve)
    for kind, score, best in (("rms", rms, low), ("largest", largest, least_largest(curve, low))):
        least = score(curve.moved(best)[0])
        starts = [pulled(curve, 0.4 * (least + EQUAL)), 0.5 * best, np.zeros(len(best))]
        place, ended = shortest(curve, least + EQUAL, kind, starts)
        if place is None:  # not proven to be a minimum: no reference
            result[kind] = None
            continue
        result[kind] = {"least_deg": least, "moves": place.tolist(), "way": float(np.linalg.norm(place)),
                        "score_deg": score(confirmed(curve, place)), "starts_that_got_there": ended}
    return result


def write(cases):
    with open("least_move.json", "w", encoding="utf-8") as file:
        lines = ",\n".join(json.dumps(c) for c in tidy(cases))
        file.write("[\n" + lines + "\n]\n")


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n\n")[0])
    parser.add_argument("--check", action="store_true", help="compare only, write nothing")
    check, cases, failed = parser.parse_args().check, [], False
    for name, ways in CASES:
        cases.append(case(name, ways))
        print(name, ways, *(f"{k} {cases[-1][k]['least_deg']:.6f} way {cases[-1][k]['way']:.3f}"
                            for k in ("rms", "largest") if cases[-1][k]), flush=True)
        if not check:
            write(cases)
    if not check:
        return
    with open("least_move.json", encoding="utf-8") as file:
        stored = json.load(file)
    for old, new in zip(stored, cases):
        apart = max(np.abs(np.array(old[k]["moves"]) - new[k]["moves"]).max()
                    for k in ("rms", "largest") if old[k] and new[k])
        failed |= not apart < 1e-3
        print(f"{old['corner']} {old['ways']}: differs by {apart:.1e} mm")
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    main()
