"""Independent reference for the forces of a corner.

Every body is cut free: the upright and both arms, with six equations each. The unknowns are all
reactions at once: the tie rod, the spring, three components at each ball joint and at each of the
four pivots. That is 20 unknowns; the last two equations say that an arm's pivots share the force
along their axis by halves. One dense 20 x 20 solve, where the product takes the equations in turn.
Poses come from `corner_reference.py`, the spring's mount on its arm by turning it about the pivots.

    python3 statics_reference.py           write statics.json
    python3 statics_reference.py --check   recompute and compare, write nothing

Lengths in mm, forces in N, moments in N mm; axes as in README.md.
"""

import json
import math
import os
import sys

import numpy as np
from scipy.spatial.transform import Rotation

import corner_reference as kinematics

HERE = os.path.dirname(os.path.abspath(__file__))
TABLE = os.path.join(HERE, "statics.json")
GEOMETRIES = ["01_rod_behind", "02_rod_ahead", "03_long_travel_upper_spring", "04_skewed_axes",
              "05_tilted_rack", "06_rear_fixed_link", "08_static_toe_and_camber"]
# Force at the contact, moment about the vertical, force at the wheel centre.
LOADS = [([0, 0, 900], 0, [0, 0, 0]), ([-700, -650, 1500], 25000, [0, 0, 0]),
         ([0, 0, 400], -12000, [-3300, 500, 900])]
PARTS = (-0.8, 0.0, 0.75)  # of the travel and rack travel each way
VECTORS = ["upper_ball_joint_on_upright", "lower_ball_joint_on_upright", "upper_front_pivot_on_arm",
           "upper_rear_pivot_on_arm", "lower_front_pivot_on_arm", "lower_rear_pivot_on_arm"]
SCALARS = ["travel", "rack", "load", "tie_rod_tension", "spring_force", "rack_force"]
COLUMNS = SCALARS + [f"{name}_{letter}" for name in VECTORS for letter in "xyz"]
# Where the unknowns stand.
ROD, SPRING = 0, 1
UPPER_BALL, LOWER_BALL, UPPER_FRONT, UPPER_REAR, LOWER_FRONT, LOWER_REAR = range(2, 20, 3)


def cross_matrix(r):
    return np.array([[0, -r[2], r[1]], [r[2], 0, -r[0]], [-r[1], r[0], 0]])


class Balance:
    """Rows of force and moment equations of one body after another."""

    def __init__(self):
        self.matrix, self.right = np.zeros((20, 20)), np.zeros(20)

    def vector(self, row, column, point, sign):
        """Three unknown components at `point` act on the body of `row`."""
        self.matrix[row:row + 3, column:column + 3] += sign * np.eye(3)
        self.matrix[row + 3:row + 6, column:column + 3] += sign * cross_matrix(point)

    def scalar(self, row, column, point, direction):
        self.matrix[row:row + 3, column] += direction
        self.matrix[row + 3:row + 6, column] += np.cross(point, direction)

    def known(self, row, point, force, moment=np.zeros(3)):
        self.right[row:row + 3] -= force
        self.right[row + 3:row + 6] -= np.cross(point, force) + moment

    def equal_shares(self, row, front, rear, axis):
        self.matrix[row, front:front + 3] = axis
        self.matrix[row, rear:rear + 3] = -axis


def spring_mount(corner, pose):
    """The spring's mount on its arm, turned with the arm about its pivots."""
    spring = corner.spring
    pivots, joint = {"upper": (corner.upper, corner.upper_joint),
                     "lower": (corner.lower, corner.lower_joint)}[spring["arm"]]
    axis = kinematics.unit(pivots[1] - pivots[0])
    across = lambda p: (p - pivots[0]) - ((p - pivots[0]) @ axis) * axis
    before, after = across(joint), across(pose.place(joint))
    angle = math.atan2(np.cross(before, after) @ axis, before @ after)
    return pivots[0] + Rotation.from_rotvec(angle * axis).apply(
        np.array(spring["arm_mount"], float) - pivots[0])


def forces(corner, pose, load):
    """All reactions at a pose under a load, as the 20 unknowns."""
    at_contact, moment, at_centre = (np.array(part, float) for part in load)
    upper, lower, outer = (pose.place(p) for p in
                           (corner.upper_joint, corner.lower_joint, corner.outer))
    inner = corner.inner + pose.rack * corner.rack_axis
    contact = kinematics.lowest_point(corner, pose.centre, pose.turn.apply(corner.spin_axis))
    mount = spring_mount(corner, pose)
    upright, upper_arm, lower_arm = 0, 6, 12
    balance = Balance()
    balance.scalar(upright, ROD, outer, kinematics.unit(inner - outer))
    balance.known(upright, contact, at_contact, np.array([0.0, 0.0, float(moment)]))
    balance.known(upright, pose.centre, at_centre)
    for arm, ball, joint, pivots, columns in (
            (upper_arm, UPPER_BALL, upper, corner.upper, (UPPER_FRONT, UPPER_REAR)),
            (lower_arm, LOWER_BALL, lower, corner.lower, (LOWER_FRONT, LOWER_REAR))):
        balance.vector(upright, ball, joint, 1.0)
        balance.vector(arm, ball, joint, -1.0)
        for pivot, column in zip(pivots, columns):
            balance.vector(arm, column, pivot, 1.0)
        balance.equal_shares(18 if arm == upper_arm else 19, *columns, pivots[1] - pivots[0])
    sprung = {"upper": upper_arm, "lower": lower_arm}[corner.spring["arm"]]
    chassis = np.array(corner.spring["chassis_mount"], float)
    balance.scalar(sprung, SPRING, mount, kinematics.unit(mount - chassis))
    found = np.linalg.solve(balance.matrix, balance.right)
    # One step of refinement takes most of the solve's rounding out.
    found += np.linalg.solve(balance.matrix, balance.right - balance.matrix @ found)
    return found, kinematics.unit(outer - inner)


def rows(corner):
    """Every pose of the small grid under every load."""
    scale = lambda part, up, down: part * (up if part > 0 else down)
    racks = PARTS if corner.rack_travel is not None else (0.0,)
    for travel in (scale(part, corner.bump, corner.droop) for part in PARTS):
        for rack in (part * (corner.rack_travel or 0.0) for part in racks):
            pose = kinematics.solve(corner, travel, rack)
            for number, load in enumerate(LOADS):
                found, along = forces(corner, pose, load)
                on_rack = None
                if corner.rack_travel is not None:
                    on_rack = found[ROD] * (along @ corner.rack_axis)
                yield [travel, rack, number, found[ROD], found[SPRING], on_rack, *found[2:]]


def compute():
    geometries = []
    for name in GEOMETRIES:
        file_name = f"corner_{name}.json"
        with open(os.path.join(HERE, file_name), encoding="utf-8") as file:
            corner = kinematics.Corner(json.load(file)["corner"])
        table = [[value if isinstance(value, int) else kinematics.rounded(value) for value in row]
                 for row in rows(corner)]
        geometries.append({"file": file_name, "rows": table})
    return geometries


def written(geometries):
    """The file's text: one row per line."""
    blocks = []
    for block in geometries:
        lines = ",\n".join("  " + json.dumps(row, separators=(",", ":")) for row in block["rows"])
        blocks.append(f'{{"file": {json.dumps(block["file"])}, "rows": [\n{lines}\n]}}')
    loads = json.dumps([{"at_contact": c, "moment_z": m, "at_wheel_centre": w}
                        for c, m, w in LOADS])
    head = (f'"units": "mm, N, N mm; x forward, y left, z up; left corner",\n"loads": {loads},\n'
            f'"columns": {json.dumps(COLUMNS)},\n')
    return "{\n" + head + '"geometries": [\n' + ",\n".join(blocks) + "\n]\n}\n"


def worst_difference(old, new):
    pairs = [(a, b, max(map(abs, filter(None, row[3:]))))
             for before, after in zip(old, new) for row, other in zip(before["rows"], after["rows"])
             for a, b in zip(row, other) if a is not None]
    return max(abs(a - b) / scale for a, b, scale in pairs)


def main():
    geometries = compute()
    if "--check" not in sys.argv[1:]:
        with open(TABLE, "w", encoding="utf-8") as file:
            file.write(written(geometries))
        print(f"{sum(len(block['rows']) for block in geometries)} rows")
        return
    with open(TABLE, encoding="utf-8") as file:
        worst = worst_difference(json.load(file)["geometries"], geometries)
    print(f"largest difference, of the row's largest force: {worst:.2e}")
    sys.exit(0 if worst < 1e-10 else 1)


if __name__ == "__main__":
    main()
