"""Rules 1 to 3, rows, directions, lengths and statuses of a finished layout, checked nail by nail from the contract's words."""
import math

CLEAR, GREY, BROKEN = 0, 1, 2


class Nail:
    """A row of nails.csv with its figures as numbers."""

    def __init__(self, fields, project):
        self.fields = fields
        self.mark, self.kind, self.status = fields["nail"], fields["kind"], fields["status"]
        self.wall = project.wall(fields["wall"])
        self.section = self.wall.section_of(fields["section"])
        self.row = float(fields["row"])
        for key, name in (("s", "station"), ("z", "elevation"), ("splay", "splay_deg"), ("inclination", "inclination_deg"), ("length", "length")):
            setattr(self, key, float(fields[name]))
        self.leg = self.wall.leg(self.s)
        self.change = self.inclination - self.section.inclination
        self.production = self.kind != "verification"
        self.depth = self.wall.top.at(self.s) - self.z

    def turned(self):
        return abs(self.splay) > 1e-9 or abs(self.change) > 1e-9


def beyond(nail, rules):
    return abs(nail.splay) > rules["field_tolerance"] + 1e-9 or abs(nail.change) > rules["field_tolerance"] + 1e-9


def sides_of(wall, s):
    steps = wall.top.stations() + wall.bottom.stations()
    return (-1, 1) if any(abs(s - p) < 1e-7 for p in steps) else (1,)


def excess(nails, section, wall, s, side, rules, reading):
    """By how much the worst part of rule 1 is broken at s by the nails of N(s); infinity where there is none."""
    if not nails:
        return math.inf
    by_depth = section.rows == "parallel" if reading == 0 else section.rows != "level"
    literal = sorted(nails, key=lambda n: n.depth if by_depth else -n.z)
    if reading == 0:
        highest, lowest = max(nails, key=lambda n: n.z), min(nails, key=lambda n: n.z)
    else:
        highest, lowest = literal[0], literal[-1]
    worst = max(highest.depth - rules["top_max"],
                lowest.z - wall.bottom.at(lowest.s) - rules["bottom_max"],
                lowest.z - wall.bottom.at(s, side) - rules["bottom_max"])
    for upper, lower in zip(literal, literal[1:]):
        gap = lower.depth - upper.depth if by_depth else upper.z - lower.z
        if section.rows == "top_parallel" and reading == 1 and not (upper.row == 1 and lower.row == 1):
            gap = upper.z - lower.z
        worst = max(worst, gap - section.vs)
    return worst


class Cover:
    """Rule 1 of one section on one leg."""

    def __init__(self, wall, section, leg, nails, project):
        self.wall, self.section, self.project = wall, section, project
        self.tolerance = 2 * project.quantum
        self.start, self.end = max(section.start, wall.legs[leg][0]), min(section.end, wall.legs[leg][1])
        self.nails = sorted((n for n in nails if n.wall is wall and n.section is section and n.leg == leg and n.production), key=lambda n: n.s)
        self.leg = leg
        self.places = [n.s for n in self.nails]

    def height(self, s, side):
        return self.wall.top.at(s, side) - self.wall.bottom.at(s, side)

    def state(self, s, side=1):
        """CLEAR, GREY (a tolerance or a second reading decides) or BROKEN."""
        wall, rules, tolerance = self.wall, self.project.rules, self.tolerance
        height = self.height(s, side)
        if height < 2 * rules["edge_min"] - tolerance:
            return CLEAR
        found, nominal = set(), set()
        for extra in (0.0, tolerance):
            near = [n for n in self.nails if abs(n.s - s) <= self.section.window + extra + 1e-9]
            for reading in (0, 1):
                found.add(excess(near, self.section, wall, s, side, rules, reading))
            if extra == 0:
                nominal = set(found)
        if max(nominal) <= 1e-6:
            return CLEAR
        if height < 2 * rules["edge_min"] + tolerance or self.beyond_mitre(s):
            return GREY
        return BROKEN if min(found) > tolerance else GREY

    def beyond_mitre(self, s):
        """Whether the mitre takes some of the face at this station, so that no nail could stand there."""
        for k in (self.leg - 1, self.leg):
            if 0 <= k < len(self.wall.corners):
                corner = self.wall.corners[k]
                cut = max(self.wall.cut(corner, z) for z in (self.wall.top.at(s), self.wall.bottom.at(s)))
                if cut > 0 and abs(s - corner[0]) <= cut + self.tolerance:
                    return True
        return False

    def samples(self):
        half = self.section.window
        events = {self.start, self.end}
        for s in self.places:
            events |= {s, s - half, s + half}
        events |= set(self.wall.top.stations()) | set(self.wall.bottom.stations())
        events = sorted(e for e in events if self.start <= e <= self.end)
        places = set(events)
        for a, b in zip(events, events[1:]):
            count = max(2, math.ceil((b - a) / (50 * self.project.quantum)))
            places |= {a + (b - a) * k / count for k in range(count)}
            places |= {a + min(0.3 * self.tolerance, (b - a) / 3), b - min(0.3 * self.tolerance, (b - a) / 3)}
        return sorted(places)

    def broken_stretches(self):
        """Stretches where rule 1 is broken beyond the tolerance, longer than it."""
        stretches, open_at, last = [], None, None
        for s in self.samples():
            sides = (1,) if s < self.end else (-1,)
            broken = all(self.state(s, side) == BROKEN for side in sides)
            if broken:
                open_at = s if open_at is None else open_at
                last = s
            elif open_at is not None:
                stretches.append((open_at, last))
                open_at = None
        if open_at is not None:
            stretches.append((open_at, last))
        return [(a, b) for a, b in stretches if b - a > self.tolerance]


def check_heads(nail, project, say, note):
    """Rule 2, the face's geometry and the rounding of one nail's head."""
    wall, rules, tolerance = nail.wall, project.rules, 2 * project.quantum
    for name, value in (("station", nail.s), ("elevation", nail.z)):
        steps = value / project.quantum
        if abs(steps - round(steps)) > 1e-3:
            say(f"{nail.mark}: {name} {value} is not rounded to the quantum")
    if not nail.section.start - 1e-6 <= nail.s <= nail.section.end + 1e-6:
        say(f"{nail.mark}: station {nail.s} is outside its section {nail.section.start} to {nail.section.end}")
    head = wall.face_point(nail.s, nail.z)
    stated = tuple(float(nail.fields[k]) for k in ("northing", "easting", "elevation"))
    if math.dist(head, stated) > 2e-3:
        say(f"{nail.mark}: head {stated} is {math.dist(head, stated):.4f} from the face point {head}")
    d = wall.direction(nail.s, nail.splay, nail.inclination)
    tip = tuple(h + nail.length * x for h, x in zip(head, d))
    stated = tuple(float(nail.fields[k]) for k in ("tip_northing", "tip_easting", "tip_elevation"))
    if math.dist(tip, stated) > 2e-3:
        say(f"{nail.mark}: tip {stated} is {math.dist(tip, stated):.4f} from {tip}")
    for side in sides_of(wall, nail.s):
        if nail.z > wall.top.at(nail.s, side) + tolerance:
            say(f"{nail.mark}: head {nail.z} above the top {wall.top.at(nail.s, side):.4f}", "edge", nail)
        if nail.z < wall.bottom.at(nail.s, side) - tolerance:
            say(f"{nail.mark}: head {nail.z} below the bottom {wall.bottom.at(nail.s, side):.4f}", "edge", nail)
    flat, sloped = outline_distance(nail)
    if flat < rules["edge_min"] - tolerance:
        if sloped < rules["edge_min"] - tolerance:
            say(f"{nail.mark}: {flat:.4f} from the outline of the face, edge_min {rules['edge_min']}", "edge", nail)
        else:
            note(f"{nail.mark}: {flat:.4f} from the outline in elevation, {sloped:.4f} measured along the batter")
    for corner in wall.corners:
        if nail.leg not in (wall.corners.index(corner), wall.corners.index(corner) + 1):
            continue
        off = wall.from_corner(corner, nail.s, nail.z)
        if off < -tolerance:
            say(f"{nail.mark}: head stands {-off:.4f} beyond the mitre of the corner at {corner[0]}", "edge", nail)
        elif off < rules["corner_clear"] - tolerance:
            say(f"{nail.mark}: {off:.4f} from the corner at {corner[0]}, corner_clear {rules['corner_clear']}", "edge", nail)


def outline_distance(nail):
    """Least distance of a head to top, bottom and ends of the face: measured in elevation, and along a battered face."""
    wall = nail.wall
    best = [math.inf, math.inf]
    lean = math.sqrt(1 + wall.slope ** 2)
    lines = []
    for profile in (wall.top, wall.bottom):
        points = [(wall.start, profile.at(wall.start))] + [p for p in profile.points if wall.start <= p[0] <= wall.end]
        points.append((wall.end, profile.at(wall.end, -1)))
        lines.append(points)
    for s, side in ((wall.start, 1), (wall.end, -1)):
        lines.append([(s, wall.bottom.at(s, side)), (s, wall.top.at(s, side))])
    for points in lines:
        for a, b in zip(points, points[1:]):
            if max(a[0], b[0]) < nail.s - 20 * wall_unit(wall) or min(a[0], b[0]) > nail.s + 20 * wall_unit(wall):
                continue
            xs = [wall.along_face(nail.s, p[0], nail.z) for p in (a, b)]
            for k, factor in enumerate((1.0, lean)):
                best[k] = min(best[k], to_segment((xs[0], (a[1] - nail.z) * factor), (xs[1], (b[1] - nail.z) * factor)))
    return best


def wall_unit(wall):
    return max(s.hs for s in wall.sections)


def to_segment(a, b):
    vx, vy = b[0] - a[0], b[1] - a[1]
    size = vx * vx + vy * vy
    t = 0.0 if size == 0 else min(max(-(a[0] * vx + a[1] * vy) / size, 0.0), 1.0)
    return math.hypot(a[0] + vx * t, a[1] + vy * t)


def check_direction(nail, project, say, note):
    rules, section = project.rules, nail.section
    step = rules["step"]
    if not whole(nail.splay / step):
        say(f"{nail.mark}: splay {nail.splay} is no whole step of {step}")
    if not whole(nail.change / step):
        (note if whole(nail.inclination / step) else say)(f"{nail.mark}: change of inclination {nail.change} is no whole step of {step}")
    if abs(nail.splay) > rules["maximum"] + 1e-9 or abs(nail.change) > rules["maximum"] + 1e-9:
        say(f"{nail.mark}: splay {nail.splay}, change of inclination {nail.change} over the maximum {rules['maximum']}")
    low, high = rules["inclination"]
    if abs(nail.change) > 1e-9 and not low - 1e-9 <= nail.inclination <= high + 1e-9:
        say(f"{nail.mark}: inclination {nail.inclination} outside {low} to {high}")
    if beyond(nail, rules):
        expected = ("noted",)
    elif nail.turned():
        expected = ("redirected",)
    else:
        expected = ("grid", "moved", "unresolved")
    if nail.status not in expected:
        say(f"{nail.mark}: status {nail.status} with splay {nail.splay}, change of inclination {nail.change:.3f}: expected {'/'.join(expected)}")
    if nail.status not in ("grid",) and nail.production and not nail.fields["reason"].strip():
        say(f"{nail.mark}: status {nail.status} without a reason")
    check_length(nail, rules, say, note)


def check_length(nail, rules, say, note):
    if nail.kind == "verification":
        return
    design = nail.section.length_of_row(max(1, math.floor(nail.row)))
    if not beyond(nail, rules) or not rules["lengthen"]:
        if abs(nail.length - design) > 1e-6:
            say(f"{nail.mark}: length {nail.length}, design length {design}")
        return
    reach = math.cos(math.radians(nail.section.inclination)) / (math.cos(math.radians(nail.inclination)) * math.cos(math.radians(nail.splay)))
    needed, part = max(design, design * reach), rules["length_increment"]
    expected = math.ceil(needed / part - 1e-7) * part
    if abs(nail.length - expected) > 1e-6:
        if needed == design and abs(nail.length - design) < 1e-6:
            note(f"{nail.mark}: length {nail.length} kept; rounded up to the increment it would be {expected}")
        else:
            say(f"{nail.mark}: length {nail.length}, needs {needed:.4f}, so {expected}")


def whole(value):
    return abs(value - round(value)) < 1e-6


def check_gaps(nails, project, say):
    """Rule 3: neighbours in a row, and nails on two sides of a section limit."""
    rules, tolerance = project.rules, 2 * project.quantum
    rows = {}
    for nail in nails:
        if nail.production:
            rows.setdefault((nail.wall.name, nail.section.name, nail.leg, nail.row), []).append(nail)
    for row in rows.values():
        row.sort(key=lambda n: n.s)
        for a, b in zip(row, row[1:]):
            gap = a.wall.along_face(a.s, b.s, (a.z + b.z) / 2)
            if max(gap, b.s - a.s) < rules["min_gap"] - tolerance:
                say(f"{a.mark}, {b.mark}: gap {gap:.4f} in the row, min_gap {rules['min_gap']}", "spacing", a, b)
    for wall in project.walls:
        for one, two in zip(wall.sections, wall.sections[1:]):
            before = [n for n in nails if n.wall is wall and n.section is one and n.production and n.s > one.end - 2 * rules["min_gap"]]
            after = [n for n in nails if n.wall is wall and n.section is two and n.production and n.s < two.start + 2 * rules["min_gap"]]
            for a in before:
                for b in after:
                    if a.leg == b.leg and abs(a.z - b.z) < min(one.vs, two.vs) / 2 - tolerance:
                        gap = max(b.s - a.s, wall.along_face(a.s, b.s, (a.z + b.z) / 2))
                        if gap < rules["min_gap"] - tolerance:
                            say(f"{a.mark}, {b.mark}: {gap:.4f} apart over the section limit at {one.end}, min_gap {rules['min_gap']}",
                                "spacing", a, b)
    return rows


def check_lattice(nails, project, note):
    """Heads stand a whole number of shift steps from a grid station; grid stations are those of unmoved nails, and on in whole spacings."""
    step, slack = project.rules["shift_step"], 1.5 * project.quantum
    for nail in nails:
        if not nail.production or nail.status in ("grid", "unresolved"):
            continue
        grid = {n.s for n in nails if n.section is nail.section and n.wall is nail.wall and n.leg == nail.leg and n.row == nail.row
                and n.status in ("grid", "unresolved")}
        spacings = {k * nail.section.hs for k in range(-3, 4)}
        far = [abs((nail.s - g - d) / step - round((nail.s - g - d) / step)) * step for g in grid for d in spacings if abs(nail.s - g) < 6 * nail.section.hs]
        if far and min(far) > slack:
            note(f"{nail.mark}: station {nail.s} is {min(far):.4f} off the lattice of shift_step {step}")


def check_rows(rows, project, say, note):
    """Rule 5: what a row keeps, and the fall from row to row."""
    tolerance = 2 * project.quantum
    levels = {}
    for (wall_name, section_name, leg, number), row in rows.items():
        wall = row[0].wall
        section = row[0].section
        follows = section.rows == "parallel" or (section.rows == "top_parallel" and number == 1)
        part = not whole(number)
        values = [n.depth if follows else n.z for n in row]
        # Both ends of a vertical step in the top count for a head within a quantum of it; edge_min keeps heads off it.
        if max(values) - min(values) > tolerance:
            others = [n.z if follows else n.depth for n in row]
            if part and max(others) - min(others) <= tolerance:
                note(f"{wall_name} {section_name} part row {number:g}: keeps its {'elevation' if follows else 'depth'}")
            else:
                say(f"{wall_name} {section_name} row {number:g} on leg {leg}: {'depth' if follows else 'elevation'} goes from "
                    f"{min(values):.4f} to {max(values):.4f}")
        if not part:
            levels[(wall_name, section_name, leg, int(number))] = (values[0], follows, section, wall)
    for (wall_name, section_name, leg, number), (value, follows, section, wall) in levels.items():
        below = levels.get((wall_name, section_name, leg, number + 1))
        if below and below[1] == follows:
            gap = below[0] - value if follows else value - below[0]
            if gap > section.vs + tolerance:
                say(f"{wall_name} {section_name} rows {number} and {number + 1} on leg {leg}: {gap:.4f} apart, vertical_spacing {section.vs}")
            if gap <= 0:
                say(f"{wall_name} {section_name} rows {number} and {number + 1} on leg {leg}: not counted from the top")
        if number == 1 and section.corner_rows == "continuous":
            expected = section.top_row_depth
            if not follows:
                stops = [section.start, section.end] + [s for s in wall.top.stations() if section.start < s < section.end]
                tops = [wall.top.at(s, side) for s in stops for side in (-1, 1)
                        if not (s == section.start and side < 0) and not (s == section.end and side > 0)]
                expected = max(tops) - section.top_row_depth
            if abs(value - expected) > tolerance:
                note(f"{wall_name} {section_name} row 1 on leg {leg}: {'depth' if follows else 'elevation'} {value:.4f}, expected {expected:.4f}")
        if section.corner_rows == "continuous" and not follows:
            other = levels.get((wall_name, section_name, leg + 1, number))
            if other and abs(other[0] - value) > tolerance:
                say(f"{wall_name} {section_name} row {number}: elevation {value:.4f} on leg {leg}, {other[0]:.4f} on leg {leg + 1}")
