#!/usr/bin/env python3
"""Writes with ezdxf a small DXF file as another program would.

usage: make_foreign_dxf.py R12|R2000|R2018 FILE
"""
import sys

import ezdxf


def main():
    release, file = sys.argv[1:]
    doc = ezdxf.new(release, setup=True)
    doc.layers.add("WALL", color=3)
    block = doc.blocks.new("MARK")
    block.add_circle((0, 0), 0.5)
    block.add_attdef("ID", (1, 0), dxfattribs={"height": 0.4})
    model = doc.modelspace()
    wall = {"layer": "WALL"}
    model.add_line((1, 2), (3, 4), dxfattribs=wall)
    model.add_line((1, 2, 5), (3, 4, 5), dxfattribs=wall)
    model.add_circle((5, 6), 2, dxfattribs={"layer": "WALL", "extrusion": (0, 0, -1)})
    points = [(0, 0, 0.5), (4, 0, 0), (4, 3, 0)]
    if release == "R12":
        model.add_polyline2d(points, format="xyb", close=True, dxfattribs=wall)
    else:
        model.add_lwpolyline(points, format="xyb", close=True, dxfattribs=wall)
    model.add_text("%%p 5%%d \u00e9", dxfattribs={"layer": "WALL", "height": 1})
    model.add_linear_dim(base=(0, 5), p1=(0, 0), p2=(4, 0)).render()
    insert = model.add_blockref("MARK", (7, 8), dxfattribs=wall)
    insert.add_attrib("ID", "N-7", (8, 8), dxfattribs={"height": 0.4})
    if release != "R12":
        hatch = model.add_hatch(color=2, dxfattribs=wall)
        hatch.paths.add_polyline_path([(0, 0), (1, 0), (1, 1)], is_closed=True)
        model.add_mtext("{\\fArial;bold}\\Psecond", dxfattribs={"layer": "WALL", "char_height": 1})
        model.add_spline([(0, 0), (1, 1), (2, 0)])
    doc.saveas(file)


if __name__ == "__main__":
    main()
