"""Toe change over the travel, for all heights at once, as a function of one tie-rod joint's place.

The same constraint equations as corner_reference.py, solved by Newton from design in small steps of
travel, on arrays: fast enough for an optimiser. optimum_reference.py holds the places it finds
against corner_reference.py. Lengths in mm, angles in degrees.
"""

import copy
import math

import numpy as np
from scipy.spatial.transform import Rotation

from corner_reference import Corner, sweep_points, unit

STEP_MM = 8.0  # largest step of travel in the continuation from design


class Curve:
    """Toe change over the travel, and its gradient, as functions of one joint's y and z."""

    def __init__(self, spec, joint):
        self.spec, self.joint = spec, joint
        self.design = np.array(spec["tie_rod"][joint][1:], float)
        self._last = (None, None)
        self.travels = np.array([at[0] for at in sweep_points(Corner(spec))["travel_rows"]])

    def with_joint(self, yz):
        spec = copy.deepcopy(self.spec)
        spec["tie_rod"][self.joint][1:] = [float(c) for c in yz]
        return spec

    def __call__(self, yz):
        """Toe change (n,) and its derivative by y and z (n, 2), in degrees and degrees per mm."""
        key = tuple(float(c) for c in yz)
        if self._last[0] != key:  # optimisers ask for values and slopes of one place in turn
            self._last = (key, self._solve(key))
        return self._last[1]

    def _solve(self, yz):
        corner = Corner(self.with_joint(yz))
        centre, turn, matrix = self._poses(corner)
        axis = turn.apply(corner.spin_axis)
        toe = np.arctan2(axis[:, 0], axis[:, 1])
        arm = turn.apply(corner.outer - corner.centre)
        rod = centre + arm - corner.inner
        along = rod / np.linalg.norm(rod, axis=1)[:, None]
        first = unit(corner.outer - corner.inner)
        # Rate of (rod length at the pose - rod length at design) by the free joint.
        stretch = first - along if self.joint == "inner" else turn.inv().apply(along) - first
        # Turn of the upright when only the tie rod's length error changes.
        turning = np.linalg.solve(matrix, np.broadcast_to(np.eye(6)[4][:, None], (len(toe), 6, 1)))
        spin = np.cross(turning[:, 3:, 0], axis)
        rate = (axis[:, 1] * spin[:, 0] - axis[:, 0] * spin[:, 1]) / (axis[:, 0]**2 + axis[:, 1]**2)
        change = toe - math.atan2(corner.spin_axis[0], corner.spin_axis[1])
        return np.degrees(change), np.degrees(-rate[:, None] * stretch[:, 1:])

    def _poses(self, corner):
        """Wheel centres, rotations and Jacobians at all heights, by Newton from design."""
        n = len(self.travels)
        centre, turn = np.tile(corner.centre, (n, 1)), Rotation.identity(n)
        anchors, steps = corner.anchors(0.0), math.ceil(np.abs(self.travels).max() / STEP_MM)
        for k in [*range(1, steps + 1), steps, steps]:  # the last two only to settle
            target = corner.centre[2] + self.travels * k / steps
            for _ in range(3):
                error, matrix = equations(corner, anchors, centre, turn, target)
                move = np.linalg.solve(matrix, -error[:, :, None])[:, :, 0]
                centre, turn = centre + move[:, :3], Rotation.from_rotvec(move[:, 3:]) * turn
        error, matrix = equations(corner, anchors, centre, turn, target)
        if not np.abs(error).max() < 1e-10:
            raise ValueError("no pose for this joint")
        return centre, turn, matrix


def equations(corner, anchors, centre, turn, target):
    """Residuals (n, 6) and Jacobians (n, 6, 6) of the constraint equations."""
    points = corner.joints - corner.centre
    arms = np.stack([turn.apply(p) for p in points], axis=1)
    rods = centre[:, None, :] + arms - anchors
    size = np.linalg.norm(rods, axis=2)
    along = rods / size[:, :, None]
    matrix = np.zeros((len(centre), 6, 6))
    matrix[:, :5, :3], matrix[:, :5, 3:] = along, np.cross(arms, along)
    matrix[:, 5, 2] = 1.0
    error = np.hstack([size - corner.lengths, (centre[:, 2] - target)[:, None]])
    return error, matrix
