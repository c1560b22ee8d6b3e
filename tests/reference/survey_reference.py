"""Coordinates from tape readings with their covariance, by SciPy: an independent adjustment.

    python3 survey_reference.py             write survey.json
    python3 survey_reference.py --check     recompute and compare, write nothing

The readings are made up from places of our own with rounded errors. scipy.optimize.least_squares solves
the weighted sums with derivatives by differences in three points; the covariance is the inverse of J'J
with J taken once more by complex steps, so that no line of it is shared with what it checks.
"""

import argparse
import json
import sys

import numpy as np
from scipy.optimize import least_squares

MARKS = {"A": [0.0, 0.0, 0.0], "B": [610.0, 5.0, -3.0], "C": [-8.0, 590.0, 4.0], "D": [120.0, 90.0, 505.0]}
TRUTH = {"inner": [95.0, 210.0, 263.0], "outer": [-20.0, 548.0, 235.0], "pivot": [330.0, 200.0, 61.0]}
ERRORS = [0.7, -1.1, 0.4, 0.2, -0.6, 1.3, -0.9, 0.1, 0.8, -0.3, 0.5, -1.4, 0.6, -0.2, 0.9, -0.7, 0.3, -0.5]


def norm(v):
    return np.sqrt(np.sum(v * v))


def computed(kind, a, b, axis):
    if kind == "distance":
        return norm(b - a)
    if kind == "offset":
        return a[axis]
    if kind == "difference":
        return b[axis] - a[axis]
    d = b - a
    return np.arctan(d[2] / np.sqrt(d[0] ** 2 + d[1] ** 2))


def plan():
    rows = []
    for point, marks in [("inner", "ABCD"), ("outer", "ABCD"), ("pivot", "ABC")]:
        rows += [("distance", mark, point, None, 1.0 if mark != "D" else 2.5) for mark in marks]
    rows += [("distance", "inner", "outer", None, 0.8), ("offset", "pivot", None, 2, 0.5),
             ("offset", "outer", None, 1, 1.5), ("difference", "inner", "outer", 2, 0.6),
             ("slope", "pivot", "outer", None, 0.003)]
    return rows


def solve():
    names = list(TRUTH)
    rows = plan()

    def place(x, name):
        if name in MARKS:
            return np.array(MARKS[name], dtype=x.dtype)
        i = 3 * names.index(name)
        return x[i:i + 3]

    def value(x, row):
        kind, a, b, axis, _ = row
        return computed(kind, place(x, a), place(x, b) if b else None, axis)

    truth = np.concatenate([TRUTH[n] for n in names])
    deviations = np.array([r[4] for r in rows])
    errors = np.array(ERRORS[:len(rows)]) * deviations
    read = np.array([value(truth, r) for r in rows]) + errors
    read = np.array([round(v, 6 if r[0] == "slope" else 2) for v, r in zip(read, rows)])

    def residuals(x):
        return (np.array([value(x, r) for r in rows]) - read) / deviations

    fit = least_squares(residuals, truth + 3.0, jac="3-point", xtol=1e-15, ftol=1e-15, gtol=1e-15)
    x = fit.x
    jac = np.empty((len(rows), len(x)))

    def jacobian(x):
        for k in range(len(x)):
            step = x.astype(complex)
            step[k] += 1e-30j
            jac[:, k] = [value(step, r).imag / 1e-30 for r in rows] / deviations
        return jac

    for _ in range(5):  # Gauss-Newton with exact derivatives takes the rounding out
        j = jacobian(x)
        x = x - np.linalg.lstsq(j, residuals(x), rcond=None)[0]
    j = jacobian(x)
    covariance = np.linalg.inv(j.T @ j)
    r = residuals(x)
    hat = j @ covariance @ j.T
    return {
        "marks": MARKS,
        "near": TRUTH,
        "readings": [{"kind": k, "from": a, "to": b, "axis": axis, "value": v, "deviation": s}
                     for (k, a, b, axis, s), v in zip(rows, read)],
        "points": {n: list(x[3 * i:3 * i + 3]) for i, n in enumerate(names)},
        "covariance": [list(row) for row in covariance],
        "left_over": list(-r * deviations),
        "checked": list(1.0 - np.diag(hat)),
        "variance_factor": float(r @ r) / (len(rows) - len(x)),
    }


def flat(value):
    if isinstance(value, dict):
        return [v for key in sorted(value) for v in flat(value[key])]
    if isinstance(value, list):
        return [v for item in value for v in flat(item)]
    return [value] if isinstance(value, float) else []


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--check", action="store_true")
    check = parser.parse_args().check
    found = solve()
    if check:
        with open("survey.json") as file:
            stored = json.load(file)
        worst = max(abs(a - b) / max(1.0, abs(a)) for a, b in zip(flat(stored), flat(json.loads(json.dumps(found)))))
        print(f"largest difference {worst:.1e}")
        sys.exit(worst > 1e-9)
    with open("survey.json", "w") as file:
        json.dump(found, file, indent=1)
        file.write("\n")


if __name__ == "__main__":
    main()
