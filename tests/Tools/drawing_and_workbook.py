"""Compares the elevation's nail blocks and the workbook's totals with nails.csv, where the readers (ezdxf, openpyxl) are installed."""
import math
import os
import re

NUMBER = re.compile(r"[-+]?\d+(?:\.\d+)?")


def check(run):
    check_drawing(run)
    check_workbook(run)


def check_drawing(run):
    path = os.path.join(run.folder, "sheets.dxf")
    try:
        import ezdxf
    except ImportError:
        return
    if not os.path.exists(path):
        run.say("no sheets.dxf")
        return
    document = ezdxf.readfile(path)
    blocks, nails = {}, {}
    for layout in document.layouts:
        for insert in layout.query("INSERT"):
            blocks[insert.dxf.name] = blocks.get(insert.dxf.name, 0) + 1
            tags = {a.dxf.tag: a.dxf.text for a in insert.attribs}
            if "MARK" in tags and "SPLAY" in tags:
                if not layout.is_modelspace:
                    run.say(f"sheets.dxf: {tags['MARK']} stands outside model space")
                nails.setdefault(tags["MARK"], []).append((insert, tags))
    for mark in set(run.by_mark) ^ set(nails):
        run.say(f"sheets.dxf: {mark} is in {'nails.csv' if mark in run.by_mark else 'the drawing'} only")
    for mark, found in nails.items():
        if len(found) > 1:
            run.say(f"sheets.dxf: {mark} stands {len(found)} times")
    used = {found[0][0].dxf.name for found in nails.values()}
    if sum(blocks[name] for name in used) != sum(len(found) for found in nails.values()):
        run.say(f"sheets.dxf: blocks {sorted(used)} stand also where no nail is")
    shifts = {}
    for mark, found in nails.items():
        if mark in run.by_mark:
            check_block(run, run.by_mark[mark], *found[0], shifts)
    for wall, found in shifts.items():
        values = sorted(found)
        spread = [values[0]]
        for value in values:
            if math.dist(value, spread[-1]) > 1e-3:
                spread.append(value)
        if len(spread) > 1:
            run.note(f"sheets.dxf: {wall} has {len(spread)} origins of strips: {spread[:4]}")


def check_block(run, nail, insert, tags, shifts):
    sign = -1 if nail.wall.side > 0 else 1
    if run.project.node.get("sheets", {}).get("view") == "from_behind":
        sign = -sign
    at = insert.dxf.insert
    shifts.setdefault(nail.wall.name, set()).add((round(at.x - sign * nail.s, 3), round(at.y - nail.z, 3)))
    if len(shifts[nail.wall.name]) > 60:
        run.say(f"sheets.dxf: {nail.mark} at ({at.x:.3f}, {at.y:.3f}) does not follow station {nail.s} and elevation {nail.z}")
    names = {"ELEVATION": nail.z, "LENGTH": nail.length, "INCLINATION": nail.inclination}
    for tag, value in names.items():
        found = NUMBER.findall(tags.get(tag, ""))
        if not found or abs(float(found[0]) - value) > 0.006:
            run.say(f"sheets.dxf: {nail.mark} {tag} '{tags.get(tag)}', nails.csv {value}")
    splay = NUMBER.findall(tags.get("SPLAY", ""))
    if not splay or abs(abs(float(splay[0])) - abs(nail.splay)) > 0.006:
        run.say(f"sheets.dxf: {nail.mark} SPLAY '{tags.get('SPLAY')}', nails.csv {nail.splay}")
    full = run.project.read.full
    station = tags.get("STATION", "")
    try:
        value = run.project.read.station(station)
    except Exception:
        value = math.nan
    if not abs(value - nail.s) < 0.006:
        run.say(f"sheets.dxf: {nail.mark} STATION '{station}', nails.csv {nail.s} ({full:g} form)")
    side = tags.get("SIDE", "").upper()
    if abs(nail.splay) > 1e-9:
        expected = "LEFT" if (nail.splay > 0) == (nail.wall.side > 0) else "RIGHT"
        if expected not in side:
            run.say(f"sheets.dxf: {nail.mark} SIDE '{side}', tip lies to the {expected}")
    if tags.get("STATUS", "").lower() != nail.status:
        run.say(f"sheets.dxf: {nail.mark} STATUS '{tags.get('STATUS')}', nails.csv {nail.status}")


def check_workbook(run):
    path = os.path.join(run.folder, "quantities.xlsx")
    try:
        import openpyxl
    except ImportError:
        return
    if not os.path.exists(path):
        run.say("no quantities.xlsx")
        return
    if run.project.node.get("pay_length_from", "face") != "face":
        return
    book = openpyxl.load_workbook(path, data_only=True)
    figures = [c.value for sheet in book for row in sheet.iter_rows() for c in row if isinstance(c.value, (int, float))]
    production = [n for n in run.nails if n.production]
    for what, values in (("count", (len(run.nails), len(production))),
                         ("pay length", (sum(n.length for n in run.nails), sum(n.length for n in production)))):
        if not any(abs(f - v) < 0.006 for v in values for f in figures):
            run.say(f"quantities.xlsx: no cell holds the {what} {values[0]:g} (production {values[1]:g})")
