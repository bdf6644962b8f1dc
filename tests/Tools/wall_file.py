"""Reads a project file and gives the plain geometry of its walls, for the independent check. Written from the contract of the file alone.

Stations and distances along a layout line are the same here; plan points are (northing, easting); points are (northing, easting, elevation).
"""
import math
import re

import yaml

METRES = {"ft": 0.3048, "us-ft": 1200 / 3937, "in": 0.0254, "m": 1.0, "mm": 0.001, "cm": 0.01}
NUMBER = re.compile(r"^\s*([-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?)\s*([a-zA-Z%-]*)\s*$")
STATION = re.compile(r"^\s*(-?)(\d+)\+(\d+(?:\.\d*)?)\s*$")


class Reader:
    def __init__(self, unit):
        self.unit = unit
        self.full = 1000.0 if unit == "m" else 100.0
        self.quantum = 0.001 if unit == "m" else 0.01

    def length(self, value):
        if isinstance(value, (int, float)):
            return float(value)
        match = NUMBER.match(str(value))
        if not match:
            raise ValueError(f"not a length: {value!r}")
        if not match[2]:
            return float(match[1])
        return float(match[1]) * METRES[match[2]] / METRES[self.unit]

    def angle(self, value):
        return float(NUMBER.match(str(value))[1])

    def ratio(self, value):
        match = NUMBER.match(str(value))
        return float(match[1]) / (100 if match[2] == "%" else 1)

    def station(self, value):
        match = STATION.match(str(value))
        if not match:
            return self.length(value)
        size = float(match[2]) * self.full + float(match[3])
        return -size if match[1] else size


class Line:
    """A layout line: pieces (start station, end station, plan point, azimuth, curvature positive to the right) and corners."""

    def __init__(self, node, read):
        self.name = str(node["name"])
        start = node["start"]
        station = read.station(start["station"])
        point = (read.length(start["northing"]), read.length(start["easting"]))
        azimuth = math.radians(read.angle(start["azimuth"]))
        self.pieces, self.corners = [], []
        for element in node["elements"]:
            if "corner" in element:
                corner = element["corner"]
                deflection = math.radians(read.angle(corner["angle"])) * (1 if corner["turn"] == "right" else -1)
                self.corners.append((station, deflection))
                azimuth += deflection
                continue
            if "line" in element:
                length, curvature = read.length(element["line"]), 0.0
            else:
                arc = element["arc"]
                length = read.length(arc["length"])
                curvature = (1 if arc["turn"] == "right" else -1) / read.length(arc["radius"])
            piece = (station, station + length, point, azimuth, curvature)
            self.pieces.append(piece)
            point, azimuth, station = walk(piece, station + length), azimuth + curvature * length, station + length
        self.start, self.end = self.pieces[0][0], self.pieces[-1][1]

    def piece(self, s):
        found = self.pieces[0]
        for piece in self.pieces:
            if piece[0] <= s + 1e-9:
                found = piece
        return found

    def azimuth(self, s):
        piece = self.piece(s)
        return piece[3] + piece[4] * (min(max(s, self.start), self.end) - piece[0])

    def tangent(self, s):
        azimuth = self.azimuth(s)
        return math.cos(azimuth), math.sin(azimuth)

    def point(self, s):
        inside = min(max(s, self.start), self.end)
        n, e = walk(self.piece(s), inside)
        t = self.tangent(s)
        return n + t[0] * (s - inside), e + t[1] * (s - inside)

    def offset_point(self, s, right):
        (n, e), (tn, te) = self.point(s), self.tangent(s)
        return n - te * right, e + tn * right


def walk(piece, s):
    start, _, (n, e), azimuth, curvature = piece
    d = s - start
    if curvature == 0:
        return n + d * math.cos(azimuth), e + d * math.sin(azimuth)
    chord = 2 * math.sin(curvature * d / 2) / curvature
    middle = azimuth + curvature * d / 2
    return n + chord * math.cos(middle), e + chord * math.sin(middle)


class Profile:
    """Elevations straight between points; side +1 looks at what starts at a station, -1 at what ends there."""

    def __init__(self, points):
        self.points = points

    def at(self, s, side=1):
        points = self.points
        if side > 0:
            before = [k for k, p in enumerate(points) if p[0] <= s]
            k = before[-1] if before else -1
        else:
            before = [k for k, p in enumerate(points) if p[0] < s]
            k = before[-1] if before else -1
        if k < 0:
            return points[0][1]
        if k == len(points) - 1:
            return points[-1][1]
        (s0, z0), (s1, z1) = points[k], points[k + 1]
        return z1 if s1 <= s0 else z0 + (z1 - z0) * (s - s0) / (s1 - s0)

    def stations(self):
        return [p[0] for p in self.points]


class Section:
    def __init__(self, node, read, rules):
        self.name = str(node["name"])
        self.start, self.end = (read.station(v) for v in node["stations"])
        self.hs, self.vs = read.length(node["horizontal_spacing"]), read.length(node["vertical_spacing"])
        self.rows = node.get("rows", "level")
        self.pattern = node.get("pattern", "square")
        self.top_row_depth = read.length(node["top_row_depth"])
        self.inclination = read.angle(node["inclination"])
        lengths = node["lengths"]
        self.lengths = [read.length(v) for v in (lengths if isinstance(lengths, list) else [lengths])]
        self.hole = read.length(node["hole"])
        self.corner_rows = node.get("corner_rows", "continuous")
        tests = node.get("test_nails") or {}
        self.verification = int(tests.get("verification", 0))
        self.verification_per = tests.get("verification_per", "section")
        self.proof = read.ratio(tests.get("proof", 0))
        self.spread = tests.get("proof_marks", "engineer") == "spread"
        self.window = max(self.hs, rules.get("moved_gap_max") or 0) / 2

    def length_of_row(self, row):
        return self.lengths[min(max(int(row), 1), len(self.lengths)) - 1]


class Wall:
    def __init__(self, node, read, lines, rules):
        self.name = str(node["name"])
        self.line = lines[str(node["layout_line"])] if "layout_line" in node else next(iter(lines.values()))
        self.side = 1 if node["retained_side"] == "right" else -1
        self.start, self.end = (read.station(v) for v in node["stations"])
        self.face_offset = read.length(node.get("face_offset", 0))
        batter = node.get("batter")
        self.slope = math.tan(math.radians(read.angle(batter["angle"]))) if batter else 0.0
        self.batter_elevation = read.length(batter["elevation"]) if batter else 0.0
        self.top = Profile([(read.station(s), read.length(z)) for s, z in node["top"]])
        self.corners = [c for c in self.line.corners if self.start < c[0] < self.end]
        self.bottom = self.read_bottom(node, read)
        self.sections = [Section(n, read, rules) for n in node["sections"]]
        limits = [self.start] + [c[0] for c in self.corners] + [self.end]
        self.legs = list(zip(limits, limits[1:]))

    def read_bottom(self, node, read):
        bottom = node["bottom"]
        if "steps" in bottom:
            steps = [(read.station(s), read.length(z)) for s, z in bottom["steps"]]
        else:
            steps = self.steps_from_grade(node, bottom["from_grade"], read)
        points = []
        for k, (s, z) in enumerate(steps):
            if k:
                points.append((s, steps[k - 1][1]))
            points.append((s, z))
        points.append((max(self.end, steps[-1][0]), steps[-1][1]))
        return Profile(points)

    def steps_from_grade(self, node, spec, read):
        grade = Profile([(read.station(s), read.length(z)) for s, z in node["finished_grade"]])
        embedment, rise, datum = read.length(spec["embedment"]), read.length(spec["rise"]), read.length(spec.get("datum", 0))
        width, first = read.length(node["panels"]["width"]), read.station(node["panels"].get("first_break", node["stations"][0]))
        limits = [self.start] + [c[0] for c in self.corners] + [self.end]
        breaks = []
        for k, (a, b) in enumerate(zip(limits, limits[1:])):
            origin = first if k == 0 else a
            j = math.ceil((a - origin) / width - 1e-9)
            breaks.append(a)
            while origin + j * width < b - 1e-9:
                if origin + j * width > a + 1e-9:
                    breaks.append(origin + j * width)
                j += 1
        breaks.append(self.end)
        steps = []
        for a, b in zip(breaks, breaks[1:]):
            ways = [grade.at(a), grade.at(b, -1)]
            for s in grade.stations():
                if a < s < b:
                    ways += [grade.at(s), grade.at(s, -1)]
            steps.append((a, datum + math.floor((min(ways) - embedment - datum) / rise + 1e-9) * rise))
        return steps

    def offset_at(self, z):
        return self.face_offset + (z - self.batter_elevation) * self.slope

    def normal(self, s):
        t = self.line.tangent(s)
        return -t[1] * self.side, t[0] * self.side

    def face_point(self, s, z):
        (n, e), (nn, ne), off = self.line.point(s), self.normal(s), self.offset_at(z)
        return n + nn * off, e + ne * off, z

    def direction(self, s, splay, inclination):
        a, i = math.radians(splay), math.radians(inclination)
        (nn, ne), (tn, te) = self.normal(s), self.line.tangent(s)
        c = math.cos(i)
        return c * (math.cos(a) * nn + math.sin(a) * tn), c * (math.cos(a) * ne + math.sin(a) * te), -math.sin(i)

    def leg(self, s):
        return sum(1 for c in self.corners if c[0] <= s + 1e-9)

    def cut(self, corner, z):
        """What the mitre takes from each leg at an elevation."""
        return self.offset_at(z) * math.tan(corner[1] * self.side / 2)

    def along_face(self, s0, s1, z):
        """Distance along the face from s0 to s1 at an elevation; negative where s1 is down-station."""
        if s1 < s0:
            return -self.along_face(s1, s0, z)
        if self.line.start <= s0 and s1 <= self.line.end:
            total = 0.0
            for start, end, _, _, curvature in self.line.pieces:
                length = min(end, s1) - max(start, s0)
                if length > 0:
                    total += length * (1 - curvature * self.side * self.offset_at(z))
        else:
            total = s1 - s0
        # What stands at the corner's own station stands at the mitre: it takes one leg's cut only.
        return total - sum((2 if s0 < c[0] < s1 else 1) * self.cut(c, z) for c in self.corners if s0 <= c[0] <= s1 and s0 < s1)

    def from_corner(self, corner, s, z):
        """Distance along the face from the mitre of a corner to a head, on the head's own leg."""
        total = 0.0
        low, high = min(s, corner[0]), max(s, corner[0])
        for start, end, _, _, curvature in self.line.pieces:
            length = min(end, high) - max(start, low)
            if length > 0:
                total += length * (1 - curvature * self.side * self.offset_at(z))
        return total - self.cut(corner, z)

    def section_of(self, name):
        return next(s for s in self.sections if s.name == name)


DEFAULTS_FEET = dict(obstruction=0.5, nail=0.5, boundary=1.0, top_max=2.5, bottom_max=3.0, min_gap=2.0, corner_clear=1.0, edge_min=1.0,
                     shift_step=0.25, bar_projection=0.5, length_increment=1.0)
DEFAULTS_METRES = dict(obstruction=0.15, nail=0.15, boundary=0.3, top_max=0.75, bottom_max=0.9, min_gap=0.6, corner_clear=0.3,
                       edge_min=0.3, shift_step=0.05, bar_projection=0.15, length_increment=0.5)


def read_rules(node, read):
    rules = dict(DEFAULTS_METRES if read.unit == "m" else DEFAULTS_FEET)
    rules.update(drift=0.0, field_tolerance=10.0, step=1.0, maximum=30.0, inclination=(5.0, 25.0), lengthen=True, moved_gap_max=None)
    node = dict(node or {})
    for key, value in (node.pop("clearance", None) or {}).items():
        rules[key] = read.length(value)
    for key, value in (node.pop("redirect", None) or {}).items():
        if key == "inclination":
            rules[key] = tuple(read.angle(v) for v in value)
        elif key == "lengthen":
            rules[key] = bool(value)
        else:
            rules[key] = read.angle(value)
    for key, value in node.items():
        rules[key] = read.ratio(value) if key == "drift" else read.length(value)
    return rules


class Project:
    def __init__(self, path):
        with open(path, encoding="utf-8") as file:
            self.node = node = yaml.safe_load(file)
        self.unit = node["project"]["units"]
        read = self.read = Reader(self.unit)
        self.quantum = read.quantum
        self.rules = read_rules(node.get("rules"), read)
        self.lines = {str(n["name"]): Line(n, read) for n in node["layout_lines"]}
        self.walls = [Wall(n, read, self.lines, self.rules) for n in node["walls"]]
        self.pinned = bool(node.get("fixed") or node.get("no_nails") or node.get("accept") or node.get("openings"))
        self.obstructions = [self.obstruction(n) for n in node.get("obstructions") or []]

    def wall(self, name):
        return next(w for w in self.walls if w.name == name)

    def point(self, node, owner):
        """Plan point of `{station, offset}`, `{northing, easting}` or `[station, offset]`."""
        read = self.read
        if isinstance(node, list):
            node = {"station": node[0], "offset": node[1]}
        if "northing" in node:
            return read.length(node["northing"]), read.length(node["easting"])
        wall_name = node.get("wall", owner.get("wall"))
        line_name = node.get("layout_line", owner.get("layout_line"))
        if wall_name is not None:
            wall = self.wall(str(wall_name))
            line, side = wall.line, wall.side
        else:
            line = self.lines[str(line_name)] if line_name is not None else next(iter(self.lines.values()))
            side = next(w.side for w in self.walls if w.line is line)
        return line.offset_point(read.station(node["station"]), read.length(node.get("offset", 0)) * side)

    def point3(self, node, owner):
        return self.point(node, owner) + (self.read.length(node["elevation"]),)

    def obstruction(self, n):
        """(name, kind, list of solids); a solid is a tuple with its shape's word first."""
        read, kind, solids = self.read, n["kind"], []
        if kind in ("shaft", "pile"):
            radius = read.length(n["diameter"]) / 2
            if "axis" in n:
                a, b = (self.point3(p, n) for p in n["axis"])
            else:
                plan = self.point(n["at"], n)
                a, b = plan + (read.length(n["top"]),), plan + (read.length(n["bottom"]),)
            solids.append(("cylinder", a, b, radius))
        elif kind == "solid":
            footprint = [self.point(p, n) for p in n["footprint"]]
            solids.append(("prism", footprint, read.length(n["bottom"]), read.length(n["top"])))
        elif kind == "beam":
            a, b = self.point(n["from"], n), self.point(n["to"], n)
            half = read.length(n["width"]) / 2
            long = math.hypot(b[0] - a[0], b[1] - a[1])
            x, y = -(b[1] - a[1]) / long * half, (b[0] - a[0]) / long * half
            footprint = [(a[0] + x, a[1] + y), (b[0] + x, b[1] + y), (b[0] - x, b[1] - y), (a[0] - x, a[1] - y)]
            solids.append(("prism", footprint, read.length(n["bottom"]), read.length(n["top"])))
        elif kind == "pipe":
            lift = read.length(n["bore"]) / 2 if n.get("elevation_is") == "invert" else 0.0
            points = [self.point3(p, n) for p in n["points"]]
            points = [(a, b, c + lift) for a, b, c in points]
            solids += [("capsule", a, b, read.length(n["diameter"]) / 2) for a, b in zip(points, points[1:])]
        elif kind == "boundary":
            points = [self.point(p, n) for p in n["points"]]
            solids += [("boundary", a, b) for a, b in zip(points, points[1:])]
        else:
            raise ValueError(f"unknown kind {kind}")
        return str(n["name"]), kind, solids
