"""Reads an SVG file with the XML reader of Python's own library and says as JSON what is in it.

    python3 svg_check.py FILE.svg
    python3 svg_check.py FOLDER

A folder gives one object with what is found in each of its SVG files, by name.
"""

import json
import pathlib
import re
import sys
import xml.etree.ElementTree as tree

SVG = "{http://www.w3.org/2000/svg}"


def millimetres(text):
    found = re.fullmatch(r"([0-9.]+)mm", text)
    return float(found.group(1)) if found else None



def found_in(path):
    root = tree.parse(path).getroot()
    paths = [p.get("d") for p in root.iter(SVG + "path")]
    return {
        "root": root.tag == SVG + "svg",
        "size": [millimetres(root.get("width")), millimetres(root.get("height"))],
        "view_box": [float(n) for n in root.get("viewBox").split()],
        "groups": [g.get("id") for g in root.iter(SVG + "g")],
        "closed_paths": sum(d.endswith("Z") for d in paths),
        "open_paths": sum(not d.endswith("Z") for d in paths),
        "circles": [float(c.get("r")) for c in root.iter(SVG + "circle")],
        "texts": ["".join(t.itertext()) for t in root.iter(SVG + "text")],
    }


def main(path):
    path = pathlib.Path(path)
    if path.is_dir():
        found = {file.name: found_in(file) for file in sorted(path.glob("*.svg"))}
    else:
        found = found_in(path)
    print(json.dumps(found))


main(sys.argv[1])
