import { byMark, byObstruction, doc, nails, obstructions, walls } from "./data.js";
import { append, byId, svg } from "./dom.js";
import { declutter } from "./labels.js";
import { makeCanvas } from "./panzoom.js";
import { chooseNail, chooseObstruction, onChange, state } from "./store.js";

/** The plan at true coordinates: x easting, y northing, north up. */

const at = p => `${p[1]} ${-p[0]}`;
const path = (points, closed = false) => "M" + points.map(at).join("L") + (closed ? "Z" : "");

let plan = null;
export const planPlace = p => plan.toScreen(p[1], -p[0]);
export const planPicture = () => plan.picture;
const traces = new Map();

export function drawPlan() {
  const canvas = makeCanvas(byId("plan"), "Plan of the wall at true coordinates, north up", pick);
  plan = canvas;
  for (const o of obstructions) for (const solid of o.solids) canvas.world.append(outline(o, solid));
  for (const wall of walls) {
    for (const leg of wall.top3) canvas.world.append(svg("path", { d: path(leg), class: "faceline" }));
    for (const leg of wall.bottom3) canvas.world.append(svg("path", { d: path(leg), class: "faceline foot" }));
  }
  const layer = svg("g", { class: "nails" });
  for (const n of nails) {
    const d = path([n.head, n.tip]);
    const trace = svg("g", { class: `trace ${n.status}`, "data-nail": n.mark }, svg("path", { d, class: "wide" }), svg("path", { d }), svg("circle", { cx: n.head[1], cy: -n.head[0], r: n.radius * 1.2 }), svg("title", { text: n.mark }));
    traces.set(n.mark, trace);
    layer.append(trace);
  }
  canvas.world.append(layer, svg("g", { class: "ghosts", "data-ghosts": "plan" }));
  const box = bounds(), size = Math.max(box.w, box.h), text = size / 60;
  for (const wall of walls) {
    const side = wall.side === "right" ? -1 : 1;
    for (const t of wall.stations) {
      const [tn, te] = t.t, out = [t.at[0] + -te * side * text * 0.8 * -1, t.at[1] + tn * side * text * 0.8 * -1];
      const far = [t.at[0] + te * side * text * 2.6, t.at[1] - tn * side * text * 2.6];
      canvas.world.append(svg("path", { d: path([t.at, out]), class: "tick" }), svg("text", { x: far[1], y: -far[0] + text / 3, class: "label", text: t.text }));
    }
  }
  for (const b of doc.borings) {
    canvas.world.append(svg("path", { d: `M${b.at[1] - text * 0.5} ${-b.at[0]}h${text}M${b.at[1]} ${-b.at[0] - text * 0.5}v${text}`, class: "boring" }),
      svg("text", { x: b.at[1], y: -b.at[0] - text * 0.7, class: "label", text: b.name }));
  }
  for (const o of obstructions) {
    const [n, e] = middle(o);
    canvas.world.append(svg("text", { x: e, y: -n, class: "label thingname", text: o.name, "data-thing": o.name }));
  }
  canvas.world.append(svg("g", { class: "over", "data-over": "plan" }));
  canvas.picture.append(northArrow());
  canvas.setHome(box.x - size * 0.06, box.y - size * 0.06, box.w + size * 0.12, box.h + size * 0.12);
  canvas.onScale(k => {
    canvas.picture.style.setProperty("--px", String(1 / k));
    declutter(canvas.picture);
  });
  canvas.apply();
  onChange(refresh);
  refresh();
}

const northArrow = () => svg("g", { class: "north", transform: "translate(22 26)" }, svg("path", { d: "M0 14V-12M-5-4L0-14L5-4" }), svg("text", { x: 0, y: 27, "font-size": 11, text: "N" }));

function bounds() {
  const points = [...nails.flatMap(n => [n.head, n.tip]), ...walls.flatMap(w => w.top3.flat())];
  const e = points.map(p => p[1]), n = points.map(p => -p[0]);
  const x = e.reduce((a, b) => Math.min(a, b), Infinity), y = n.reduce((a, b) => Math.min(a, b), Infinity);
  return { x, y, w: e.reduce((a, b) => Math.max(a, b), -Infinity) - x, h: n.reduce((a, b) => Math.max(a, b), -Infinity) - y };
}

function middle(o) {
  const s = o.solids[Math.floor(o.solids.length / 2)];
  if (s.shape === "prism") return [0, 1].map(i => s.footprint.reduce((sum, p) => sum + p[i], 0) / s.footprint.length);
  return s.shape === "cylinder" ? s.a : [0, 1].map(i => (s.a[i] + s.b[i]) / 2);
}

function outline(o, solid) {
  const common = { class: `thing ${o.kind}`, "data-thing": o.name };
  if (solid.shape === "prism") return svg("path", { d: path(solid.footprint, true), ...common });
  if (solid.shape === "plane") return svg("path", { d: path([solid.a, solid.b]), ...common });
  const [dn, de] = [solid.b[0] - solid.a[0], solid.b[1] - solid.a[1]], run = Math.hypot(dn, de);
  if (run < 1e-6) return svg("circle", { cx: solid.a[1], cy: -solid.a[0], r: solid.r, ...common });
  const [sn, se] = [-de / run * solid.r, dn / run * solid.r];
  const shift = (p, k) => [p[0] + sn * k, p[1] + se * k], r = `${solid.r} ${solid.r} 0 0 `;
  return svg("path", { d: `M${at(shift(solid.a, 1))}L${at(shift(solid.b, 1))}A${r}0 ${at(shift(solid.b, -1))}L${at(shift(solid.a, -1))}A${r}0 ${at(shift(solid.a, 1))}Z`, ...common });
}

function pick(target) {
  const hit = target.closest?.("[data-nail],[data-thing]");
  if (hit?.dataset.nail) chooseNail(hit.dataset.nail);
  else if (hit) chooseObstruction(byObstruction.get(hit.dataset.thing));
}

function refresh(what) {
  for (const [mark, trace] of traces) {
    trace.classList.toggle("dim", !state.shown.has(mark));
    trace.classList.toggle("chosen", state.marks.has(mark));
  }
  for (const thing of plan.picture.querySelectorAll("[data-thing]")) thing.classList.toggle("chosen", state.things.has(thing.dataset.thing));
  const over = plan.picture.querySelector("[data-over]");
  over.replaceChildren();
  for (const mark of [...state.marks].slice(0, 40)) {
    const n = byMark.get(mark), [pn, pe] = n.tip, size = n.length / 14;
    append(over, [svg("path", { d: path([n.head, n.tip]), class: "halo" }),
      state.marks.size <= 12 && svg("text", { x: pe, y: -pn - size * 0.4, class: "label mark", text: mark })]);
    if (what === "chosen" && state.marks.size <= 4) plan.reveal((n.head[1] + pe) / 2, -(n.head[0] + pn) / 2);
  }
  declutter(plan.picture);
}
