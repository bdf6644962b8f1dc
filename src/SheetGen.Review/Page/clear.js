import { add, cross, dot, size, sub, times, unitOf } from "./vectors.js";

/**
 * Clear distances as the program measures them, for pictures of what would be if a nail were turned: the least of distance less radii,
 * convex in the depth and so found by halving. Points are northing, easting, elevation. What stands in the results is the checker's own.
 */

export const hole = (head, direction, length, radius, drift) => ({ head, d: direction, length, radius, drift });
const at = (h, u) => add(h.head, times(h.d, u));
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Least of a convex function between two places, to about 1e-9 of their distance. */
function leastOf(f, low, high) {
  let a = low, b = high, c = b - GOLDEN * (b - a), d = a + GOLDEN * (b - a), fc = f(c), fd = f(d);
  for (let i = 0; i < 44; i++) {
    if (fc < fd) [b, d, fd, c] = [d, c, fc, d - GOLDEN * (d - a)], fc = f(c);
    else [a, c, fc, d] = [c, d, fd, c + GOLDEN * (b - c)], fd = f(d);
  }
  return Math.min(fc, fd, f(low), f(high));
}

/** Distance of a point from a hole's wall: closed form of the cone's slope. */
function toHole(p, h) {
  const w = sub(p, h.head), along = dot(w, h.d), across = Math.sqrt(Math.max(0, dot(w, w) - along * along)), k = h.drift;
  const v = Math.max(0, Math.min(h.length, k > 0 ? along + across * k / Math.sqrt(1 - k * k) : along));
  return Math.hypot(across, along - v) - h.radius - k * v;
}

function segments(a, b) {
  const r = sub(a.head, b.head), c = dot(a.d, r), f = dot(b.d, r), cos = dot(a.d, b.d), turn = 1 - cos * cos;
  let u = turn > 1e-12 ? Math.max(0, Math.min(a.length, (cos * f - c) / turn)) : 0;
  let v = cos * u + f;
  if (v < 0 || v > b.length) {
    v = Math.max(0, Math.min(b.length, v));
    u = Math.max(0, Math.min(a.length, cos * v - c));
  }
  return size(sub(at(a, u), at(b, v)));
}

export function betweenHoles(a, b) {
  const axes = segments(a, b) - a.radius - b.radius;
  if (a.drift === 0 && b.drift === 0) return axes;
  return leastOf(u => toHole(at(a, u), b) - a.radius - a.drift * u, 0, a.length);
}

function toEdges(p, points, closed) {
  let least = Infinity;
  for (let i = 0; i < points.length - (closed ? 0 : 1); i++) {
    const a = points[i], w = sub(points[(i + 1) % points.length], a), k = dot(w, w);
    const t = k > 0 ? Math.max(0, Math.min(1, dot(sub(p, a), w) / k)) : 0;
    least = Math.min(least, size(sub(p, add(a, times(w, t)))));
  }
  return least;
}

function toPrism(p, s) {
  const plan = s.footprint.map(q => [q[0], q[1], 0]), flat = [p[0], p[1], 0];
  let area = 0;
  for (let i = 1; i + 1 < plan.length; i++) area += cross(sub(plan[i], plan[0]), sub(plan[i + 1], plan[0]))[2];
  let inside = plan.length > 2 && Math.abs(area) > 0 ? -Infinity : Infinity;
  if (inside < 0) {
    for (let i = 0; i < plan.length; i++) {
      const w = sub(plan[(i + 1) % plan.length], plan[i]), run = size(w);
      if (run > 0) inside = Math.max(inside, -Math.sign(area) * cross(w, sub(flat, plan[i]))[2] / run);
    }
  }
  const beside = inside < 0 ? inside : toEdges(flat, plan, true), beyond = Math.abs(p[2] - (s.z[0] + s.z[1]) / 2) - (s.z[1] - s.z[0]) / 2;
  return beside > 0 && beyond > 0 ? Math.hypot(beside, beyond) : Math.max(beside, beyond);
}

function toCylinder(p, s) {
  const way = sub(s.b, s.a), axis = unitOf(way), w = sub(p, times(add(s.a, s.b), 0.5)), along = dot(w, axis), across = Math.sqrt(Math.max(0, dot(w, w) - along * along));
  const end = Math.abs(along) - size(way) / 2, side = across - s.r;
  return end > 0 && side > 0 ? Math.hypot(end, side) : Math.max(end, side);
}

function toPanel(p, points) {
  let n = [0, 0, 0];
  for (let i = 1; i + 1 < points.length; i++) n = add(n, cross(sub(points[i], points[0]), sub(points[i + 1], points[0])));
  n = unitOf(n, [0, 0, 0]);
  let over = size(n) > 0;
  for (let i = 0; i < points.length && over; i++) over = dot(cross(sub(points[(i + 1) % points.length], points[i]), n), sub(p, points[i])) <= 0;
  return over ? Math.abs(dot(sub(p, points[0]), n)) : toEdges(p, points, true);
}

const SIGNED = {
  prism: toPrism,
  cylinder: toCylinder,
  capsule: (p, s) => toHole(p, hole(s.a, unitOf(sub(s.b, s.a)), size(sub(s.b, s.a)), s.r, 0)),
  plane: (p, s) => toEdges([p[0], p[1], 0], [[...s.a, 0], [...s.b, 0]], false),
  panel: (p, s) => toPanel(p, s.points),
};

export const toSolid = (h, s) => leastOf(u => SIGNED[s.shape](at(h, u), s) - h.radius - h.drift * u, 0, h.length);

/** Direction of a hole: n the unit horizontal normal into the soil, t the unit tangent up-station, angles in degrees. */
export function directionOf(n, t, splay, inclination) {
  const a = splay * Math.PI / 180, i = inclination * Math.PI / 180;
  return add(times(add(times(n, Math.cos(a)), times(t, Math.sin(a))), Math.cos(i)), [0, 0, -Math.sin(i)]);
}
