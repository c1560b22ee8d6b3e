"""Compare the published textbook corner with the figures stored beside its hardpoints.

    python3 published_check.py [corner_10_published_textbook.json]

The hardpoints are published; the figures were computed from them by three other methods (see
README.md) and are repeated here by the constraint solve of corner_reference.py. Exits 1 when a
figure differs by more than its last digit's rounding (half a unit, and a tenth of slack).
"""

import json
import math
import sys

import numpy as np

from corner_reference import Corner, lowest_point, measures, solve, unit


def lower_arm_angle(corner, pose):
    """Turn of the lower arm from design about its pivot axis, degrees, bump positive."""
    axis = unit(corner.lower[0] - corner.lower[1])
    across = lambda p: (p - corner.lower[0]) - ((p - corner.lower[0]) @ axis) * axis
    before, after = across(corner.lower_joint), across(pose.place(corner.lower_joint))
    return math.degrees(math.atan2(np.cross(before, after) @ axis, before @ after))


def front_view_camber(corner, pose):
    """Camber as that listing measures it: lean of the spin axis seen from the front."""
    axis = pose.turn.apply(corner.spin_axis)
    return -math.degrees(math.atan2(axis[2], axis[1]))


def travel_row(corner, travel):
    pose = solve(corner, travel, 0.0)
    patch = pose.place(lowest_point(corner, corner.centre, corner.spin_axis))
    return [travel, lower_arm_angle(corner, pose), measures(pose, travel)["toe_deg"],
            front_view_camber(corner, pose), *pose.centre[:2], *patch[:2]]


def rack_row(corner, rack):
    pose = solve(corner, 0.0, rack, corner.lower_joint)  # lower arm held at design
    travel = pose.centre[2] - corner.centre[2]
    return [rack, travel, measures(pose, travel)["steer_deg"], front_view_camber(corner, pose)]


def rest_row(corner):
    row = measures(solve(corner, 0.0, 0.0), 0.0)
    return [row["steering_axis_inclination_deg"], row["castor_deg"], row["mechanical_trail"],
            row["scrub_radius"], 1000 * row["toe_rate_deg_per_mm"],
            1000 * row["camber_rate_deg_per_mm"], row["roll_centre_height"]]


def main():
    path = sys.argv[1] if len(sys.argv) > 1 else "corner_10_published_textbook.json"
    with open(path, encoding="utf-8") as file:
        document = json.load(file)
    corner, published, failed = Corner(document["corner"]), document["published"], False
    for name, row in (("travel", travel_row), ("rack", rack_row), ("rest", lambda c, _: rest_row(c))):
        columns, rows = published[f"{name}_columns"], published[name]
        found = np.array([row(corner, stored[0]) for stored in rows])
        difference = np.abs(found - np.array(rows)).max(axis=0)
        for column, value, digit in zip(columns, difference, published[f"{name}_last_digit"]):
            failed |= bool(value > 0.55 * digit)
            print(f"{name:6} {column:32} largest difference {value:.1e} last digit {digit:g}")
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    main()
