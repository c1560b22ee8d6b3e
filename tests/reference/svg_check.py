"""Reads an SVG file with the XML reader of Python's own library and says as JSON what is in it.

    python3 svg_check.py FILE.svg
"""

import json
import re
import sys
import xml.etree.ElementTree as tree

SVG = "{http://www.w3.org/2000/svg}"


def millimetres(text):
    found = re.fullmatch(r"([0-9.]+)mm", text)
    return float(found.group(1)) if found else None


root = tree.parse(sys.argv[1]).getroot()
paths = [p.get("d") for p in root.iter(SVG + "path")]
print(
    json.dumps(
        {
            "root": root.tag == SVG + "svg",
            "size": [millimetres(root.get("width")), millimetres(root.get("height"))],
            "view_box": [float(n) for n in root.get("viewBox").split()],
            "groups": [g.get("id") for g in root.iter(SVG + "g")],
            "closed_paths": sum(d.endswith("Z") for d in paths),
            "open_paths": sum(not d.endswith("Z") for d in paths),
            "circles": [float(c.get("r")) for c in root.iter(SVG + "circle")],
            "texts": ["".join(t.itertext()) for t in root.iter(SVG + "text")],
        }
    )
)
