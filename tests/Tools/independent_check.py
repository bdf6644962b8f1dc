#!/usr/bin/python3
"""Second opinion on a built wall: recomputes what nails.csv and findings.json say, from the project file and the contract alone.

    independent_check.py WALL.yaml OUTDIR

Prints a line for each disagreement and exits 1 if there is any; `note` lines tell where two readings of the contract exist.
"""
import csv
import json
import math
import os
import sys

import drawing_and_workbook
import hole_distances as hd
import layout_rules as lr
from wall_file import Project

CLEAR_TOLERANCE = 0.005
HEADER = ("wall,section,row,nail,kind,station,elevation,northing,easting,splay_deg,inclination_deg,length,bar,hole_diameter,status,"
          "tip_northing,tip_easting,tip_elevation,nearest,least_clear,margin_obstruction_deg,margin_nail_deg,reason")
CODES = {"nail-nail", "nail-obstruction", "nail-boundary", "nail-face", "cover", "unresolved", "noted-redirect", "left-out", "no-nail-height",
         "guidance", "spacing", "edge", "sheet", "test-nail", "duplicate-head", "incomplete", "load"}


class Check:
    def __init__(self, path, folder):
        self.project = Project(path)
        self.folder = folder
        self.lines, self.notes = [], []
        self.read_results()

    def say(self, text, code=None, *nails):
        """A disagreement, unless a finding of that code names one of the nails."""
        if code and any(f["code"] in (code, "edge", "spacing") and any(n.mark in f.get("nails", []) for n in nails) for f in self.findings):
            return
        self.lines.append(text)

    def note(self, text):
        self.notes.append(text)

    def read_results(self):
        with open(os.path.join(self.folder, "nails.csv"), "rb") as file:
            raw = file.read()
        if raw.startswith(b"\xef\xbb\xbf"):
            self.say("nails.csv starts with a byte order mark")
        text = raw.decode("utf-8")
        if text.splitlines()[0] not in (HEADER, HEADER + ",station_printed"):
            self.say(f"nails.csv header: {text.splitlines()[0]}")
        self.nails = [lr.Nail(row, self.project) for row in csv.DictReader(text.splitlines(keepends=True))]
        with open(os.path.join(self.folder, "findings.json"), encoding="utf-8") as file:
            self.report = json.load(file, parse_constant=lambda c: self.say(f"findings.json holds {c}"))
        self.findings = self.report["findings"]
        self.by_mark = {n.mark: n for n in self.nails}
        rules = self.project.rules
        for n in self.nails:
            n.hole = hd.Hole(n.wall.face_point(n.s, n.z), n.wall.direction(n.s, n.splay, n.inclination), n.length,
                             n.section.hole / 2, rules["drift"])

    def run(self):
        self.check_table()
        for nail in self.nails:
            lr.check_heads(nail, self.project, self.say, self.note)
            lr.check_direction(nail, self.project, self.say, self.note)
        rows = lr.check_gaps(self.nails, self.project, self.say)
        lr.check_rows(rows, self.project, self.say, self.note)
        lr.check_lattice(self.nails, self.project, self.note)
        self.check_cover()
        self.check_clear()
        self.check_unresolved()
        self.check_test_nails()
        self.check_score()
        self.check_report()
        drawing_and_workbook.check(self)

    def check_table(self):
        if len(self.by_mark) != len(self.nails):
            self.say("nails.csv: marks are not unique")
        order = [(self.project.walls.index(n.wall), n.wall.sections.index(n.section), n.row if n.production else math.inf, n.s) for n in self.nails]
        if order != sorted(order):
            k = next(k for k in range(1, len(order)) if order[k] < order[k - 1])
            self.say(f"nails.csv: {self.nails[k].mark} out of order")
        for n in self.nails:
            if (n.kind == "verification") != (n.row == 0):
                self.say(f"{n.mark}: kind {n.kind} with row {n.row:g}")
            if abs(float(n.fields["hole_diameter"]) - n.section.hole) > 1e-4:
                self.say(f"{n.mark}: hole_diameter {n.fields['hole_diameter']}, section's {n.section.hole}")

    # Rule 1

    def check_cover(self):
        for wall in self.project.walls:
            covers = [lr.Cover(wall, section, leg, self.nails, self.project) for section in wall.sections for leg in range(len(wall.legs))
                      if min(section.end, wall.legs[leg][1]) > max(section.start, wall.legs[leg][0]) + 1e-9]
            mine = [f for f in self.findings if f["code"] == "cover" and f.get("wall", wall.name) == wall.name]
            slack = 4 * self.project.quantum
            for cover in covers:
                for a, b in cover.broken_stretches():
                    for s in sorted({a, (a + b) / 2, b}):
                        if not any(f["station"] - slack <= s <= f["to_station"] + slack for f in mine):
                            self.say(f"{wall.name} {cover.section.name}: cover broken from {a:.4f} to {b:.4f}, no finding at {s:.4f}")
                            break
            for f in mine:
                self.check_cover_finding(f, covers)
            self.check_no_nail_height(wall)

    def check_cover_finding(self, f, covers):
        a, b = f["station"], f["to_station"]
        inside = [a + (b - a) * (k + 0.5) / 40 for k in range(40)]
        alarm = [s for s in inside if not any(c.start - 1e-6 <= s <= c.end + 1e-6 and c.state(s) != lr.CLEAR for c in covers)]
        if alarm:
            self.say(f"{f.get('wall')}: cover finding {f['id']} from {a} to {b} stands where the rule holds, at {alarm[0]:.4f} and "
                     f"{len(alarm) - 1} of 39 other places")

    def check_no_nail_height(self, wall):
        limit, slack = 2 * self.project.rules["edge_min"], 2 * self.project.quantum
        mine = [f for f in self.findings if f["code"] == "no-nail-height" and f.get("wall", wall.name) == wall.name]
        count = max(2, math.ceil((wall.end - wall.start) / (10 * self.project.quantum)))
        for k in range(count):
            s = wall.start + (wall.end - wall.start) * (k + 0.5) / count
            height = wall.top.at(s) - wall.bottom.at(s)
            noticed = any(f["station"] - 0.1 <= s <= f["to_station"] + 0.1 for f in mine)
            deep = any(f["station"] + 0.1 <= s <= f["to_station"] - 0.1 for f in mine)
            if height < limit - slack and not noticed:
                self.say(f"{wall.name}: height {height:.4f} at {s:.3f}, no no-nail-height notice")
                return
            if height > limit + slack and deep:
                self.say(f"{wall.name}: no-nail-height notice at {s:.3f}, height {height:.4f}")
                return

    # Rule 4

    def check_clear(self):
        rules, nails = self.project.rules, self.nails
        required = {"boundary": rules["boundary"]}
        self.close_pairs = {}
        facets = [(wall, hd.face_facets(wall)) for wall in self.project.walls]
        solids = [(name, kind, s) for name, kind, parts in self.project.obstructions for s in parts]
        for n in nails:
            n.pairs = []
        for i, n in enumerate(nails):
            self.measure_nails(i, n)
            self.measure_solids(n, solids, required)
            self.measure_faces(n, facets)
        for n in nails:
            self.check_figures(n)
        self.match_pairs()

    def measure_nails(self, i, n):
        rules, near = self.project.rules, []
        for m in self.nails[:i] + self.nails[i + 1:]:
            floor = math.dist(n.hole.middle, m.hole.middle) - n.hole.reach - m.hole.reach
            near.append((floor, m))
        near.sort(key=lambda p: p[0])
        best, ratio = math.inf, math.inf
        name = ""
        for floor, m in near:
            if floor > max(best, rules["nail"]) and floor / n.length > ratio:
                break
            gap = hd.axis_gap(n.hole, m.hole)
            grown = n.hole.radius_at(n.length) + m.hole.radius_at(m.length)
            if gap - grown < max(best, rules["nail"] + 0.1):
                clear = hd.holes_clear(n.hole, m.hole, gap)
                if clear < best:
                    best, name = clear, m.mark
                n.pairs.append((m.mark, clear))
                if clear < rules["nail"] + CLEAR_TOLERANCE and self.nails.index(m) > i:
                    self.close_pairs[("nail-nail", n.mark, m.mark)] = (clear, rules["nail"])
            if (gap - n.hole.radius - m.hole.radius) / n.length < ratio:
                ratio = min(ratio, hd.stray_ratio(n.hole, lambda x, g=m.hole: hd.point_to_axis(x, g), m.hole.radius))
        n.nail_best, n.nail_ratio = (best, name), ratio

    def measure_solids(self, n, solids, required):
        best, name, ratio = math.inf, "", math.inf
        least = {}
        for label, kind, solid in solids:
            floor = hd.solid_floor(n.hole, solid)
            asked = required.get(kind, self.project.rules["obstruction"])
            if floor > max(best, asked) + CLEAR_TOLERANCE and floor / n.length > ratio:
                continue
            clear = hd.solid_clear(n.hole, solid)
            n.pairs.append((label, clear))
            if clear < best:
                best, name = clear, label
            if clear < asked + CLEAR_TOLERANCE:
                code = "nail-boundary" if kind == "boundary" else "nail-obstruction"
                key = (code, n.mark, label)
                least[key] = min(least.get(key, (math.inf, asked)), (clear, asked))
            if max(0.0, floor) / n.length < ratio:
                distance = lambda x, s=solid: hd.signed_distance(s, x)
                if hd.convex(solid):
                    found = hd.stray_ratio(n.hole, distance, 0.0)
                else:
                    found = hd.least_of_many_valleys(lambda u: (distance(n.hole.at(u)) - n.hole.radius) / u, 1e-6 * n.length, n.length)[0]
                ratio = min(ratio, found)
        self.close_pairs.update(least)
        n.solid_best, n.solid_ratio = (best, name), ratio

    def measure_faces(self, n, facets):
        asked = self.project.rules["obstruction"]
        n.face_best, n.face_name = math.inf, ""
        within = max(asked, min(n.nail_best[0], n.solid_best[0]))
        for wall, pieces in facets:
            least = {}
            for leg, corners, normal, middle, reach in pieces:
                if wall is n.wall and leg == n.leg:
                    continue
                if math.dist(n.hole.middle, middle) - reach - n.hole.reach > within:
                    continue
                clear = hd.face_clear(n.hole, corners, normal)
                least[leg] = min(least.get(leg, math.inf), clear)
            for leg, clear in least.items():
                if clear < n.face_best:
                    n.face_best, n.face_name = clear, f"the face of {wall.name}" + (f", leg {leg + 1}" if len(wall.legs) > 1 else "")
                n.pairs.append((f"the face of {wall.name}" + (f", leg {leg + 1}" if len(wall.legs) > 1 else ""), clear))
                if clear < asked + CLEAR_TOLERANCE:
                    self.close_pairs[("nail-face", n.mark, f"{wall.name} leg {leg}")] = (clear, asked)

    def check_figures(self, n):
        best = min(n.nail_best[0], n.solid_best[0], n.face_best)
        stated, nearest = n.fields["least_clear"], n.fields["nearest"]
        if stated == "" or math.isinf(best):
            if not (stated == "" and math.isinf(best)):
                self.say(f"{n.mark}: least_clear '{stated}', computed {best}")
        elif not self.same_clear(float(stated), best):
            self.say(f"{n.mark}: least_clear {stated} ({nearest}), computed {best:.4f} ({min(n.nail_best, n.solid_best, (n.face_best, n.face_name))[1]})")
        else:
            named = [c for name, c in n.pairs if name == nearest]
            if not named and nearest in self.by_mark:
                named = [hd.holes_clear(n.hole, self.by_mark[nearest].hole)]
            if not named or not self.same_clear(min(named), best):
                self.say(f"{n.mark}: nearest {nearest}, computed {min(n.nail_best, n.solid_best, (n.face_best, n.face_name))[1]} at {best:.4f}, "
                         f"{nearest} at {min(named) if named else 'far'}")
        # What already runs into something has no margin to it.
        for field, ratio, clear in (("margin_obstruction_deg", n.solid_ratio, min(n.solid_best[0], n.face_best)), ("margin_nail_deg", n.nail_ratio, n.nail_best[0])):
            text = n.fields[field]
            mine = 0.0 if clear < 0 else 90.0 if math.isinf(ratio) else hd.margin_degrees(ratio)
            if text == "" and math.isinf(ratio):
                continue
            if text == "" or not (abs(float(text) - max(0.0, mine)) < 0.02 or (mine < 0 and float(text) <= 0)):
                self.say(f"{n.mark}: {field} '{text}', computed {mine:.4f}")

    def same_clear(self, stated, mine):
        # How far two things that run into each other overlap has more than one reading; that they do has not.
        return abs(stated - mine) <= CLEAR_TOLERANCE or (stated < 0 and mine < 0)

    def match_pairs(self):
        stated = {}
        for f in self.findings:
            if f["code"] in ("nail-nail", "nail-obstruction", "nail-boundary", "nail-face"):
                names = f["nails"] if f["code"] == "nail-nail" else [f["nails"][0], f.get("obstruction", "")]
                key = (f["code"],) + (tuple(sorted(names)) if f["code"] == "nail-nail" else tuple(names))
                if key in stated:
                    self.say(f"finding {f['id']}: {key} is reported twice")
                stated[key] = f
                if f["severity"] not in ("error", "accepted"):
                    self.say(f"finding {f['id']}: severity {f['severity']} of a {f['code']}")
        computed = {}
        for key, value in self.close_pairs.items():
            key = (key[0],) + (tuple(sorted(key[1:])) if key[0] == "nail-nail" else key[1:])
            computed[key] = value
        for key, (clear, asked) in computed.items():
            if key[0] == "nail-face":
                found = [f for k, f in stated.items() if k[0] == "nail-face" and k[1] == key[1]]
                f = min(found, key=lambda f: abs(f["clear"] - clear)) if found else None
            else:
                f = stated.get(key)
            if f is None:
                if clear < asked - CLEAR_TOLERANCE:
                    self.say(f"{' '.join(key)}: clear distance {clear:.4f} under {asked}, no finding")
                continue
            if not self.same_clear(f["clear"], clear):
                self.say(f"{' '.join(key)}: finding says {f['clear']}, computed {clear:.4f}")
            elif abs(f["clear"] - clear) > CLEAR_TOLERANCE:
                self.note(f"{' '.join(key)}: overlap {f['clear']}, computed {clear:.4f}")
            if abs(f["required"] - asked) > 1e-4:
                self.say(f"{' '.join(key)}: finding requires {f['required']}, the rule {asked}")
            if f["clear"] >= f["required"]:
                self.say(f"{' '.join(key)}: finding at {f['clear']} is not below {f['required']}")
        for key, f in stated.items():
            if key[0] == "nail-face":
                real = any(k[0] == "nail-face" and k[1] == key[1] for k in computed)
            else:
                real = key in computed
            if not real:
                self.say(f"finding {f['id']} {' '.join(key)} at {f['clear']}: no such break")

    def check_unresolved(self):
        """Pairs too close need an unresolved nail; each unresolved nail is needed."""
        unresolved = {n.mark for n in self.nails if n.status == "unresolved"}
        needed = set()
        for key, (clear, asked) in self.close_pairs.items():
            nails = [k for k in key[1:] if k in self.by_mark] if key[0] == "nail-nail" else [key[1]]
            here = [k for k in nails if k in unresolved]
            if len(here) == 1 or (key[0] == "nail-nail" and len(here) == 2):
                needed |= set(here) if len(here) == 1 else set()
            if not here and clear < asked - CLEAR_TOLERANCE and not self.project.pinned:
                self.say(f"{' '.join(key)}: {clear:.4f} under {asked} and none of them is unresolved")
        for mark in unresolved - needed:
            self.say(f"{mark}: unresolved, yet all would be clear of what is resolved without it being so")
        # The finding may name, after its own nail, the one that it gives way to.
        told = [f["nails"][0] for f in self.findings if f["code"] == "unresolved"]
        if sorted(told) != sorted(unresolved):
            self.say(f"unresolved findings stand for {sorted(told)}, nails.csv has {sorted(unresolved)}")
        noted = {n.mark for n in self.nails if n.status == "noted"}
        told = [m for f in self.findings if f["code"] == "noted-redirect" for m in f["nails"]]
        if sorted(told) != sorted(noted):
            self.say(f"noted-redirect findings name {sorted(set(told) ^ noted)} otherwise than nails.csv")

    def check_test_nails(self):
        apart = 0.3 if self.project.unit == "m" else 1.0
        for wall in self.project.walls:
            for section in wall.sections:
                own = [n for n in self.nails if n.wall is wall and n.section is section]
                extra = [n for n in own if n.kind == "verification"]
                if section.verification_per == "section" and len(extra) != section.verification:
                    (self.say if len(extra) > section.verification else self.note)(
                        f"{wall.name} {section.name}: {len(extra)} verification nails, {section.verification} asked for")
                share = section.proof * sum(n.production for n in own)
                proofs = sum(n.kind == "proof" for n in own)
                if section.spread and proofs < math.ceil(share - 1e-9):
                    self.say(f"{wall.name} {section.name}: {proofs} proof nails, {share:.2f} asked for")
                if not section.spread and proofs:
                    self.say(f"{wall.name} {section.name}: {proofs} proof nails marked, the engineer chooses")
                for v in extra:
                    for n in self.nails:
                        if n is not v and math.dist(n.hole.head, v.hole.head) < apart - 2 * self.project.quantum:
                            self.say(f"{v.mark}: head {math.dist(n.hole.head, v.hole.head):.4f} from {n.mark}, least {apart}")

    def check_score(self):
        layout = self.report["layout"]
        grid = [n for n in self.nails if n.production]
        effort = sum(abs(n.splay) + abs(n.change) for n in grid)
        left_out = sum(max(1, len(f.get("nails", []))) for f in self.findings if f["code"] == "left-out")
        moved = sum(n.status == "moved" for n in grid)
        turned = sum(n.status in ("redirected", "noted") for n in grid)
        counts = {"unresolved": sum(n.status == "unresolved" for n in grid), "noted": sum(n.status == "noted" for n in grid)}
        for name, count in counts.items():
            if layout[name][0] != count:
                self.say(f"layout.{name} found {layout[name][0]}, nails.csv has {count}")
        twos = (layout["effort"][0] - effort - 3 * left_out) / 2
        if not lr.whole(twos) or not moved <= round(twos) <= moved + turned:
            self.say(f"layout.effort {layout['effort'][0]}: angles {effort}, {left_out} left out, so {twos} moved; statuses allow {moved} to "
                     f"{moved + turned}")
        reached = True
        for name in ("unresolved", "noted", "effort"):
            found, bound = layout[name]
            if not reached and bound is not None:
                self.say(f"layout.{name}: bound {bound} though an earlier figure is above its bound")
            if bound is not None and bound > found + 1e-9:
                self.say(f"layout.{name}: bound {bound} above found {found}")
            reached = reached and bound is not None and abs(found - bound) < 1e-9

    def check_report(self):
        report = self.report
        if report.get("format") != 1 or report.get("units") != self.project.unit or not report.get("input_hash"):
            self.say("findings.json: format, units or input_hash")
        ids = [f["id"] for f in self.findings]
        if len(set(ids)) != len(ids):
            self.say("findings.json: ids are not unique")
        for f in self.findings:
            if f["code"] not in CODES or f["severity"] not in ("error", "warning", "notice", "accepted"):
                self.say(f"finding {f['id']}: code {f['code']}, severity {f['severity']}")
            if any(v is None for v in f.values()):
                self.say(f"finding {f['id']}: a null")
            if not str(f.get("message", "")).strip():
                self.say(f"finding {f['id']}: no message")
            for mark in f.get("nails", []):
                if mark not in self.by_mark and f["code"] != "left-out":
                    self.say(f"finding {f['id']}: no nail {mark}")
            if f["code"] == "nail-nail" and "depths" in f and "points" in f:
                self.check_evidence(f)

    def check_evidence(self, f):
        holes = [self.by_mark[m].hole for m in f["nails"]]
        clear = math.dist(*f["points"]) - sum(h.radius_at(u) for h, u in zip(holes, f["depths"]))
        if abs(clear - f["clear"]) > 0.01 and abs(math.dist(*f["points"]) - f["clear"]) > 0.01:
            self.say(f"finding {f['id']}: its points are {math.dist(*f['points']):.4f} apart, clear {f['clear']}")
        for h, u, p in zip(holes, f["depths"], f["points"]):
            if math.dist(h.at(u), p) > h.radius_at(u) + 0.01:
                self.say(f"finding {f['id']}: point {p} is not at depth {u}")


def main(arguments):
    if len(arguments) != 2:
        print(__doc__)
        return 2
    check = Check(*arguments)
    check.run()
    for text in check.lines:
        print(text)
    for text in check.notes:
        print("note", text)
    print(f"{len(check.nails)} nails, {len(check.findings)} findings, {len(check.lines)} disagreements, {len(check.notes)} notes")
    return 1 if check.lines else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
