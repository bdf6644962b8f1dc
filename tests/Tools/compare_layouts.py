#!/usr/bin/env python3
"""Draws every layout of a DXF file through its viewports with ezdxf's drawing add-on, and compares the words with those of the PDF's pages.

usage: compare_layouts.py SHEETS.DXF SHEETS.PDF

Prints a line for each layout: its name, viewports, words drawn, nails' marks drawn; then a line for each fault. The add-on hands over the clip
of each viewport and clips nothing itself: what lies beyond it is left out here. Words of the PDF come from poppler's pdftotext.
"""
import collections
import re
import subprocess
import sys
import xml.etree.ElementTree as ElementTree

import ezdxf
from ezdxf.addons.drawing import Frontend, RenderContext
from ezdxf.addons.drawing.backend import Backend
from ezdxf.addons.drawing.config import Configuration, HatchPolicy, LinePolicy
from ezdxf.tools.fonts import FontMeasurements

WIDTH = 0.9  # of a letter, in heights of a capital: only to place texts that are not left-aligned


class Recorder(Backend):
    """Keeps the texts with their places on the paper and the clip that cuts them."""

    def __init__(self):
        super().__init__()
        self.texts, self.clip, self.clips, self.lines = [], None, [], 0

    def set_background(self, color):
        pass

    def set_clipping_path(self, path=None, scale=1.0):
        if path is None:
            self.clip = None
            return True
        points = list(path.control_vertices())
        xs, ys = [p.x for p in points], [p.y for p in points]
        self.clip = (min(xs), min(ys), max(xs), max(ys))
        self.clips.append(self.clip)
        return True

    def draw_point(self, pos, properties):
        self.lines += 1

    def draw_line(self, start, end, properties):
        self.lines += 1

    def draw_path(self, path, properties):
        self.lines += 1

    def draw_filled_polygon(self, points, properties):
        self.lines += 1

    def draw_text(self, text, transform, properties, cap_height):
        entity = self.current_entity
        is_mark = entity is not None and entity.dxftype() == "ATTRIB" and entity.dxf.tag == "MARK"
        low, high = transform.transform((0, 0, 0)), transform.transform((WIDTH * cap_height * len(text), cap_height, 0))
        along = transform.transform_direction((1, 0, 0))
        self.texts.append((text, low, high, self.clip, is_mark, min(abs(along.x), abs(along.y)) > 0.01 * along.magnitude))

    def get_font_measurements(self, cap_height, font=None):
        return FontMeasurements(baseline=0, cap_height=cap_height, x_height=0.7 * cap_height, descender_height=0.25 * cap_height)

    def get_text_line_width(self, text, cap_height, font=None):
        return WIDTH * cap_height * len(text)

    def clear(self):
        pass


def pages(pdf):
    """Words of each page with their middles, in points from the lower left corner."""
    text = subprocess.run(["pdftotext", "-bbox", pdf, "-"], capture_output=True, check=True).stdout.decode("utf-8")
    text = re.sub(r"<(!DOCTYPE|html|head|meta|title)[^>]*>|</(html|head|title)>", "", text)
    root = ElementTree.fromstring(text[text.index("<doc>"):text.index("</doc>") + 6])
    for page in root:
        high = float(page.get("height"))
        words = [(w.text, (float(w.get("xMin")) + float(w.get("xMax"))) / 2, high - (float(w.get("yMin")) + float(w.get("yMax"))) / 2) for w in page]
        yield float(page.get("width")), words


def compare(doc, layout, width, words):
    recorder = Recorder()
    Frontend(RenderContext(doc), recorder, Configuration.defaults().with_changes(hatch_policy=HatchPolicy.IGNORE, line_policy=LinePolicy.SOLID)).draw_layout(layout, finalize=True)
    paper = next(v for v in layout.query("VIEWPORT") if v.dxf.id == 1)
    points = width / paper.dxf.width  # to a unit of paper space
    found = collections.defaultdict(list)
    for word, x, y in words:
        found[word].append((x / points, y / points))
    faults, shown, marks, near, slanted = [], 0, 0, set(), []
    for text, low, high, clip, is_mark, slant in recorder.texts:
        if slant:
            slanted.append(text)  # poppler reads its letters in pieces
            continue
        middle = ((low.x + high.x) / 2, (low.y + high.y) / 2)
        reach = max(abs(high.x - low.x), abs(high.y - low.y))
        edge = 0 if clip is None else min(middle[0] - clip[0], middle[1] - clip[1], clip[2] - middle[0], clip[3] - middle[1])
        near.update(text.split() if edge > -reach - 4 * 72 / points else ())
        if edge < 0 or (clip is not None and edge < reach / 2 and not is_mark):
            continue  # beyond the viewport, or cut by its edge
        for word in text.split():
            shown += 1
            marks += is_mark
            if not any(max(abs(x - middle[0]), abs(y - middle[1])) <= reach / 2 + 1.5 * 72 / 25.4 / points for x, y in found[word]):
                faults.append(f"{layout.name}: the PDF has no \"{word}\" of \"{text}\" at {middle[0]:.2f}, {middle[1]:.2f}")
    faults += [f"{layout.name}: the DXF has no \"{word}\"" for word in found if word not in near and not any(word in text for text in slanted)]
    sizes = [(v.dxf.center.x - v.dxf.width / 2, v.dxf.center.y - v.dxf.height / 2) for v in layout.query("VIEWPORT") if v.dxf.id > 1]
    if sorted((round(c[0], 6), round(c[1], 6)) for c in recorder.clips) != sorted((round(x, 6), round(y, 6)) for x, y in sizes):
        faults.append(f"{layout.name}: {len(recorder.clips)} of {len(sizes)} viewports are drawn")
    print(layout.name, len(recorder.clips), shown, marks)
    return faults


def main():
    doc = ezdxf.readfile(sys.argv[1])
    names = [n for n in doc.layout_names_in_taborder() if n != "Model"]
    sheets = list(pages(sys.argv[2]))
    faults = [] if len(names) == len(sheets) else [f"{len(names)} layouts, {len(sheets)} pages"]
    for name, (width, words) in zip(names, sheets):
        faults += compare(doc, doc.layouts.get(name), width, words)
    print("\n".join(faults))


if __name__ == "__main__":
    main()
