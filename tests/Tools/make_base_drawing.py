"""Draws obstructions as a base drawing: make_base_drawing.py SHAPES.json OUT.dxf VERSION STYLE UNIT_FACTOR [binary] [crlf]

SHAPES.json: a list of {"layer", "type": "circle" | "ring" | "line", "points": [[x, y, z], ...], "radius", "name"}.
STYLE: plain, loops (lines and arcs that join), blocks (inserts with attributes), mirrored, nested.
"""
import json
import math
import sys

import ezdxf

shapes, out, version, style, factor = sys.argv[1], sys.argv[2], sys.argv[3], sys.argv[4], float(sys.argv[5])
flags = sys.argv[6:]
doc = ezdxf.new(version, setup=False)
if version != "R12":
    doc.header["$INSUNITS"] = {1.0: 2, 12.0: 1, 0.3048: 6, 304.8: 4}[factor]
msp = doc.modelspace()


def ring(space, points, layer):
    if version == "R12":
        space.add_polyline2d(points, dxfattribs={"layer": layer}).close(True)
    else:
        space.add_lwpolyline(points, dxfattribs={"layer": layer}).closed = True


def put(space, item, map_point, map_radius, layer):
    points = [map_point(p) for p in item["points"]]
    if item["type"] == "circle":
        x, y = points[0][:2]
        r = item["radius"] * map_radius
        if style == "loops":
            space.add_arc((x, y), r, 20, 200, dxfattribs={"layer": layer})
            space.add_arc((x, y), r, 200, 20, dxfattribs={"layer": layer})
        else:
            space.add_circle((x, y), r, dxfattribs={"layer": layer})
    elif item["type"] == "ring":
        flat = [p[:2] for p in points]
        if style == "loops":
            sides = list(zip(flat, flat[1:] + flat[:1]))
            for a, b in sides[::-1]:
                space.add_line(b, a, dxfattribs={"layer": layer})
        else:
            ring(space, flat, layer)
    else:
        space.add_polyline3d(points, dxfattribs={"layer": layer})


def text(item, map_point):
    points = [map_point(p) for p in item["points"]]
    x, y = (sum(p[i] for p in points) / len(points) for i in (0, 1))
    msp.add_text(item["name"], dxfattribs={"height": 0.2 * factor, "layer": "NAMES", "insert": (x, y)})


for number, item in enumerate(json.load(open(shapes))):
    def world(p):
        return (p[0] * factor, p[1] * factor, p[2] * factor)

    if style in ("plain", "loops"):
        put(msp, item, world, factor, item["layer"])
        if item["type"] != "line":
            text(item, world)
        continue
    block = doc.blocks.new(f"B{number}")
    at = world(item["points"][0])
    if style == "blocks":
        block.add_attdef("MARK", (0, 0), "")
        put(block, item, lambda p: tuple(a - b for a, b in zip(world(p), at)), factor, "0")
        insert = msp.add_blockref(f"B{number}", at, dxfattribs={"layer": item["layer"]})
        insert.add_attrib("MARK", item["name"], at)
    elif style == "mirrored":
        # Half as large, mirrored in x, put back by scales of -2 and 2.
        put(block, item, lambda p: tuple((a - b) / (-2 if i == 0 else 2) for i, (a, b) in enumerate(zip(world(p), at))), factor / 2, "0")
        insert = msp.add_blockref(f"B{number}", at, dxfattribs={"layer": item["layer"], "xscale": -2, "yscale": 2, "zscale": 2})
        insert.add_attrib("MARK", item["name"], at)
    else:
        turn = math.radians(33)

        def inner(p):
            x, y, z = (a - b for a, b in zip(world(p), at))
            return (x * math.cos(turn) + y * math.sin(turn), -x * math.sin(turn) + y * math.cos(turn), z)

        put(block, item, inner, factor, "0")
        outer = doc.blocks.new(f"C{number}", base_point=(7, 5, 0))
        outer.add_blockref(f"B{number}", (7 + 3, 5 + 4, 0), dxfattribs={"rotation": 33, "layer": "0"})
        insert = msp.add_blockref(f"C{number}", (at[0] - 3, at[1] - 4, at[2]), dxfattribs={"layer": item["layer"]})
        insert.add_attrib("MARK", item["name"], at)
msp.add_circle((0, 0), 5, dxfattribs={"layer": "OTHER"})
doc.saveas(out, fmt="bin" if "binary" in flags else "asc")
if "crlf" in flags:
    data = open(out, "rb").read().replace(b"\r\n", b"\n").replace(b"\n", b"\r\n")
    open(out, "wb").write(data)
