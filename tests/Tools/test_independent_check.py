#!/usr/bin/python3
"""The check must find what is wrong: a small right result, and then one thing after the other made wrong."""
import csv
import io
import json
import math
import os
import tempfile
import unittest

import independent_check

WALL = """
format: 1
project: {title: Small wall, number: T-1, units: ft}
layout_lines:
  - name: WL-1
    start: {station: 1+00, northing: 5000, easting: 2000, azimuth: 90}
    elements:
      - line: 14
      - corner: {turn: right, angle: 30}
      - line: 14
walls:
  - name: Wall 1
    layout_line: WL-1
    retained_side: right
    stations: [1+00, 1+28]
    top: [[1+00, 110], [1+28, 110]]
    bottom: {steps: [[1+00, 100]]}
    panels: {width: 14, height: 5}
    sections:
      - {name: A, stations: [1+00, 1+28], horizontal_spacing: 3.5, vertical_spacing: 3.5, top_row_depth: 2, inclination: 10,
         lengths: 4, bar: {size: "#8", grade: 75}, hole: 0.5}
obstructions:
  - {name: S1, kind: shaft, at: {station: 1+01.75, offset: 4}, diameter: 1, top: 120, bottom: 80}
"""


def nail(row, column, station, elevation, splay=0.0, status="grid", length=4.0, reason=""):
    return dict(wall="Wall 1", section="A", row=str(row), nail=f"A-{row}-{column:02}", kind="production", station=station, elevation=elevation,
                splay_deg=splay, inclination_deg=10.0, length=length, bar="#8", hole_diameter=0.5, status=status, reason=reason)


def layout():
    stations = [101.75, 105.25, 108.75, 112.25, 115.75, 119.25, 122.75, 126.25]
    nails = [nail(r, c + 1, s, z) for r, z in ((1, 108.0), (2, 104.5), (3, 101.5)) for c, s in enumerate(stations)]
    for n in nails:
        if n["nail"].endswith("-01"):
            n.update(splay_deg=20.0, status="noted", length=5.0, reason="grid place hits S1")
    return nails


class Results:
    """Writes the results of a small layout as the program would, with room for mistakes."""

    def __init__(self):
        self.nails, self.extra, self.drop, self.layout = layout(), [], set(), {"unresolved": [0, 0], "noted": [3, 3], "effort": [60, None]}

    def lines(self, edit=None):
        with tempfile.TemporaryDirectory() as folder:
            path = os.path.join(folder, "wall.yaml")
            with open(path, "w", encoding="utf-8") as file:
                file.write(WALL)
            self.write(folder, path, edit)
            check = independent_check.Check(path, folder)
            check.run()
            return [line for line in check.lines if not line.startswith(("no sheets", "no quantities"))]

    def write(self, folder, path, edit):
        probe = independent_check.Project(path)
        rows = []
        for n in self.nails:
            wall = probe.walls[0]
            head = wall.face_point(n["station"], n["elevation"])
            d = wall.direction(n["station"], n["splay_deg"], n["inclination_deg"])
            tip = [h + n["length"] * x for h, x in zip(head, d)]
            rows.append({**n, "northing": head[0], "easting": head[1], "tip_northing": tip[0], "tip_easting": tip[1], "tip_elevation": tip[2],
                         "nearest": "", "least_clear": "", "margin_obstruction_deg": "", "margin_nail_deg": ""})
        self.dump(folder, rows, [])
        self.fill(folder, path, rows)
        findings = [{"id": f"N{k}", "code": "noted-redirect", "severity": "warning", "nails": [n["nail"]], "message": "noted"}
                    for k, n in enumerate(self.nails) if n["status"] == "noted"] + self.extra
        if edit:
            edit(rows, findings)
        self.dump(folder, rows, findings)

    def fill(self, folder, path, rows):
        """Takes nearest, clear distance and margins from the check itself: here they are not what is tested."""
        check = independent_check.Check(path, folder)
        check.check_clear()
        for row, n in zip(rows, check.nails):
            clear, name = min(n.nail_best, n.solid_best)
            row.update(nearest=name, least_clear=f"{clear:.6f}",
                       margin_obstruction_deg=f"{max(0.0, independent_check.hd.margin_degrees(n.solid_ratio)):.4f}",
                       margin_nail_deg=f"{max(0.0, independent_check.hd.margin_degrees(n.nail_ratio)):.4f}")

    def dump(self, folder, rows, findings):
        text = io.StringIO()
        writer = csv.DictWriter(text, independent_check.HEADER.split(","), lineterminator="\r\n")
        writer.writeheader()
        writer.writerows(rows)
        with open(os.path.join(folder, "nails.csv"), "w", encoding="utf-8", newline="") as file:
            file.write(text.getvalue())
        report = {"format": 1, "units": "ft", "input_hash": "0", "layout": self.layout, "findings": findings}
        with open(os.path.join(folder, "findings.json"), "w", encoding="utf-8") as file:
            json.dump(report, file)


class TheCheck(unittest.TestCase):
    def wrong(self, words, change=None, edit=None):
        results = Results()
        if change:
            change(results)
        lines = results.lines(edit)
        self.assertTrue(any(words in line for line in lines), f"no '{words}' in {lines}")

    def test_a_right_result_passes(self):
        self.assertEqual(Results().lines(), [])

    def test_cover(self):
        self.wrong("cover broken", lambda r: r.nails.pop(10))
        self.wrong("cover broken", lambda r: [n.update(elevation=107.4) for n in r.nails if n["row"] == "1"])
        self.wrong("cover broken", lambda r: [n.update(elevation=103.1) for n in r.nails if n["row"] == "3"])

    def test_false_cover_alarm(self):
        alarm = {"id": "C1", "code": "cover", "severity": "error", "wall": "Wall 1", "station": 103.0, "to_station": 105.0, "message": "x"}
        self.wrong("stands where the rule holds", edit=lambda rows, findings: findings.append(alarm))

    def test_edges_and_corner(self):
        self.wrong("outline", lambda r: r.nails[7].update(station=127.5))
        self.wrong("corner_clear", lambda r: r.nails[4].update(station=114.5))
        self.wrong("outline", lambda r: [n.update(elevation=100.5) for n in r.nails if n["row"] == "3"])

    def test_gaps(self):
        self.wrong("min_gap", lambda r: r.nails[2].update(station=107.0))

    def test_rows(self):
        self.wrong("elevation goes from", lambda r: r.nails[12].update(elevation=104.4))

    def test_directions_and_lengths(self):
        self.wrong("no whole step", lambda r: r.nails[0].update(splay_deg=20.5))
        self.wrong("over the maximum", lambda r: r.nails[0].update(splay_deg=31.0))
        self.wrong("status", lambda r: r.nails[0].update(status="redirected"))
        self.wrong("length", lambda r: r.nails[0].update(length=4.0))
        self.wrong("length", lambda r: r.nails[1].update(length=5.0))
        self.wrong("without a reason", lambda r: r.nails[0].update(reason=""))

    def test_coordinates(self):
        self.wrong("from the face point", edit=lambda rows, findings: rows[0].update(northing=rows[0]["northing"] + 0.01))
        self.wrong("tip", edit=lambda rows, findings: rows[5].update(tip_easting=rows[5]["tip_easting"] + 0.01))

    def test_clear_distances(self):
        def straight(r):
            r.nails[0].update(splay_deg=0.0, status="grid", length=4.0, reason="")
        self.wrong("no finding", straight)
        self.wrong("none of them is unresolved", straight)
        self.wrong("least_clear", edit=lambda rows, findings: rows[3].update(least_clear="9.9"))
        self.wrong("nearest", edit=lambda rows, findings: rows[3].update(nearest="A-3-08"))
        self.wrong("margin_nail_deg", edit=lambda rows, findings: rows[3].update(margin_nail_deg="1.0"))
        self.wrong("margin_obstruction_deg", edit=lambda rows, findings: rows[3].update(margin_obstruction_deg="1.0"))

    def test_false_clash(self):
        alarm = {"id": "X", "code": "nail-nail", "severity": "error", "nails": ["A-1-01", "A-1-02"], "clear": 0.1, "required": 0.5, "message": "x"}
        self.wrong("no such break", edit=lambda rows, findings: findings.append(alarm))
        self.wrong("twice", edit=lambda rows, findings: findings.extend([alarm, {**alarm, "id": "Y"}]))

    def test_needless_unresolved(self):
        def change(r):
            r.nails[9].update(status="unresolved", reason="x")
            r.layout["unresolved"] = [1, 0]
        self.wrong("unresolved, yet", change)

    def test_marks_order_and_figures(self):
        self.wrong("not unique", edit=lambda rows, findings: rows[1].update(nail="A-1-01"))
        self.wrong("out of order", lambda r: r.nails.reverse())
        self.wrong("noted found", lambda r: r.layout.update(noted=[2, 2]))
        self.wrong("above found", lambda r: r.layout.update(noted=[3, 4]))
        self.wrong("effort", lambda r: r.layout.update(effort=[61, None]))
        self.wrong("noted-redirect findings", edit=lambda rows, findings: findings.pop())

    def test_distances_against_dense_sampling(self):
        hd = independent_check.hd
        h = hd.Hole((0, 0, 0), (0.6, 0.8, 0), 8, 0.25, 0.02)
        g = hd.Hole((3, 0, 1), (0.0, 0.8, -0.6), 9, 0.2, 0.01)
        dense = min(math.dist(h.at(8 * i / 400), g.at(9 * j / 400)) - h.radius_at(8 * i / 400) - g.radius_at(9 * j / 400)
                    for i in range(401) for j in range(401))
        self.assertAlmostEqual(hd.holes_clear(h, g), dense, delta=2e-3)
        for solid in (("cylinder", (4, 5, 3), (4, 6, -3), 0.7), ("capsule", (4, 5, 3), (7, 6, -1), 0.7),
                      ("prism", [(4, 3), (9, 3), (9, 9), (6, 9), (6, 5), (4, 5)], -4, 0.5), ("boundary", (8, 0), (8, 9))):
            dense = min(hd.signed_distance(solid, h.at(8 * i / 4000)) - h.radius_at(8 * i / 4000) for i in range(4001))
            self.assertAlmostEqual(hd.solid_clear(h, solid), dense, delta=2e-3, msg=solid[0])


if __name__ == "__main__":
    unittest.main()
