#!/usr/bin/env python3
"""Looks at a sheet set with ezdxf as the one does who edits it, and prints a line for each thing that would have to be touched up.

usage: detailer.py FILE inch|mm

Paper space in the drawing's paper unit, layouts opened on the first sheet, plot settings with margins and a monochrome plot style, labels
in the space that they belong to, tables as blocks with attributes, callouts as leaders, no block that nothing uses, dimensions that measure
what they say, degrees by their code.
"""
import re
import sys

import ezdxf
from ezdxf.entities import DXFEntity

PAPER_ONLY = ("ANNO-NOTE", "ANNO-SCHD", "ANNO-TTLB")  # parts of layer names
TABLE = "ANNO-SCHD"


def number(text):
    found = re.search(r"-?\d+(?:\.\d+)?", text)
    return None if found is None else float(found.group())


def sheets(doc, inch):
    """Layouts: unit, size, plot settings, and which is open."""
    names = doc.layout_names_in_taborder()[1:]
    if doc.header.get("$TILEMODE") != 0:
        yield "the model is open, not a sheet"
    if doc.layouts.active_layout().name != names[0]:
        yield f"{doc.layouts.active_layout().name} is open, not {names[0]}"
    for name in names:
        plot = doc.layouts.get(name).dxf_layout.dxf
        scale = 25.4 if inch else 1
        if plot.plot_paper_units != (0 if inch else 1):
            yield f"{name}: plots in unit {plot.plot_paper_units}"
        width, height = plot.limmax[0] * scale, plot.limmax[1] * scale
        if abs(width - plot.paper_width) > 0.1 or abs(height - plot.paper_height) > 0.1:
            yield f"{name}: limits of {width:.1f} x {height:.1f} mm on paper of {plot.paper_width:.1f} x {plot.paper_height:.1f} mm"
        if min(plot.left_margin, plot.right_margin, plot.top_margin, plot.bottom_margin) < 3:
            yield f"{name}: no plotter reaches the margins"
        if "mono" not in plot.current_style_sheet.lower():
            yield f"{name}: plot style {plot.current_style_sheet!r}"
        if plot.plot_type != 5 or plot.scale_numerator != plot.scale_denominator or not plot.plot_layout_flags & 32:
            yield f"{name}: not plotted as a layout, 1:1, by plot style"
        if not plot.paper_size:
            yield f"{name}: no paper size named"


def spaces(doc):
    """What stands in model space and what on paper."""
    for entity in doc.modelspace():
        if any(p in entity.dxf.layer for p in PAPER_ONLY):
            yield f"{entity.dxftype()} of {entity.dxf.layer} stands in the model"
    for name in doc.layout_names_in_taborder()[1:]:
        layout = doc.layouts.get(name)
        titles = [i for i in layout.query("INSERT") if "TTLB" in i.dxf.layer]
        if len(titles) != 1 or not titles[0].attribs:
            yield f"{name}: {len(titles)} title blocks with attributes"
        for insert in layout.query("INSERT"):
            if TABLE in insert.dxf.layer and not insert.attribs:
                yield f"{name}: table {insert.dxf.name} has no attributes"
            if insert.dxf.name.startswith("NAIL"):
                yield f"{name}: nail {insert.dxf.name} on paper"
        for entity in layout:
            if TABLE in entity.dxf.layer and entity.dxftype() != "INSERT":
                yield f"{name}: {entity.dxftype()} of a table outside its block"


def callouts(doc):
    """Callouts lead by leaders, with a style of the drawing."""
    found = 0
    for space in [doc.modelspace()] + [doc.layouts.get(n) for n in doc.layout_names_in_taborder()[1:]]:
        for leader in space.query("LEADER"):
            found += 1
            if len(leader.vertices) < 2 or leader.dxf.dimstyle not in doc.dimstyles:
                yield f"{space.name}: a leader of {len(leader.vertices)} points, style {leader.dxf.dimstyle}"
    if found == 0:
        yield "no leaders at all"


def purged(doc):
    """Blocks that nothing uses."""
    used = {e.dxf.name.lower() for block in doc.blocks for e in block.query("INSERT")}
    used |= {e.dxf.geometry.lower() for block in doc.blocks for e in block.query("DIMENSION")}
    for block in doc.blocks:
        if not block.name.lower().startswith(("*model", "*paper")) and block.name.lower() not in used:
            yield f"block {block.name} is not used"


def dimensions(doc):
    """Dimensions measure true: none has its number typed over, and the drawn text says what is measured."""
    count = 0
    for block in doc.blocks:
        for dim in block.query("DIMENSION"):
            count += 1
            if dim.dxf.text and "<>" not in dim.dxf.text:
                yield f"a dimension says {dim.dxf.text!r} whatever it measures"
            texts = [e.plain_text() for e in doc.blocks.get(dim.dxf.geometry) if e.dxftype() in ("TEXT", "MTEXT")]
            if len(texts) != 1:
                yield f"a dimension with {len(texts)} texts"
                continue
            before = dim.dxf.text.split("<>")[0].replace("%%d", "°") if "<>" in dim.dxf.text else ""
            shown = number(texts[0].replace("\n", " ")[len(before):])
            style = doc.dimstyles.get(dim.dxf.dimstyle).dxf
            measured = dim.get_measurement() * style.get("dimlfac", 1)
            if shown is None or abs(shown - measured) > 0.51 * 10 ** -min(2, style.get("dimdec", 2)) + 1e-6:
                yield f"a dimension of {measured:.4f} says {texts[0]!r}"
    if count == 0:
        yield "no dimensions at all"


def degrees(doc):
    """Degree signs by their code, so that every font shows them."""
    def raw(entity: DXFEntity):
        return entity.text if entity.dxftype() == "MTEXT" else entity.dxf.get("text", "")

    texts = [raw(e) for e in doc.entitydb.values() if e.dxftype() in ("TEXT", "MTEXT", "ATTRIB", "ATTDEF", "DIMENSION")]
    for text in texts:
        if "°" in text or "\\U+00B0" in text:
            yield f"a bare degree sign: {text!r}"
    if not any("%%d" in t for t in texts):
        yield "no degree sign at all"


def main():
    doc = ezdxf.readfile(sys.argv[1])
    inch = sys.argv[2] == "inch"
    for part in (sheets(doc, inch), spaces(doc), callouts(doc), purged(doc), dimensions(doc), degrees(doc)):
        for line in part:
            print(line)


if __name__ == "__main__":
    main()
