#!/usr/bin/env python3
"""Writes each layout of a DXF file as a drawing of its own: what it shows, also through its viewports, as plain entities on the paper.

usage: split_layouts.py SHEETS.DXF FOLDER

A reader that draws no viewports draws such a drawing as the sheet is seen. Blocks and dimensions are taken apart, as their attributes are shown;
lines and curves are cut at the edge of a viewport, anything else is kept where its middle is inside. Prints the name of each file.
"""
import math
import sys
from pathlib import Path

import ezdxf
import ezdxf.units
from ezdxf import bbox, path
from ezdxf.disassemble import recursive_decompose
from ezdxf.entities import Line, Text
from ezdxf.math import BoundingBox2d, Matrix44, Vec2
from ezdxf.math.clipping import ClippingRect2d

CURVED = ("ARC", "CIRCLE", "ELLIPSE", "SPLINE", "LWPOLYLINE", "POLYLINE")


def to_paper(viewport):
    """Transformation from model space to the paper."""
    v = viewport.dxf
    return (Matrix44.z_rotate(math.radians(v.view_twist_angle)) @ Matrix44.translate(-v.view_center_point[0], -v.view_center_point[1], 0)
            @ Matrix44.scale(v.height / v.view_height) @ Matrix44.translate(v.center.x, v.center.y, 0))


def seen(entities, viewport):
    """Copies on the paper of what a viewport shows of entities that were taken apart, each with its box."""
    v, matrix = viewport.dxf, to_paper(viewport)
    low, high = Vec2(v.center.x - v.width / 2, v.center.y - v.height / 2), Vec2(v.center.x + v.width / 2, v.center.y + v.height / 2)
    window, clip = BoundingBox2d([low, high]), ClippingRect2d(low, high)
    for entity, corners in entities:
        box = BoundingBox2d(matrix.transform_vertices(corners))
        if not window.has_overlap(box):
            continue
        copy = entity.copy()
        copy.transform(matrix)
        if window.inside(box.extmin) and window.inside(box.extmax):
            yield copy
        elif copy.dxftype() == "LINE" or copy.dxftype() in CURVED:
            points = [copy.dxf.start, copy.dxf.end] if copy.dxftype() == "LINE" else list(path.make_path(copy).flattening(0.002))
            for a, b in zip(points, points[1:]):
                ends = clip.clip_line(Vec2(a), Vec2(b))
                if len(ends) == 2:
                    yield Line.new(dxfattribs={"layer": copy.dxf.layer, "start": ends[0], "end": ends[1]})
        elif window.inside(box.center):
            yield copy


def parts(entities):
    """Entities taken apart down to lines, curves, fills and texts; polylines into their pieces, so that each can be cut."""
    for entity in recursive_decompose(e for e in entities if e.dxftype() not in ("VIEWPORT", "WIPEOUT")):
        if getattr(entity.dxf, "invisible", 0) or (entity.dxftype() in ("ATTRIB", "ATTDEF") and entity.is_invisible) or entity.dxftype() == "ATTDEF":
            continue
        if entity.dxftype() == "ATTRIB":
            attributes = entity.graphic_properties() | {
                k: entity.dxf.get(k) for k in ("text", "height", "rotation", "width", "insert", "align_point", "halign", "valign", "style") if entity.dxf.hasattr(k)}
            entity = Text.new(dxfattribs=attributes, doc=entity.doc)
        yield entity


def main():
    source, folder = sys.argv[1], Path(sys.argv[2])
    names = [n for n in ezdxf.readfile(source).layout_names_in_taborder() if n != "Model"]
    for name in names:
        doc = ezdxf.readfile(source)
        model, layout, cache = doc.modelspace(), doc.layouts.get(name), bbox.Cache()
        shown = []
        for entity in parts(model):
            box = bbox.extents([entity], fast=True, cache=cache)
            if box.has_data:
                shown.append((entity, box.rect_vertices()))
        flat = [e for v in layout.query("VIEWPORT") if v.dxf.id > 1 for e in seen(shown, v)] + [e.copy() for e in parts(layout)]
        for other in names:
            if other != name:
                doc.layouts.delete(other)
        for entity in list(model):
            model.delete_entity(entity)
        for entity in list(layout):
            layout.delete_entity(entity)
        for entity in flat:
            model.add_foreign_entity(entity, copy=False) if entity.doc not in (None, doc) else model.add_entity(entity)
        # Dashes are drawn through: a reader that scales them otherwise would break them into dust.
        for thing in [*model, *doc.layers]:
            thing.dxf.linetype = "CONTINUOUS"
        # A pattern that is scaled with its sheet comes out too fine to draw; solid fills stay.
        for hatch in [h for h in model.query("HATCH") if not h.dxf.solid_fill]:
            model.delete_entity(hatch)
        doc.units = ezdxf.units.MM
        doc.saveas(folder / f"{name}.dxf")
        print(f"{name}.dxf")


if __name__ == "__main__":
    main()
