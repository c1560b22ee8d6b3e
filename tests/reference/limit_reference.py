"""Where a corner runs out of reach: the ends of wheel travel and of rack travel.

    python3 limit_reference.py                write limits.json
    python3 limit_reference.py --check        recompute and compare, write nothing

Follows the curve of poses by its length, so that it goes round an end instead of stopping short of
it, with the constraint equations of corner_reference.py. README.md says what each end means.
"""

import argparse
import glob
import json
import os
import sys

import numpy as np
from scipy.optimize import brentq
from scipy.spatial.transform import Rotation

from corner_reference import Corner, Pose, unit

ARM_MM = 100.0  # a turn of 1 rad counts like a displacement of 100 mm in the length of the curve
STEP_MM = 2.0
LONGEST_MM = 900.0
# Equal parallel arms come into line all at once: at its ends the curve of poses crosses itself.
BRANCHING = "corner_07_parallel_arms.json"
WEIGHT = np.array([1.0, 1.0, 1.0, ARM_MM, ARM_MM, ARM_MM, 1.0])


class Path:
    """Poses with one freedom. `wheel`: rack held, height free. `rack`: height held, rack free."""

    def __init__(self, corner, free):
        self.corner, self.free = corner, free

    def equations(self, pose):
        """Six errors and their rates by the six motions and the rack, (6,) and (6, 7)."""
        corner = self.corner
        error = pose.residual(corner.centre, corner.centre[2])
        rate = np.zeros((6, 7))
        rate[:, :6] = pose.jacobian(corner.centre)
        rate[4, 6] = -rate[4, :3] @ corner.rack_axis
        if self.free == "wheel":  # the height's row gives way to one that holds the rack
            error[5], rate[5] = pose.rack, np.eye(7)[6]
        return error, rate / WEIGHT

    def tangent(self, pose, before):
        """Unit motion along the curve, the way `before` went."""
        along = np.linalg.svd(self.equations(pose)[1])[2][6]
        return along if along @ before > 0 else -along

    def advance(self, pose, along, length):
        """Pose and tangent where the curve meets the plane `length` ahead, square to `along`."""
        move = along * length
        near = self._moved(pose, move)
        for _ in range(12):
            error, rate = self.equations(near)
            move = np.linalg.solve(np.vstack([rate, along]), np.append(-error, 0.0))
            near = self._moved(near, move)
        if not np.abs(self.equations(near)[0]).max() < 1e-10:
            return None, None
        return near, self.tangent(near, along)

    def _moved(self, pose, move):
        move = move / WEIGHT
        moved = pose.moved(move[:3], move[3:6])
        return Pose(self.corner, moved.centre, moved.turn, pose.rack + move[6])


def lower_arm_speed(pose, along):
    """Speed of the lower ball joint about the arm's pivots, bump positive."""
    corner, motion = pose.corner, along / WEIGHT
    joint = pose.place(corner.lower_joint)
    speed = motion[:3] + np.cross(motion[3:6], joint - pose.centre)
    axis = unit(corner.lower[0] - corner.lower[1])
    return unit(np.cross(axis, joint - corner.lower[0])) @ speed


def sines(pose):
    """Of the upper arm and the tie rod: how far each is from locking, 0 = in line, out of reach."""
    corner = pose.corner
    upper, lower, outer = (pose.place(p) for p in
                           (corner.upper_joint, corner.lower_joint, corner.outer))
    inner = corner.inner + pose.rack * corner.rack_axis
    swing = unit(np.cross(corner.upper[1] - corner.upper[0], upper - corner.upper[0]))
    steer = unit(np.cross(upper - lower, outer - lower))
    return float(swing @ unit(upper - lower)), float(steer @ unit(outer - inner))


def end_of(corner, free, way, signal):
    """First pose from design, going `way`, at which `signal(pose, tangent)` changes sign."""
    path = Path(corner, free)
    pose = Pose(corner, corner.centre, Rotation.identity(), 0.0)
    first = np.eye(7)[2 if free == "wheel" else 6] * way
    along = path.tangent(pose, first)
    start = np.sign(signal(pose, along))
    done, length = 0.0, STEP_MM
    while done < LONGEST_MM:
        beyond, ahead = path.advance(pose, along, length)
        if beyond is None or along @ ahead < 0.998:  # a sharp bend: shorter steps
            length /= 2
            if length < 1e-6:
                raise ValueError("lost the curve")
            continue
        if np.sign(signal(beyond, ahead)) != start:
            at = lambda h: signal(*path.advance(pose, along, h))
            return path.advance(pose, along, brentq(at, 0.0, length, xtol=1e-13))[0]
        pose, along, done, length = beyond, ahead, done + length, min(STEP_MM, 1.5 * length)
    return None


def ends(corner):
    """All ends of one corner."""
    found = {}
    for name, way in (("bump", 1), ("droop", -1)):
        for key, signal in (("wheel_turns_back", lambda pose, along: along[2]),
                            ("lower_arm_turns_back", lower_arm_speed)):
            pose = end_of(corner, "wheel", way, signal)
            found[f"{name}_{key}"] = described(
                pose, "travel", pose and pose.centre[2] - corner.centre[2])
    if corner.rack_travel is not None:
        for name, way in (("left", 1), ("right", -1)):
            for key, signal in (("rack_turns_back", lambda pose, along: along[6]),
                                ("tie_rod_in_line", lambda pose, along: sines(pose)[1])):
                pose = end_of(corner, "rack", way, signal)
                found[f"{name}_{key}"] = described(pose, "rack", pose and pose.rack)
    return found


def described(pose, name, value):
    """15 digits; a sine of 1e-9 says 'in line' no less than the noise that it is."""
    if pose is None:
        return None
    upper, rod = (0.0 if abs(s) < 1e-9 else float(f"{abs(s):.15g}") for s in sines(pose))
    return {name: float(f"{value:.15g}"), "upper_arm_sine": upper, "tie_rod_sine": rod}


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n\n")[0])
    parser.add_argument("--check", action="store_true", help="compare only, write nothing")
    check, limits, worst = parser.parse_args().check, {}, 0.0
    for path in sorted(set(glob.glob("corner_*.json")) - {BRANCHING}):
        with open(path, encoding="utf-8") as file:
            corner = Corner(json.load(file)["corner"])
        limits[os.path.splitext(path)[0]] = ends(corner)
    if check:
        with open("limits.json", encoding="utf-8") as file:
            stored = json.load(file)
        for name, old in stored.items():
            for key, end in old.items():
                for what, value in (end or {}).items():
                    worst = max(worst, abs(value - limits[name][key][what]))
        print(f"largest difference {worst:.1e}")
        sys.exit(0 if worst < 1e-6 and stored.keys() == limits.keys() else 1)
    blocks = [f"{json.dumps(name)}: {{\n" + ",\n".join(
        f"  {json.dumps(k)}: {json.dumps(v)}" for k, v in found.items()) + "\n}"
        for name, found in limits.items()]
    with open("limits.json", "w", encoding="utf-8") as file:
        file.write("{\n" + ",\n".join(blocks) + "\n}\n")


if __name__ == "__main__":
    main()
