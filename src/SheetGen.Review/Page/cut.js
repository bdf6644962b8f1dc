import { byWall, doc, nails, obstructions } from "./data.js";
import { el, svg } from "./dom.js";
import { figure } from "./words.js";
import { add, dot, size, squareTo, sub, times, unitOf } from "./vectors.js";

/** A true section: the vertical plane through a nail's axis cuts everything; the nail shows at its true length and inclination. */

const SIDES = 36;

/** Corners of a tube's surface as edges (pairs of points), enough for where a plane cuts it. */
function tubeEdges(a, b, ra, rb) {
  const axis = unitOf(sub(b, a)), [u, v] = squareTo(axis), ring = (c, r) => Array.from({ length: SIDES }, (_, i) => {
    const t = 2 * Math.PI * i / SIDES;
    return add(c, add(times(u, Math.cos(t) * r), times(v, Math.sin(t) * r)));
  });
  const [one, two] = [ring(a, ra), ring(b, rb)];
  return one.flatMap((p, i) => [[p, two[i]], [p, one[(i + 1) % SIDES]], [two[i], two[(i + 1) % SIDES]]]);
}

function solidEdges(s) {
  if (s.shape === "prism") {
    const low = s.footprint.map(p => [...p, s.z[0]]), high = s.footprint.map(p => [...p, s.z[1]]);
    return low.flatMap((p, i) => [[p, high[i]], [p, low[(i + 1) % low.length]], [high[i], high[(i + 1) % low.length]]]);
  }
  if (s.shape === "cylinder") return tubeEdges(s.a, s.b, s.r, s.r);
  const axis = times(unitOf(sub(s.b, s.a)), s.r);
  return [...tubeEdges(s.a, s.b, s.r, s.r), ...tubeEdges(sub(s.a, times(axis, 0.7)), add(s.b, times(axis, 0.7)), s.r * 0.71, s.r * 0.71)];
}

/** Where edges meet the plane, as the hull of (distance into the soil, elevation): exact for a convex body but for its roundness. */
export function cutOf(edges, plane) {
  const points = [];
  for (const [a, b] of edges) {
    const fa = dot(sub(a, plane.at), plane.normal), fb = dot(sub(b, plane.at), plane.normal);
    if ((fa < 0) === (fb < 0) && fa !== 0 && fb !== 0) continue;
    const t = fa === fb ? 0 : fa / (fa - fb), p = add(a, times(sub(b, a), Math.max(0, Math.min(1, t))));
    points.push([dot(sub(p, plane.at), plane.along), p[2]]);
  }
  return hull(points);
}

function hull(points) {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  if (sorted.length < 3) return sorted;
  const half = list => {
    const out = [];
    for (const p of list) {
      while (out.length > 1) {
        const [a, b] = [out[out.length - 2], out[out.length - 1]];
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 1e-12) break;
        out.pop();
      }
      out.push(p);
    }
    out.pop();
    return out;
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

/** The plane of a nail: through its axis, upright. */
export function planeOf(nail) {
  const way = sub(nail.tip, nail.head), along = unitOf([way[0], way[1], 0]);
  return { at: [nail.head[0], nail.head[1], 0], along, normal: [along[1], -along[0], 0] };
}

export function sectionPicture(nail) {
  const plane = planeOf(nail), reach = dot(sub(nail.tip, nail.head), plane.along), wall = byWall.get(nail.wall);
  const shapes = [];
  const cut = (edges, className, name) => {
    const points = cutOf(edges, plane);
    if (points.length > 1 && points.some(p => p[0] > -reach * 0.3 && p[0] < reach * 1.15)) shapes.push({ points, className, name });
  };
  for (const o of obstructions) {
    for (const s of o.solids) {
      if (s.shape !== "plane") cut(solidEdges(s), "thing", o.name);
      else cut([[[...s.a, -1e4], [...s.b, -1e4]], [[...s.a, 1e4], [...s.b, 1e4]]], "boundary", o.name);
    }
  }
  const near = nails.filter(n => n !== nail && size(sub(n.head, nail.head)) < nail.length + n.length);
  for (const n of near) cut(tubeEdges(n.head, n.tip, n.radius, n.tipRadius), "nail " + n.status, n.mark);
  const face = wall.face.flat().map(panel => cutOf(panel.map((p, i) => [p, panel[(i + 1) % panel.length]]), plane)).filter(c => c.length > 1 && Math.abs(c[0][0]) < reach * 0.4);
  const z = face.flat().map(p => p[1]), top = Math.max(...z, nail.head[2] + 2), bottom = Math.min(...z, nail.tip[2] - 2), tall = top - bottom, k = 340 / (reach * 1.4), px = 1 / k;
  const at = p => `${p[0]} ${-p[1]}`, draw = (points, className, title) => svg("path", { d: "M" + points.map(at).join("L") + (points.length > 2 ? "Z" : ""), class: className, "vector-effect": "non-scaling-stroke" }, title ? svg("title", { text: title }) : null);
  const picture = svg("svg", { viewBox: `${-reach * 0.25} ${-top - tall * 0.06} ${reach * 1.4} ${tall * 1.12}`, class: "cut", role: "img", "aria-label": `True section through ${nail.mark}: ${shapes.filter(s => !s.className.startsWith("nail")).map(s => s.name).join(", ") || "no obstruction"} in its plane` });
  for (const s of shapes) picture.append(draw(s.points.map(p => [p[0], Math.max(bottom - tall, Math.min(top + tall, p[1]))]), s.className, s.name));
  for (const c of face) picture.append(draw(c, "face"));
  picture.append(draw(cutOf(tubeEdges(nail.head, nail.tip, nail.radius, nail.tipRadius), { ...plane, at: add(plane.at, times(plane.normal, 1e-7)) }), "self", nail.mark));
  if (nail.points) {
    const flat = nail.points.map(p => [dot(sub(p, plane.at), plane.along), p[2]]);
    picture.append(draw(flat, "near"));
    for (const p of flat) picture.append(svg("circle", { cx: p[0], cy: -p[1], r: 3 * px, class: "nearpoint" }));
  }
  let line = 0;
  for (const s of shapes.filter((x, i, all) => (x.className === "thing" || x.className === "boundary") && all.findIndex(o => o.name === x.name) === i)) {
    const [x, y] = [Math.min(reach * 1.02, Math.max(...s.points.map(p => p[0]))), Math.min(top, Math.max(...s.points.map(p => p[1])))];
    picture.append(svg("text", { x: x + 3 * px, y: -y + 11 * px * ++line, "font-size": 10 * px, text: s.name }));
  }
  return el("figure", { class: "cutting" }, picture, el("figcaption", { text: `True section in the vertical plane of ${nail.mark}: head at elevation ${figure(nail.head[2])}, ${doc.units === "m" ? "m" : "ft"} as drawn; other holes where they cross the plane.` }));
}
