import { doc, obstructions, walls } from "./data.js";
import { add, cross, sub, unitOf } from "./vectors.js";

/** Shapes of the wall in space as triangles and tubes. Space: x easting, y northing, z up, about the middle of the wall. */

const middle = (() => {
  const points = walls.flatMap(w => [...w.top3.flat(), ...w.bottom3.flat()]);
  return [1, 0, 2].map(i => {
    const values = points.map(p => p[i]);
    return (values.reduce((a, b) => Math.min(a, b), Infinity) + values.reduce((a, b) => Math.max(a, b), -Infinity)) / 2;
  });
})();

/** A point of the data in space. */
export const place = p => [p[1] - middle[0], p[0] - middle[1], (p[2] ?? 0) - middle[2]];
export const levelOf = z => z - middle[2];

/** A tube about the origin: position (x, y in radii; share of the length; along the axis in radii) and normal. Ends round, flat, or open for tubes that are seen about a pixel wide. */
export function tubeShape(sides, ends) {
  const round = ends === "round";
  const vertices = [], triangles = [], rings = [];
  const half = Math.SQRT1_2;
  const profile = ends === "open" ? [[1, 0, 0, 1, 0], [1, 1, 0, 1, 0]] : round
    ? [[0, 0, -1, 0, -1], [half, 0, -half, half, -half], [1, 0, 0, 1, 0], [1, 1, 0, 1, 0], [half, 1, half, half, half], [0, 1, 1, 0, 1]]
    : [[0, 0, 0, 0, -1], [1, 0, 0, 0, -1], [1, 0, 0, 1, 0], [1, 1, 0, 1, 0], [1, 1, 0, 0, 1], [0, 1, 0, 0, 1]];
  for (const [r, t, z, n, nz] of profile) {
    rings.push(vertices.length / 7);
    for (let i = 0; i < sides; i++) {
      const a = 2 * Math.PI * i / sides, c = Math.cos(a), s = Math.sin(a);
      vertices.push(c * r, s * r, t, z, c * n, s * n, nz);
    }
  }
  for (let k = 0; k + 1 < rings.length; k++) {
    if (ends === "flat" && (k === 1 || k === 3)) continue;
    for (let i = 0; i < sides; i++) {
      const j = (i + 1) % sides, [a, b, c, d] = [rings[k] + i, rings[k] + j, rings[k + 1] + i, rings[k + 1] + j];
      triangles.push(a, b, d, a, d, c);
    }
  }
  return { vertices: new Float32Array(vertices), triangles: new Uint16Array(triangles) };
}

/** Collects flat pieces: position, normal, colour name and id a vertex. */
export class Pieces {
  constructor() { this.items = []; }

  polygon(points, colour, alpha, id = 0) {
    let normal = [0, 0, 0];
    for (let i = 1; i + 1 < points.length; i++) normal = add(normal, cross(sub(points[i], points[0]), sub(points[i + 1], points[0])));
    normal = unitOf(normal);
    for (let i = 1; i + 1 < points.length; i++) for (const p of [points[0], points[i], points[i + 1]]) this.items.push({ p, normal, colour, alpha, id });
  }

  prism(footprint, bottom, top, colour, alpha, id) {
    const low = footprint.map(p => place([...p, bottom])), high = footprint.map(p => place([...p, top]));
    this.polygon(high, colour, alpha, id);
    this.polygon([...low].reverse(), colour, alpha, id);
    low.forEach((p, i) => {
      const j = (i + 1) % low.length;
      this.polygon([p, low[j], high[j], high[i]], colour, alpha, id);
    });
  }

  /** A band between two lines with the same number of points. */
  band(lower, upper, colour, alpha) {
    for (let i = 0; i + 1 < Math.min(lower.length, upper.length); i++) this.polygon([lower[i], lower[i + 1], upper[i + 1], upper[i]], colour, alpha);
  }
}

const heights = (() => {
  const z = walls.flatMap(w => [...w.top3.flat(), ...w.bottom3.flat(), ...(w.ground3 ?? []).flat()].map(p => p[2]));
  return [z.reduce((a, b) => Math.min(a, b), Infinity), z.reduce((a, b) => Math.max(a, b), -Infinity)];
})();

/** Tubes and pieces of everything but the nails; ids from firstId on, in the order of the obstructions. */
export function stillLife(firstId) {
  const solid = new Pieces(), clear = new Pieces(), flat = [], round = [];
  obstructions.forEach((o, k) => {
    const id = firstId + k;
    for (const s of o.solids) {
      if (s.shape === "prism") solid.prism(s.footprint, s.z[0], s.z[1], "thing", 1, id);
      else if (s.shape === "plane") {
        const [z0, z1] = [heights[0] - 2, heights[1] + 2];
        clear.polygon([place([...s.a, z0]), place([...s.b, z0]), place([...s.b, z1]), place([...s.a, z1])], "boundary", 0.22, id);
      } else (s.shape === "capsule" ? round : flat).push({ a: place(s.a), b: place(s.b), r: [s.r, s.r], colour: s.shape === "capsule" ? "pipe" : "thing", id, thing: o.name });
    }
  });
  for (const w of walls) {
    for (const leg of w.face) for (const panel of leg) clear.polygon(panel.map(place), "face", 0.34);
    const line = (legs, colour, r) => {
      for (const leg of legs ?? []) for (let i = 0; i + 1 < leg.length; i++) round.push({ a: place(leg[i]), b: place(leg[i + 1]), r: [r, r], colour, id: 0 });
    };
    const thin = (heights[1] - heights[0]) / 260;
    line(w.top3, "edge", thin);
    line(w.bottom3, "edge", thin);
    line(w.ground3, "ground", thin * 1.3);
    line(w.grade3, "grade", thin * 1.3);
    (w.ground3 ?? []).forEach((leg, i) => groundBehind(w, leg, i, clear));
  }
  for (const b of doc.borings) {
    let from = b.top;
    const thick = (heights[1] - heights[0]) / 50;
    b.layers.forEach((layer, i) => {
      flat.push({ a: place([...b.at, from]), b: place([...b.at, layer.to]), r: [thick, thick], colour: i % 2 ? "soil2" : "soil1", id: 0 });
      from = layer.to;
    });
    if (b.layers.length === 0) flat.push({ a: place([...b.at, b.top]), b: place([...b.at, b.bottom]), r: [thick, thick], colour: "soil1", id: 0 });
    if (b.water !== null) flat.push({ a: place([...b.at, b.water - thick / 4]), b: place([...b.at, b.water + thick / 4]), r: [thick * 2, thick * 2], colour: "water", id: 0 });
  }
  return { solid: solid.items, clear: clear.items, flat, round };
}

/** The ground is known on the line of the wall only: a narrow band behind it tells its height. */
function groundBehind(wall, leg, index, clear) {
  const spine = wall.spine, side = wall.side === "right" ? 1 : -1;
  const far = leg.map(p => {
    let best = spine[0], least = Infinity;
    for (const s of spine) {
      const d = (s[2] - p[0]) ** 2 + (s[3] - p[1]) ** 2;
      if (d < least) [best, least] = [s, d];
    }
    return place([p[0] - best[5] * side * 3, p[1] + best[4] * side * 3, p[2]]);
  });
  clear.band(leg.map(place), far, "ground", 0.25);
}

