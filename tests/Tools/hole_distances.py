"""Clear distances and drilling margins of holes, by one-dimensional minimum search: slow, plain, and sharing nothing with the program."""
import math

GOLDEN = (math.sqrt(5) - 1) / 2


class Hole:
    def __init__(self, head, direction, length, radius, drift):
        self.head, self.direction, self.length, self.radius, self.drift = head, direction, length, radius, drift
        self.tip = self.at(length)
        self.middle = self.at(length / 2)
        self.reach = length / 2 + radius + drift * length

    def at(self, u):
        h, d = self.head, self.direction
        return h[0] + d[0] * u, h[1] + d[1] * u, h[2] + d[2] * u

    def radius_at(self, u):
        return self.radius + self.drift * u


def dot(a, b):
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def minus(a, b):
    return a[0] - b[0], a[1] - b[1], a[2] - b[2]


def length_of(a):
    return math.sqrt(dot(a, a))


def least(function, low, high, rounds=52):
    """Least value of a function with one valley on an interval: (value, place)."""
    a, b = low, high
    x1, x2 = b - GOLDEN * (b - a), a + GOLDEN * (b - a)
    f1, f2 = function(x1), function(x2)
    for _ in range(rounds):
        if f1 <= f2:
            b, x2, f2 = x2, x1, f1
            x1 = b - GOLDEN * (b - a)
            f1 = function(x1)
        else:
            a, x1, f1 = x1, x2, f2
            x2 = a + GOLDEN * (b - a)
            f2 = function(x2)
    return min((function(low), low), (function(high), high), (f1, x1), (f2, x2))


def least_of_many_valleys(function, low, high, samples=96):
    step = (high - low) / samples
    values = [function(low + k * step) for k in range(samples + 1)]
    best = (values[0], low)
    valleys = [k for k in range(samples + 1)
               if (k == 0 or values[k] <= values[k - 1]) and (k == samples or values[k] <= values[k + 1])]
    for k in sorted(valleys, key=lambda k: values[k])[:4]:
        best = min(best, least(function, max(low, low + (k - 1) * step), min(high, low + (k + 1) * step), 40))
    return best


def segment_distance(p, d, long1, q, e, long2):
    """Least distance of two segments given by start, unit direction and length: the best of the inner point and the four edges."""
    w = minus(p, q)
    b, pd, pe = dot(d, e), dot(w, d), dot(w, e)
    ends = []
    den = 1 - b * b
    if den > 1e-12:
        u, v = (b * pe - pd) / den, (pe - b * pd) / den
        if 0 <= u <= long1 and 0 <= v <= long2:
            ends.append((u, v))
    if not ends:
        for u in (0.0, long1):
            ends.append((u, min(max(pe + b * u, 0.0), long2)))
        for v in (0.0, long2):
            ends.append((min(max(b * v - pd, 0.0), long1), v))
    best = None
    for u, v in ends:
        x = (w[0] + d[0] * u - e[0] * v, w[1] + d[1] * u - e[1] * v, w[2] + d[2] * u - e[2] * v)
        value = length_of(x)
        if best is None or value < best:
            best = value
    return best


def axis_gap(h, g):
    """Distance of two holes' axes."""
    return segment_distance(h.head, h.direction, h.length, g.head, g.direction, g.length)


def holes_clear(h, g, gap=None):
    """Clear distance of two holes."""
    gap = axis_gap(h, g) if gap is None else gap
    if h.drift == 0 and g.drift == 0:
        return gap - h.radius - g.radius
    k = g.drift
    lead = k / math.sqrt(1 - k * k)

    def at(u):
        w = minus(h.at(u), g.head)
        along = dot(w, g.direction)
        away = math.sqrt(max(0.0, dot(w, w) - along * along))
        v = min(max(along + away * lead, 0.0), g.length)
        return math.hypot(away, along - v) - g.radius_at(v) - h.radius_at(u)

    return least(at, 0.0, h.length)[0]


def point_to_axis(x, g):
    w = minus(x, g.head)
    along = min(max(dot(w, g.direction), 0.0), g.length)
    return length_of((w[0] - g.direction[0] * along, w[1] - g.direction[1] * along, w[2] - g.direction[2] * along))


def plan_distance(x, a, b):
    """Distance in plan of a point and a segment."""
    vx, vy = b[0] - a[0], b[1] - a[1]
    size = vx * vx + vy * vy
    t = 0.0 if size == 0 else min(max(((x[0] - a[0]) * vx + (x[1] - a[1]) * vy) / size, 0.0), 1.0)
    return math.hypot(x[0] - a[0] - vx * t, x[1] - a[1] - vy * t)


def in_plan(x, polygon):
    inside = False
    for k, (n1, e1) in enumerate(polygon):
        n2, e2 = polygon[k - 1]
        if (e1 > x[1]) != (e2 > x[1]) and x[0] < (n2 - n1) * (x[1] - e1) / (e2 - e1) + n1:
            inside = not inside
    return inside


def box_sd(side, up):
    """Signed distance from those square to the axis and along it."""
    if side > 0 or up > 0:
        return math.hypot(max(side, 0.0), max(up, 0.0))
    return max(side, up)


def signed_distance(solid, x):
    kind = solid[0]
    if kind == "cylinder" or kind == "capsule":
        a, b, radius = solid[1:]
        axis = minus(b, a)
        long = length_of(axis)
        axis = (axis[0] / long, axis[1] / long, axis[2] / long)
        w = minus(x, a)
        along = dot(w, axis)
        away = math.sqrt(max(0.0, dot(w, w) - along * along))
        if kind == "cylinder":
            return box_sd(away - radius, max(-along, along - long))
        return math.hypot(away, along - min(max(along, 0.0), long)) - radius
    if kind == "prism":
        polygon, bottom, top = solid[1:]
        edge = min(plan_distance(x, polygon[k - 1], polygon[k]) for k in range(len(polygon)))
        return box_sd(-edge if in_plan(x, polygon) else edge, max(bottom - x[2], x[2] - top))
    return plan_distance(x, solid[1], solid[2])


def convex(solid):
    if solid[0] != "prism":
        return True
    polygon = solid[1]
    turns = []
    for k in range(len(polygon)):
        a, b, c = polygon[k - 2], polygon[k - 1], polygon[k]
        turns.append((b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]))
    return all(t >= -1e-9 for t in turns) or all(t <= 1e-9 for t in turns)


def solid_ball(solid):
    """A ball around a solid, for quick lower limits; None for a surface without end."""
    if solid[0] in ("cylinder", "capsule"):
        a, b, radius = solid[1:]
        middle = tuple((p + q) / 2 for p, q in zip(a, b))
        return middle, length_of(minus(a, b)) / 2 + radius
    if solid[0] == "prism":
        polygon, bottom, top = solid[1:]
        middle = (sum(p[0] for p in polygon) / len(polygon), sum(p[1] for p in polygon) / len(polygon), (bottom + top) / 2)
        return middle, max(math.hypot(math.hypot(p[0] - middle[0], p[1] - middle[1]), (top - bottom) / 2) for p in polygon)
    return None


def solid_floor(h, solid):
    """A lower limit of the clear distance of a hole and a solid."""
    ball = solid_ball(solid)
    if ball is None:
        a, b = solid[1], solid[2]
        far = math.hypot(h.middle[0] - (a[0] + b[0]) / 2, h.middle[1] - (a[1] + b[1]) / 2)
        return far - math.hypot(a[0] - b[0], a[1] - b[1]) / 2 - h.reach
    return length_of(minus(h.middle, ball[0])) - ball[1] - h.reach


def solid_clear(h, solid):
    search = least if convex(solid) else least_of_many_valleys
    return search(lambda u: signed_distance(solid, h.at(u)) - h.radius_at(u), 0.0, h.length)[0]


def stray_ratio(h, distance, other_radius):
    """Least free(u) / u over the hole's depth."""
    return least(lambda u: (distance(h.at(u)) - h.radius - other_radius) / u, 1e-6 * h.length, h.length)[0]


def margin_degrees(ratio):
    return math.degrees(math.asin(max(-1.0, min(1.0, ratio))))


def polygon_distance(x, corners, normal):
    """Distance of a point and a flat convex polygon in space."""
    height = dot(minus(x, corners[0]), normal)
    foot = (x[0] - normal[0] * height, x[1] - normal[1] * height, x[2] - normal[2] * height)
    signs = []
    for k in range(len(corners)):
        a, b = corners[k - 1], corners[k]
        edge, w = minus(b, a), minus(foot, a)
        cross = (edge[1] * w[2] - edge[2] * w[1], edge[2] * w[0] - edge[0] * w[2], edge[0] * w[1] - edge[1] * w[0])
        signs.append(dot(cross, normal))
    if all(s >= 0 for s in signs) or all(s <= 0 for s in signs):
        return abs(height)
    best = math.inf
    for k in range(len(corners)):
        a, b = corners[k - 1], corners[k]
        edge, w = minus(b, a), minus(x, a)
        size = dot(edge, edge)
        t = min(max(dot(edge, w) / size, 0.0), 1.0) if size > 0 else 0.0
        best = min(best, length_of((w[0] - edge[0] * t, w[1] - edge[1] * t, w[2] - edge[2] * t)))
    return best


def face_clear(h, corners, normal):
    return least(lambda u: polygon_distance(h.at(u), corners, normal) - h.radius_at(u), 0.0, h.length)[0]


def clip(corners, point, normal):
    """The part of a polygon on the negative side of a plane."""
    out = []
    for k in range(len(corners)):
        a, b = corners[k - 1], corners[k]
        da, db = dot(minus(a, point), normal), dot(minus(b, point), normal)
        if (da <= 0) != (db <= 0):
            t = da / (da - db)
            out.append(tuple(p + (q - p) * t for p, q in zip(a, b)))
        if db <= 0:
            out.append(b)
    return out


def face_facets(wall):
    """Flat pieces of a wall's face: (leg, corners, normal, middle, reach). Arcs are cut fine."""
    facets = []
    steps = sorted(set(wall.top.stations() + wall.bottom.stations() + [p[0] for p in wall.line.pieces] + [p[1] for p in wall.line.pieces]))
    zs = [p[1] for p in wall.top.points + wall.bottom.points]
    for leg, (a, b) in enumerate(wall.legs):
        stops = [a] + [s for s in steps if a < s < b] + [b]
        reach = [max(0.0, *(-wall.cut(c, z) for z in zs)) if c else 0.0
                 for c in (wall.corners[leg - 1] if leg > 0 else None, wall.corners[leg] if leg < len(wall.corners) else None)]
        for s0, s1 in zip(stops, stops[1:]):
            curvature = wall.line.piece((s0 + s1) / 2)[4]
            count = max(1, math.ceil((s1 - s0) * math.sqrt(abs(curvature) / (8 * 0.0005)))) if curvature else 1
            for j in range(count):
                x0, x1 = s0 + (s1 - s0) * j / count, s0 + (s1 - s0) * (j + 1) / count
                bottoms = wall.bottom.at(x0), wall.bottom.at(x1, -1)
                tops = wall.top.at(x0), wall.top.at(x1, -1)
                y0 = x0 - reach[0] if x0 == a else x0
                y1 = x1 + reach[1] if x1 == b else x1
                corners = [place(wall, x0, x1, y, z) for y, z in
                           ((y0, bottoms[0]), (y1, bottoms[1]), (y1, tops[1]), (y0, tops[0]))]
                for k, sign in ((leg - 1, -1), (leg, 1)):
                    if 0 <= k < len(wall.corners) and corners:
                        corners = clip(corners, wall.line.point(wall.corners[k][0]) + (0.0,), mitre_normal(wall, k, sign))
                if len(corners) >= 3:
                    add_facet(facets, leg, corners)
    return facets


def place(wall, x0, x1, y, z):
    """Face point at y on the piece between x0 and x1, which goes on straight beyond them."""
    inside = min(max(y, x0), x1)
    nudge = min(1e-7, (x1 - x0) / 4)
    held = min(max(inside, x0 + nudge), x1 - nudge)
    t = wall.line.tangent(held)
    n, e = wall.line.point(held)
    far, off = y - held, wall.offset_at(z)
    return n + t[0] * far - t[1] * wall.side * off, e + t[1] * far + t[0] * wall.side * off, z


def mitre_normal(wall, k, sign):
    s = wall.corners[k][0]
    before, after = wall.line.tangent(s - 1e-6), wall.line.tangent(s)
    return (before[0] + after[0]) * sign, (before[1] + after[1]) * sign, 0.0


def add_facet(facets, leg, corners):
    normal = (0.0, 0.0, 0.0)
    for k in range(1, len(corners) - 1):
        a, b = minus(corners[k], corners[0]), minus(corners[k + 1], corners[0])
        cross = (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])
        normal = tuple(p + q for p, q in zip(normal, cross))
    size = length_of(normal)
    if size < 1e-9:
        return
    middle = tuple(sum(c[k] for c in corners) / len(corners) for k in range(3))
    facets.append((leg, corners, tuple(v / size for v in normal), middle, max(length_of(minus(c, middle)) for c in corners)))
