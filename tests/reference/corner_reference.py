"""Independent reference for the kinematics of a double-wishbone corner with a rack.

A general constraint solve, sharing no formula with the product's closed form: the upright is one
rigid body with six unknowns (displacement of the wheel centre, rotation vector) and six equations
(each A-arm as two rods of fixed length, the tie rod, the wanted height). SciPy's fsolve follows the
pose from design in small steps; a few Newton steps take the rounding of fsolve's differences out.
Velocities come from the same constraint equations' Jacobian.

    python3 corner_reference.py corner_*.json           write the results into the files
    python3 corner_reference.py --check corner_*.json   recompute and compare, write nothing

Lengths in mm, angles in degrees, axes ISO 8855 (x forward, y left, z up), left corner. README.md
defines every column.
"""

import argparse
import json
import math
import sys

import numpy as np
from scipy.optimize import fsolve
from scipy.spatial.transform import Rotation

STEP_MM = 3.0  # largest step of travel or rack in the continuation from design
FLAT = 1e-9  # 1/mm: below this the front-view instant centre counts as infinitely far
DEG = math.degrees

COLUMNS = [
    "travel", "rack", "toe_deg", "camber_deg", "castor_deg", "steering_axis_inclination_deg",
    "scrub_radius", "mechanical_trail", "half_track_change", "roll_centre_height",
    "swing_arm_inverse", "swing_arm_length", "instant_centre_y", "instant_centre_z",
    "toe_rate_deg_per_mm", "camber_rate_deg_per_mm", "spring_length", "motion_ratio",
    "tie_rod_angle_deg", "steer_deg",
] + [
    f"{point}_{axis}"
    for point in ("upper_ball_joint", "lower_ball_joint", "tie_rod_outer", "tie_rod_inner",
                  "wheel_centre", "contact", "spin_axis")
    for axis in "xyz"
]


def unit(v):
    return v / np.linalg.norm(v)


class Corner:
    """A corner's design position: hardpoints, rod lengths, spin axis."""

    def __init__(self, spec):
        point = lambda part, key: np.array(spec[part][key], float)
        self.upper = (point("upper_arm", "front_pivot"), point("upper_arm", "rear_pivot"))
        self.lower = (point("lower_arm", "front_pivot"), point("lower_arm", "rear_pivot"))
        self.upper_joint = point("upper_arm", "ball_joint")
        self.lower_joint = point("lower_arm", "ball_joint")
        self.outer, self.inner = point("tie_rod", "outer"), point("tie_rod", "inner")
        self.centre = point("wheel", "centre")
        self.radius = float(spec["wheel"]["loaded_radius"])
        toe, camber = (math.radians(spec["wheel"][k]) for k in ("toe_deg", "camber_deg"))
        self.spin_axis = np.array([math.cos(camber) * math.sin(toe),
                                   math.cos(camber) * math.cos(toe), -math.sin(camber)])
        rack = spec.get("rack")
        self.rack_axis = unit(np.array(rack["axis"] if rack else [0.0, 1.0, 0.0], float))
        self.rack_travel = float(rack["travel"]) if rack else None
        self.bump, self.droop = (float(spec["travel"][k]) for k in ("bump", "droop"))
        self.spring = spec["spring"]
        self.joints = np.array([self.upper_joint, self.upper_joint, self.lower_joint,
                                self.lower_joint, self.outer])
        self.lengths = np.linalg.norm(self.joints - self.anchors(0.0), axis=1)

    def anchors(self, rack):
        """Chassis ends of the five rods, in the order of `joints`."""
        return np.array([*self.upper, *self.lower, self.inner + rack * self.rack_axis])


class Pose:
    """Where the upright is: wheel centre, rotation from design, rack travel."""

    def __init__(self, corner, centre, turn, rack):
        self.corner, self.centre, self.turn, self.rack = corner, centre, turn, rack

    def place(self, point):
        """A point of the upright, given at design."""
        return self.centre + self.turn.apply(point - self.corner.centre)

    def moved(self, displacement, rotation_vector):
        turn = Rotation.from_rotvec(rotation_vector) * self.turn
        return Pose(self.corner, self.centre + displacement, turn, self.rack)

    def residual(self, held, height):
        """Five rod length errors and the height error of the held point, in mm."""
        rods = self.place(self.corner.joints) - self.corner.anchors(self.rack)
        errors = np.linalg.norm(rods, axis=1) - self.corner.lengths
        return np.append(errors, self.place(held)[2] - height)

    def jacobian(self, held):
        """Rates of `residual` by velocity of the wheel centre and angular velocity."""
        arms = self.place(self.corner.joints) - self.centre
        rods = self.centre + arms - self.corner.anchors(self.rack)
        along = rods / np.linalg.norm(rods, axis=1)[:, None]
        rows = np.hstack([along, np.cross(arms, along)])
        up = np.array([0.0, 0.0, 1.0])
        return np.vstack([rows, np.append(up, np.cross(self.place(held) - self.centre, up))])


def step_to(pose, held, height, rack):
    """The pose near `pose` with the held point at `height` and the rack at `rack`."""
    start = Pose(pose.corner, pose.centre, pose.turn, rack)
    # Unknowns are shifted to about 1: fsolve scales its difference steps by their size, and an
    # unknown that is nothing but rounding noise would give it a useless step.
    change = lambda x: ((x[:3] - 1.0) * 50.0, (x[3:] - 1.0) * 0.5)
    found, _, status, message = fsolve(
        lambda x: start.moved(*change(x)).residual(held, height), np.ones(6),
        xtol=1e-13, full_output=True)
    near = start.moved(*change(found))
    for _ in range(6):
        error = near.residual(held, height)
        move = np.linalg.solve(near.jacobian(held), -error)
        near = near.moved(move[:3], move[3:])
    worst = np.abs(near.residual(held, height)).max()
    if not worst < 1e-11:
        raise ValueError(f"no pose: residual {worst:.3g} mm, fsolve status {status}: {message}")
    return near


def solve(corner, travel, rack, held=None):
    """The pose with the held point (default: wheel centre) `travel` above design, rack at `rack`."""
    held = corner.centre if held is None else held
    pose = Pose(corner, corner.centre, Rotation.identity(), 0.0)
    steps = max(1, math.ceil(max(abs(travel), abs(rack)) / STEP_MM))
    for k in range(1, steps + 1):
        pose = step_to(pose, held, held[2] + travel * k / steps, rack * k / steps)
    return pose


def lowest_point(corner, centre, axis):
    """Lowest point of the loaded-radius circle in the wheel plane."""
    return centre + corner.radius * unit(axis * axis[2] - np.array([0.0, 0.0, 1.0]))


def front_view(pose, axis, contact):
    """Measures that come from velocities at held rack; wheel travel rate 1."""
    rates = np.linalg.solve(pose.jacobian(pose.corner.centre), np.eye(6)[5])
    v, w = rates[:3], rates[3:]
    patch = v + np.cross(w, contact - pose.centre)  # the upright's own point at the contact
    turning = np.cross(w, axis)
    level = axis[0] ** 2 + axis[1] ** 2
    inverse = w[0] / patch[2]
    out = {
        "roll_centre_height": contact[1] * patch[1] / patch[2],
        "swing_arm_inverse": inverse,
        "swing_arm_length": None, "instant_centre_y": None, "instant_centre_z": None,
        "toe_rate_deg_per_mm": DEG((axis[1] * turning[0] - axis[0] * turning[1]) / level),
        "camber_rate_deg_per_mm": DEG(-turning[2] / math.sqrt(level)),
    }
    if abs(inverse) >= FLAT:
        back = contact[0] - pose.centre[0]
        out["swing_arm_length"] = 1.0 / inverse
        out["instant_centre_y"] = pose.centre[1] + (w[1] * back - v[2]) / w[0]
        out["instant_centre_z"] = pose.centre[2] + (w[2] * back + v[1]) / w[0]
    return out, v, w


def spring_measures(pose, v, w):
    """Length, and shortening per wheel travel; the mount turns with its arm about the pivots."""
    corner, spring = pose.corner, pose.corner.spring
    pivots, joint = {"upper": (corner.upper, corner.upper_joint),
                     "lower": (corner.lower, corner.lower_joint)}[spring["arm"]]
    axis = unit(pivots[1] - pivots[0])
    across = lambda p: (p - pivots[0]) - ((p - pivots[0]) @ axis) * axis
    before, after = across(joint), across(pose.place(joint))
    angle = math.atan2(np.cross(before, after) @ axis, before @ after)
    turn = Rotation.from_rotvec(angle * axis)
    mount = pivots[0] + turn.apply(np.array(spring["arm_mount"]) - pivots[0])
    joint_speed = v + np.cross(w, pose.place(joint) - pose.centre)
    arm_speed = np.cross(axis, after) @ joint_speed / (after @ after)
    along = mount - np.array(spring["chassis_mount"])
    rate = arm_speed * np.cross(axis, mount - pivots[0]) @ unit(along)
    return {"spring_length": np.linalg.norm(along), "motion_ratio": -rate}


def measures(pose, travel):
    """Every column of a row, as a dictionary."""
    corner = pose.corner
    axis = pose.turn.apply(corner.spin_axis)
    contact = lowest_point(corner, pose.centre, axis)
    upper, lower, outer = (pose.place(p) for p in
                           (corner.upper_joint, corner.lower_joint, corner.outer))
    inner = corner.inner + pose.rack * corner.rack_axis
    lean = upper - lower
    offset = lower + lean * (contact[2] - lower[2]) / lean[2] - contact
    toe = math.atan2(axis[0], axis[1])
    design_contact = lowest_point(corner, corner.centre, corner.spin_axis)
    row = {
        "travel": travel, "rack": pose.rack, "toe_deg": DEG(toe), "steer_deg": -DEG(toe),
        "camber_deg": -DEG(math.asin(axis[2])),
        "castor_deg": DEG(math.atan2(-lean[0], lean[2])),
        "steering_axis_inclination_deg": DEG(math.atan2(-lean[1], lean[2])),
        "scrub_radius": -(offset[0] * math.sin(toe) + offset[1] * math.cos(toe)),
        "mechanical_trail": offset[0] * math.cos(toe) - offset[1] * math.sin(toe),
        "half_track_change": contact[1] - design_contact[1],
        "tie_rod_angle_deg": DEG(math.atan2(np.linalg.norm(np.cross(outer - inner, corner.rack_axis)),
                                            (outer - inner) @ corner.rack_axis)),
    }
    rates, v, w = front_view(pose, axis, contact)
    row |= rates | spring_measures(pose, v, w)
    for name, p in (("upper_ball_joint", upper), ("lower_ball_joint", lower),
                    ("tie_rod_outer", outer), ("tie_rod_inner", inner),
                    ("wheel_centre", pose.centre), ("contact", contact), ("spin_axis", axis)):
        row |= {f"{name}_{letter}": value for letter, value in zip("xyz", p)}
    return row


def sweep_points(corner):
    """The (travel, rack) pairs of the three tables."""
    part = lambda k, n: corner.bump * k / n if k > 0 else corner.droop * k / n
    tables = {"travel_rows": [(part(k, 10), 0.0) for k in range(-10, 11)]}
    if corner.rack_travel is not None:
        lock = corner.rack_travel
        tables["rack_rows"] = [(0.0, lock * k / 5) for k in range(-5, 6)]
        tables["combined_rows"] = [(part(i, 2), lock * j / 2)
                                   for i in range(-2, 3) for j in range(-2, 3)]
    return tables


def compute(spec):
    """All tables of a geometry, full double precision."""
    corner = Corner(spec)
    return {name: [measures(solve(corner, *at), at[0]) for at in points]
            for name, points in sweep_points(corner).items()}


def rounded(value):
    """15 significant digits; what is below 1e-13 is rounding noise and written as 0."""
    if value is None:
        return None
    value = float(f"{value:.15g}")
    return 0.0 if abs(value) < 1e-13 else value


def write(path, document):
    """Write a reference file: a compact header, then one row per line."""
    lines = []
    for key, value in document.items():
        if key.endswith("_rows"):
            rows = ",\n".join("  " + json.dumps(r, separators=(",", ":")) for r in value)
            lines.append(f'"{key}": [\n{rows}\n]')
        elif isinstance(value, dict) and any(isinstance(v, (dict, list)) for v in value.values()):
            inner = ",\n".join(f"  {json.dumps(k)}: {json.dumps(v)}" for k, v in value.items())
            lines.append(f"{json.dumps(key)}: {{\n{inner}\n}}")
        else:
            lines.append(f"{json.dumps(key)}: {json.dumps(value)}")
    with open(path, "w", encoding="utf-8") as file:
        file.write("{\n" + ",\n".join(lines) + "\n}\n")


def largest_difference(document, tables):
    """Largest |stored - new| / max(1, |stored|) over all numbers, and the column it is in."""
    worst = (0.0, "none")
    for name, rows in tables.items():
        if len(rows) != len(document.get(name, [])):
            return math.inf, f"{name}: number of rows"
        for stored, row in zip(document[name], rows):
            for column, old in zip(document["columns"], stored):
                new = row[column]
                if (old is None) != (new is None):
                    return math.inf, column
                if old is not None:
                    worst = max(worst, (abs(old - new) / max(1.0, abs(old)), column))
    return worst


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n\n")[0])
    parser.add_argument("--check", action="store_true", help="compare only, write nothing")
    parser.add_argument("files", nargs="+")
    options, failed = parser.parse_args(), False
    for path in options.files:
        with open(path, encoding="utf-8") as file:
            document = json.load(file)
        tables = compute(document["corner"])
        if options.check:
            worst, column = largest_difference(document, tables)
            failed |= not worst < 1e-10
            print(f"{path}: largest difference {worst:.2e} in {column}")
            continue
        document["columns"] = COLUMNS
        for name, rows in tables.items():
            document[name] = [[rounded(row[c]) for c in COLUMNS] for row in rows]
        write(path, document)
        print(f"{path}: {sum(map(len, tables.values()))} rows")
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    main()
