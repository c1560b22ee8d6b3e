"""Times of the same problems by SciPy's general solvers, for the table of measurements.

    measure corners | python3 general_solvers.py

writes lines of `case<tab>seconds`, the least of several runs. The sweep: one corner at every wheel
travel of a list, each pose from the pose before by fsolve on six constraint equations, joints only.
The search: a tie-rod joint's best place in the front view by least_squares on the toe curve with
exact derivatives, from the place where the joint is; equations of tests/reference throughout.
"""

import json
import math
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "reference"))

import numpy as np
from scipy.optimize import fsolve, least_squares
from scipy.spatial.transform import Rotation

from corner_reference import Corner, Pose, solve
from toe_curve import Curve

RUNS = 5
NEAR_MM = 1e-6  # how well a pose by fsolve alone has to agree with the polished one
REACH_MM = 100.0


def least(work):
    times = []
    for _ in range(RUNS):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return min(times)


def sweep(corner, first, travels):
    """Poses at the travels, each from the one before; `first` is near the first of them."""
    poses, centre, vector = [], first.centre, first.turn.as_rotvec()
    for travel in travels:
        height = corner.centre[2] + travel

        # Millimetres and radians of like size: fsolve scales its difference steps by the unknowns.
        def residual(x):
            pose = Pose(corner, x[:3] * 100.0, Rotation.from_rotvec(x[3:] - 1.0), 0.0)
            return pose.residual(corner.centre, height)

        found = fsolve(residual, np.append(centre / 100.0, vector + 1.0), xtol=1e-12)
        centre, vector = found[:3] * 100.0, found[3:] - 1.0
        poses.append(Pose(corner, centre, Rotation.from_rotvec(vector), 0.0))
    return poses


def main():
    given = json.load(sys.stdin)
    asked = given["sweep"]
    corner = Corner(asked["corner"])
    travels = np.linspace(-asked["end"], asked["end"], asked["count"])
    first = solve(corner, travels[0], 0.0)
    for travel, pose in zip(travels, sweep(corner, first, travels)):
        exact = solve(corner, travel, 0.0)
        off = np.abs(pose.place(corner.outer) - exact.place(corner.outer)).max()
        if not off < NEAR_MM:
            sys.exit(f"the sweep is off by {off:.3g} mm at {travel} mm")
    seconds = least(lambda: sweep(corner, first, travels))
    print(f"sweep by SciPy's fsolve\t{seconds:e}")

    def search():
        curve = Curve(given["search"], "inner")  # anew: it keeps its last answer
        curve.travels = np.linspace(-100.0, 125.0, 21)
        box = curve.design - REACH_MM, curve.design + REACH_MM
        return least_squares(lambda p: curve(p)[0], curve.design, jac=lambda p: curve(p)[1],
                             bounds=box, xtol=1e-10, ftol=1e-12, gtol=1e-12)

    found = search()
    rms = math.sqrt(2.0 * found.cost / len(found.fun))
    print(f"found {found.x} mm, {rms:.6f} degrees RMS", file=sys.stderr)
    print(f"search by SciPy's least_squares\t{least(search):e}")


if __name__ == "__main__":
    main()
