"""Edits a drawing as a person would in a drawing program, and saves it in another release.

edit_dxf.py IN FOLDER MARK,MARK EDIT:RELEASE ...   writes FOLDER/EDIT-RELEASE.dxf for each; EDIT is one of the names below, RELEASE such as
R12, R2000, R2018, with bin at its end for the binary form.
"""
import math
import sys

import ezdxf
from ezdxf.math import Matrix44

NAIL_TAGS = ("MARK", "ROW", "STATION", "ELEVATION", "SPLAY", "SIDE", "INCLINATION", "LENGTH", "BAR", "STATUS")


def mark_of(insert):
    return insert.get_xdata("SHEETGEN")[0].value if insert.has_xdata("SHEETGEN") else None


def nails(doc):
    return {mark_of(i): i for i in doc.modelspace().query("INSERT") if mark_of(i)}


def attribute(insert, tag):
    return next(a for a in insert.attribs if a.dxf.tag == tag)


def move(insert, dx, dy):
    insert.translate(dx, dy, 0)


def copy(doc, insert, dx, dy):
    twin = insert.copy()
    doc.modelspace().add_entity(twin)
    twin.translate(dx, dy, 0)
    return twin


def transform(space, matrix):
    for entity in space:
        try:
            entity.transform(matrix)
        except (AttributeError, NotImplementedError, ezdxf.DXFError):
            pass  # a mask: the old package cannot scale it


def strip(insert, attributes=True):
    insert.discard_xdata("SHEETGEN")
    if attributes:
        insert.attribs.clear()


def edit(doc, name, marks):
    m = doc.modelspace()
    n = nails(doc)
    a, b = n[marks[0]], n[marks[1]]
    if name == "nothing":
        pass
    elif name == "move":
        move(a, 0.5, 0)
    elif name == "move-down":
        move(a, 0, -0.25)
    elif name == "move-two":
        move(a, 0.5, 0)
        move(b, -0.25, 0.1)
    elif name == "turn":
        attribute(a, "SPLAY").dxf.text = "-12"
    elif name == "incline":
        attribute(a, "INCLINATION").dxf.text = "18"
    elif name == "lengthen":
        attribute(a, "LENGTH").dxf.text = "26"
    elif name == "turn-and-move":
        attribute(a, "SPLAY").dxf.text = "5"
        move(a, 0.25, 0)
    elif name == "copy":
        copy(doc, a, 1.2, 0)
    elif name == "copy-and-delete":
        copy(doc, a, 0.5, 0)
        m.delete_entity(a)
    elif name == "delete":
        m.delete_entity(a)
    elif name == "delete-two":
        m.delete_entity(a)
        m.delete_entity(b)
    elif name == "add":
        x, y, _ = a.dxf.insert
        new = m.add_blockref("NAIL-GRID", (x + 1.2, y), dxfattribs={"layer": a.dxf.layer, "xscale": a.dxf.xscale, "yscale": a.dxf.yscale})
        new.add_auto_attribs({"MARK": "new", "SPLAY": "0", "INCLINATION": "15", "LENGTH": "20"})
    elif name == "array":
        a.dxf.column_count, a.dxf.column_spacing = 2, 1.2
    elif name == "explode":
        a.explode()
    elif name == "rename-layer":
        doc.layers.get(a.dxf.layer).rename("NAILS OF THE DETAILER")
    elif name == "rename-block":
        old = a.dxf.name
        doc.blocks.rename_block(old, "SYMBOL 1")
        for i in m.query("INSERT"):
            if i.dxf.name == old:
                i.dxf.name = "SYMBOL 1"
    elif name == "rotate-block":
        a.dxf.rotation += 30
    elif name == "mark":
        attribute(a, "MARK").dxf.text = "Z-99"
    elif name == "bar":
        attribute(a, "BAR").dxf.text = "#11 Gr 75"
    elif name == "station-text":
        attribute(a, "STATION").dxf.text = "0+01.00"
    elif name == "spoilt":
        attribute(a, "SPLAY").dxf.text = "a little"
    elif name == "reorder":
        m.entity_space.entities.reverse()
    elif name == "other-entities":
        m.add_line((0, 0), (10, 10))
        m.add_spline([(0, 0, 0), (5, 2, 0), (10, 0, 0)])
        m.add_circle((50, 50), 3)
    elif name == "inches":
        transform(m, Matrix44.scale(12, 12, 12))
        doc.header["$INSUNITS"] = 1
    elif name == "inches-and-move":
        transform(m, Matrix44.scale(12, 12, 12))
        move(a, 6, 0)
    elif name == "shift-all":
        transform(m, Matrix44.translate(1000, 500, 0))
    elif name == "turn-all":
        transform(m, Matrix44.z_rotate(math.pi / 2))
    elif name == "upside-down-inches":
        move(a, 0.5, 0)
        transform(m, Matrix44.scale(1 / 12, 1 / 12, 1 / 12) @ Matrix44.z_rotate(math.pi) @ Matrix44.translate(4000, 4700, 0))
    elif name == "upside-down-bare":
        for i in n.values():
            strip(i)
        for p in m.query("LWPOLYLINE"):
            p.discard_xdata("SHEETGEN")
        m.delete_entity(b)
        transform(m, Matrix44.z_rotate(math.pi))
    elif name == "move-all-nails":
        for i in n.values():
            move(i, 0.5, 0)
    elif name == "no-xdata":
        for i in n.values():
            strip(i, attributes=False)
        move(a, 0.5, 0)
    elif name == "bare-blocks":
        for i in n.values():
            strip(i)
        move(a, 0.5, 0)
    elif name == "handles":
        for e in list(m):
            m.add_entity(e.copy())
            m.delete_entity(e)
    elif name == "nested":
        block = doc.blocks.new("GROUP")
        block.add_entity(a.copy())
        m.add_blockref("GROUP", (0, 0))
        m.delete_entity(a)
    else:
        raise SystemExit(f"no edit {name}")


def main():
    source, folder, marks, *edits = sys.argv[1:]
    for what in edits:
        name, release = what.split(":")
        doc = ezdxf.readfile(source)
        edit(doc, name, marks.split(","))
        binary = release.endswith("bin")
        doc.dxfversion = release.removesuffix("bin")
        doc.saveas(f"{folder}/{name}-{release}.dxf", fmt="bin" if binary else "asc")


main()
