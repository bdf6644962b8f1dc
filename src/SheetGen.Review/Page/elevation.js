import { byMark, byObstruction, doc, findings, nails, walls } from "./data.js";
import { append, byId, svg } from "./dom.js";
import { declutter } from "./labels.js";
import { makeCanvas } from "./panzoom.js";
import { chooseNail, chooseObstruction, chooseSection, chosenNail, onChange, state } from "./store.js";
import { symbol, turnOf } from "./symbols.js";

/** The developed elevation of each wall, one below the other: x as on the sheets, y down. */

const path = (points, closed = false) => points.length ? "M" + points.map(([x, z]) => `${x} ${-z}`).join("L") + (closed ? "Z" : "") : "";
const high = w => Math.max(...w.top.map(p => p[1]), ...(w.ground ?? []).map(p => p[1]));
const low = w => Math.min(...w.bottom.map(p => p[1]));

export const signs = new Map();
const strips = new Map();
let elevation = null;
export const elevationPlace = (wall, x, z) => {
  const [dx, dy] = strips.get(wall);
  return elevation.toScreen(x + dx, dy - z);
};
export const elevationPicture = () => elevation.picture;

export function drawElevation() {
  const canvas = makeCanvas(byId("elevation"), "Elevation of the wall with its nails; the table of nails says the same in words", pick);
  elevation = canvas;
  let below = 0;
  const boxes = [];
  for (const wall of walls) {
    const height = high(wall) - low(wall), left = Math.min(...wall.ends), right = Math.max(...wall.ends);
    const margin = height * 0.22, shift = [-left, below + high(wall) + margin];
    strips.set(wall.name, shift);
    canvas.world.append(strip(wall, shift, height));
    boxes.push(right - left);
    below += height + 1.85 * margin;
  }
  const wide = Math.max(...boxes);
  canvas.setHome(-wide * 0.03, 0, wide * 1.06, below);
  canvas.onScale(k => {
    canvas.picture.style.setProperty("--px", String(1 / k));
    declutter(canvas.picture);
  });
  fit(below / (wide * 1.06));
  canvas.apply();
  onChange(refresh);
  refresh();
}

/** Gives the view the height that its drawing needs at full width, within reason. */
function fit(aspect) {
  const desk = byId("desk"), set = () => desk.style.setProperty("--elevation", Math.round(Math.max(200, Math.min(innerHeight * 0.46, byId("elevation").clientWidth * aspect + 58))) + "px");
  set();
  new ResizeObserver(set).observe(desk);
}

function strip(wall, [dx, dy], height) {
  const text = height / 20, group = svg("g", { transform: `translate(${dx} ${dy})`, class: "strip" });
  const outline = path([...wall.bottom, ...[...wall.top].reverse()], true);
  group.append(svg("path", { d: outline, class: "wallface" }));
  for (const s of wall.sections) {
    const x = (s.x[0] + s.x[1]) / 2;
    group.append(
      svg("path", { d: `M${s.x[0]} ${-low(wall)}V${-high(wall) - text}M${s.x[1]} ${-low(wall)}V${-high(wall) - text}`, class: "limit" }),
      svg("text", { x, y: -high(wall) - text * 1.2, class: "label section", "data-section": s.name, "data-wall": wall.name, text: (walls.length > 1 ? wall.name + " · " : "") + s.name }));
  }
  for (const thing of wall.seen) {
    for (const hull of thing.hulls) {
      if (hull.length < 2) continue;
      const shown = hull.map(([x, z]) => [x, Math.max(low(wall) - height * 0.1, Math.min(high(wall) + height * 0.1, z))]);
      group.append(svg("path", { d: path(shown, true), class: "thing " + (byObstruction.get(thing.name)?.kind ?? ""), "data-thing": thing.name }, svg("title", { text: thing.name })));
    }
  }
  for (const [x, bottom, top] of wall.breaks) group.append(svg("path", { d: `M${x} ${-bottom}V${-top}`, class: "joint" }));
  for (const o of wall.openings) group.append(svg("path", { d: path([[o.box[0], o.box[1]], [o.box[2], o.box[1]], [o.box[2], o.box[3]], [o.box[0], o.box[3]]], true), class: "opening" }, svg("title", { text: o.name })));
  if (wall.ground) group.append(svg("path", { d: path(wall.ground), class: "ground" }));
  if (wall.grade) group.append(svg("path", { d: path(wall.grade), class: "grade" }));
  group.append(svg("path", { d: outline, class: "outline" }));
  for (const [x, bottom, top] of wall.corners) group.append(svg("path", { d: `M${x} ${-bottom}V${-top}`, class: "corner" }));
  for (const b of wall.borings) {
    const log = doc.borings.find(l => l.name === b.name);
    group.append(svg("path", { d: `M${b.x} ${-Math.max(log.bottom, low(wall) - height * 0.1)}V${-Math.min(log.top, high(wall) + height * 0.1)}`, class: "boring" }, svg("title", { text: "boring " + b.name })));
  }
  for (const t of wall.stations) {
    group.append(svg("path", { d: `M${t.x} ${-low(wall) + text * 0.3}v${text * 0.6}`, class: "tick" }),
      svg("text", { x: t.x, y: -low(wall) + text * 1.6, class: "label stationing", text: t.text }));
  }
  for (const f of findings) {
    if (f.wall === wall.name && f.code === "cover" && f.station !== undefined) group.append(coverMark(wall, f, text));
  }
  const layer = svg("g", { class: "nails" });
  for (const n of nails) {
    if (n.wall !== wall.name) continue;
    const section = wall.sections.find(s => s.name === n.section);
    const size = Math.min(0.2 * section.h, 0.2 * section.v);
    const sign = symbol(n.status, n.kind, { "data-nail": n.mark, transform: `translate(${n.x} ${-n.elevation}) rotate(${turnOf(n, wall.sign)})` });
    sign.style.setProperty("--size", String(size));
    sign.firstChild.append(svg("circle", { r: 2, class: "hit" }));
    sign.append(svg("title", { text: n.mark }));
    signs.set(n.mark, sign);
    layer.append(sign);
  }
  group.append(layer, svg("g", { class: "ghosts", "data-ghosts": wall.name }), svg("g", { class: "over", "data-over": wall.name }));
  return group;
}

/** A stretch where the cover rule is broken, as a bracket along the bottom. */
function coverMark(wall, f, text) {
  const near = station => nails.filter(n => n.wall === wall.name).reduce((best, n) => best === null || Math.abs(n.station - station) < Math.abs(best.station - station) ? n : best, null);
  const at = station => {
    const n = near(station);
    return n === null ? wall.ends[0] : n.x + wall.sign * (station - n.station);
  };
  const a = at(f.station), b = at(f.to_station ?? f.station), y = -low(wall) + text * 0.4;
  return svg("path", { d: `M${a} ${y - text * 0.5}V${y}H${b}V${y - text * 0.5}`, class: "uncovered", "data-finding": f.id }, svg("title", { text: f.message }));
}

/** The nail whose head is nearest within some pixels; else what lies under the pointer. */
function pick(target, [x, y]) {
  let best = null, least = 12 / elevation.scale();
  for (const n of nails) {
    const [dx, dy] = strips.get(n.wall), far = Math.hypot(n.x + dx - x, dy - n.elevation - y);
    if (far < least) [best, least] = [n, far];
  }
  if (best) return chooseNail(best.mark);
  const hit = target.closest?.("[data-thing],[data-section]");
  if (!hit) return;
  if (hit.dataset.thing) chooseObstruction(byObstruction.get(hit.dataset.thing));
  else chooseSection(hit.dataset.wall, hit.dataset.section);
}

function refresh(what) {
  for (const [mark, sign] of signs) {
    sign.classList.toggle("dim", !state.shown.has(mark));
    sign.classList.toggle("chosen", state.marks.has(mark));
  }
  for (const thing of elevation.picture.querySelectorAll("[data-thing]")) thing.classList.toggle("chosen", state.things.has(thing.dataset.thing));
  for (const over of elevation.picture.querySelectorAll("[data-over]")) over.replaceChildren();
  for (const mark of [...state.marks].slice(0, 40)) {
    const n = byMark.get(mark), section = walls.find(w => w.name === n.wall).sections.find(s => s.name === n.section), size = Math.min(section.h, section.v);
    const over = elevation.picture.querySelector(`[data-over="${CSS.escape(n.wall)}"]`);
    append(over, [
      svg("circle", { cx: n.x, cy: -n.elevation, r: 1, class: "halo" }),
      state.marks.size <= 12 && svg("text", { x: n.x, y: -n.elevation - size * 0.45, class: "label mark", text: mark })]);
  }
  declutter(elevation.picture);
  const nail = chosenNail();
  if (what === "chosen" && nail) {
    const [dx, dy] = strips.get(nail.wall);
    elevation.reveal(nail.x + dx, -nail.elevation + dy);
  }
}
