"""Reads a DXF file with ezdxf and says as JSON what an outsider finds in it.

    python3 dxf_check.py FILE.dxf
    python3 dxf_check.py FOLDER

A folder gives one object with what is found in each of its DXF files, by name.

pip install ezdxf (1.4.5 was used). ezdxf knows nothing of the program that wrote the file.
"""

import json
import math
import pathlib
import sys

import ezdxf
from ezdxf import bbox


def polyline_length(entity):
    """Length along a polyline, its arcs as arcs."""
    total = 0.0
    for part in entity.virtual_entities():
        if part.dxftype() == "LINE":
            total += part.dxf.start.distance(part.dxf.end)
        else:
            sweep = (part.dxf.end_angle - part.dxf.start_angle) % 360.0
            total += part.dxf.radius * math.radians(sweep)
    return total


def found_in(path):
    document = ezdxf.readfile(path)
    audit = document.audit()
    space = document.modelspace()
    polylines = [e for e in space if e.dxftype() == "POLYLINE"]
    box = bbox.extents(space.query('*[layer=="CUT"]'), fast=False)
    return {
        "release": document.dxfversion,
        "units": document.header.get("$INSUNITS", 0),
        "errors": [e.message for e in audit.errors],
        "repairs": [e.message for e in audit.fixes],
        "layers": sorted({e.dxf.layer for e in space}),
        "kinds": sorted({e.dxftype() for e in space}),
        "open_contours": sum(not e.is_closed for e in polylines if e.dxf.layer == "CUT"),
        "contour_lengths": [polyline_length(e) for e in polylines],
        "arcs_in_contours": sum(
            part.dxftype() == "ARC" for e in polylines for part in e.virtual_entities()
        ),
        "circles": [
            [e.dxf.center.x, e.dxf.center.y, e.dxf.radius] for e in space.query("CIRCLE")
        ],
        "size": [box.size.x, box.size.y],
    }


def main(path):
    path = pathlib.Path(path)
    if path.is_dir():
        found = {file.name: found_in(file) for file in sorted(path.glob("*.dxf"))}
    else:
        found = found_in(path)
    print(json.dumps(found))


main(sys.argv[1])
