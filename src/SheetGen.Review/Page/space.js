import { byMark, doc, nails, obstructions, walls } from "./data.js";
import { button, byId, el } from "./dom.js";
import { Camera, keepBeyond } from "./camera.js";
import { place, stillLife } from "./mesh.js";
import { Painter } from "./painter.js";
import { chooseNail, chooseObstruction, chosenNail, onChange, state } from "./store.js";
import { add, between, cross, project, size, sub, times, unitOf } from "./vectors.js";

/** The wall in 3D: orbit, shift, zoom, clip, section through a nail, picking. */

const FIRST_THING = nails.length + 1;
const camera = new Camera();
let painter = null, canvas = null, labels = null, waiting = false, colours = {};
let ghosts = [];

const tubeOf = (n, more) => ({ a: place(n.head), b: place(n.tip), r: [n.radius, n.tipRadius], id: n.index + 1, ...more });

function readColours() {
  const style = getComputedStyle(document.documentElement);
  const hex = name => {
    const text = style.getPropertyValue("--" + name).trim();
    return [1, 3, 5].map(i => parseInt(text.slice(i, i + 2), 16) || 0);
  };
  for (const name of ["grid", "moved", "redirected", "noted", "unresolved", "thing", "pipe", "boundary", "face", "edge", "ground", "grade", "soil1", "soil2", "water", "chosen", "ghost"]) colours[name] = hex(name);
}

export function drawSpace() {
  const host = byId("space");
  canvas = el("canvas", { tabindex: "0", role: "img", "aria-label": "The wall in 3D. Drag to turn, shift and drag to move, wheel to zoom; the table of nails says the same in words." });
  labels = el("div", { class: "labels", "aria-hidden": "true" });
  const frame = el("div", { class: "frame" }, canvas, labels);
  try {
    painter = new Painter(canvas, nails.length > 1500 ? 8 : 12);
  } catch {
    host.append(el("p", { class: "missing", text: "This browser draws no 3D (WebGL 2 is missing or switched off). Elevation, plan, sections and tables work without it." }));
    return;
  }
  host.append(tools(), frame, clipTools());
  home();
  listen();
  refill();
  new ResizeObserver(resize).observe(frame);
  onChange(what => {
    if (what === "chosen" || what === "filter") fillNails();
    if (what === "chosen" && chosenNail() && camera.parallel) section();
    ask();
  });
}

/** Takes the colours of the theme and fills everything anew. */
export function refill() {
  if (!painter) return;
  readColours();
  const still = stillLife(FIRST_THING), paint = items => items.map(i => ({ ...i, rgb: colours[i.colour] }));
  painter.pieces("things", paint(still.solid));
  painter.pieces("clear", paint(still.clear));
  painter.tubes("shafts", "flat", paint(still.flat));
  painter.tubes("pipes", "round", paint(still.round));
  fillNails();
  ask();
}

function fillNails() {
  if (!painter) return;
  const solid = [], faint = [], chosen = [], marks = [];
  for (const n of nails) {
    const rgb = colours[n.status];
    if (state.marks.has(n.mark)) chosen.push(tubeOf(n, { rgb: colours.chosen, r: [n.radius * 1.12, n.tipRadius * 1.12] }));
    else if (state.shown.has(n.mark)) solid.push(tubeOf(n, { rgb }));
    else faint.push(tubeOf(n, { rgb, alpha: 0.1 }));
  }
  for (const [a, b] of nearLines()) {
    const r = size(sub(place(a), place(b))) < 1e-9 ? 0.02 : nails[0].radius * 0.3;
    marks.push({ a: place(a), b: place(b), r: [r, r], rgb: colours.unresolved });
    for (const p of [a, b]) marks.push({ a: place(p), b: place(p), r: [r * 2.2, r * 2.2], rgb: colours.unresolved });
  }
  painter.tubes("nails", "round", solid);
  painter.tubes("faint", "round", faint);
  painter.tubes("chosen", "round", chosen);
  painter.tubes("marks", "round", marks);
  painter.tubes("ghosts", "round", ghosts.map(g => ({ a: place(g.head), b: place(g.tip), r: [g.radius, g.radius], rgb: colours.ghost, alpha: 0.35 })));
}

export function setGhosts(list) {
  ghosts = list;
  fillNails();
  ask();
}

/** The lines of the least clear distances of what is chosen. */
function nearLines() {
  if (!state.chosen) return [];
  if (state.chosen.kind === "finding") {
    const f = doc.checked.findings.find(x => x.id === state.chosen.key);
    return f?.points?.length === 2 ? [f.points.map(p => [p[0] - doc.origin[0], p[1] - doc.origin[1], p[2]])] : [];
  }
  const nail = state.chosen.kind === "nail" ? byMark.get(state.chosen.key) : null;
  return nail?.points ? [nail.points] : [];
}

/** Seen from in front of the wall, from above and a little from the side, all of it. */
export function home() {
  const out = times(intoSoil(walls[0]), -1);
  lookAtAll(add(add(out, [0, 0, 0.42]), times(cross(out, [0, 0, 1]), -0.4)));
}

/** All of the wall, seen from a direction. */
function lookAtAll(from) {
  const points = nails.flatMap(n => [place(n.head), place(n.tip)]).concat(walls.flatMap(w => [...w.top3.flat(), ...w.bottom3.flat()].map(place)));
  const low = [0, 1, 2].map(i => points.reduce((m, p) => Math.min(m, p[i]), Infinity)), high = [0, 1, 2].map(i => points.reduce((m, p) => Math.max(m, p[i]), -Infinity));
  const aspect = canvas.width / canvas.height || 1.6;
  camera.parallel = false;
  camera.planes = [];
  camera.look(from, between(low, high, 0.5), size(sub(high, low)) / 2 * Math.max(0.62, 1.05 / aspect));
  ask();
}

function intoSoil(wall) {
  const a = wall.spine[0], b = wall.spine[wall.spine.length - 1], d = unitOf([b[3] - a[3], b[2] - a[2], 0], [1, 0, 0]);
  return wall.side === "right" ? [d[1], -d[0], 0] : [-d[1], d[0], 0];
}

/** A true section: looks square to the vertical plane through the chosen nail, and keeps a slice about it. */
export function section() {
  const n = chosenNail();
  if (!n || !painter) return;
  const wall = walls.find(w => w.name === n.wall), head = place(n.head), tip = place(n.tip);
  const plan = unitOf([tip[0] - head[0], tip[1] - head[1], 0], intoSoil(wall)), normal = [plan[1], -plan[0], 0], slice = Math.max(4 * n.radius, wall.sections.find(s => s.name === n.section).h / 2);
  camera.look(normal, between(head, tip, 0.5), n.length * 0.55);
  camera.parallel = true;
  camera.planes = [keepBeyond(add(head, times(normal, slice)), times(normal, -1)), keepBeyond(add(head, times(normal, -slice)), normal)];
  ask();
}

function tools() {
  const view = (label, action, hint) => button(label, action, { title: hint });
  return el("div", { class: "zoom", role: "group", "aria-label": "3D view" },
    view("+", () => { camera.zoom(1.4); ask(); }, "Nearer"), view("−", () => { camera.zoom(1 / 1.4); ask(); }, "Farther"),
    view("All", home, "Show all"), view("Front", () => face(-1, 0.001), "From in front of the wall"), view("Soil side", () => face(1, 0.25), "From behind the nails"),
    view("Above", () => face(-0.0001, 1), "From above"), view("Section", section, "Section through the chosen nail"));
}

const face = (side, up) => lookAtAll(add(times(intoSoil(walls[0]), side), [0, 0, up]));

/** Two sliders along the stations of a wall: only what lies between them is drawn. */
function clipTools() {
  const wallOf = el("select", { "aria-label": "Wall to clip along" }, walls.map(w => el("option", { value: w.name, text: w.name })));
  const range = label => el("input", { type: "range", min: "0", max: "1000", "aria-label": label });
  const from = range("Show from station"), to = range("Show up to station"), text = el("output");
  from.value = "0";
  to.value = "1000";
  const update = () => {
    const wall = walls.find(w => w.name === wallOf.value) ?? walls[0];
    const [a, b] = [Math.min(from.valueAsNumber, to.valueAsNumber), Math.max(from.valueAsNumber, to.valueAsNumber)].map(v => v / 1000);
    const [low, high] = [along(wall, a), along(wall, b)];
    camera.planes = [a > 0 && keepBeyond(low.at, low.tangent), b < 1 && keepBeyond(high.at, times(high.tangent, -1))].filter(Boolean);
    text.textContent = a === 0 && b === 1 ? "all stations" : `near ${low.text} to ${high.text}`;
    ask();
  };
  for (const input of [from, to, wallOf]) input.addEventListener("input", update);
  text.textContent = "all stations";
  return el("div", { class: "clip" }, el("span", { text: "Stations" }), walls.length > 1 ? wallOf : null, from, to, text);
}

/** The place at a share of a wall's length: point and tangent in space, the nearest printed station. */
function along(wall, share) {
  const spine = wall.spine, goal = share * spine[spine.length - 1][1];
  const i = Math.max(1, spine.findIndex(s => s[1] >= goal)), a = spine[i - 1], b = spine[i], t = b[1] > a[1] ? (goal - a[1]) / (b[1] - a[1]) : 0;
  const near = nails.filter(n => n.wall === wall.name).reduce((best, n) => {
    const d = (n.head[0] - a[2] - (b[2] - a[2]) * t) ** 2 + (n.head[1] - a[3] - (b[3] - a[3]) * t) ** 2;
    return d < best.d ? { d, text: n.stationText } : best;
  }, { d: Infinity, text: a[0] });
  return { at: place([a[2] + (b[2] - a[2]) * t, a[3] + (b[3] - a[3]) * t, 0]), tangent: unitOf([a[5] + (b[5] - a[5]) * t, a[4] + (b[4] - a[4]) * t, 0]), text: near.text };
}

/** What the painter needs of the camera; holes of about two pixels are drawn simply. */
function take() {
  const pixels = canvas.height / (2 * camera.distance * Math.tan(camera.lens / 2));
  return { ...camera.take(canvas.width / canvas.height), thin: nails[0].radius * pixels < 1.5 };
}

function resize() {
  const ratio = Math.min(2, window.devicePixelRatio || 1), box = canvas.getBoundingClientRect();
  const [w, h] = [Math.max(1, Math.round(box.width * ratio)), Math.max(1, Math.round(box.height * ratio))];
  if (canvas.width !== w || canvas.height !== h) [canvas.width, canvas.height] = [w, h];
  paintNow();
}

export function ask() {
  if (waiting || !painter) return;
  waiting = true;
  requestAnimationFrame(() => {
    waiting = false;
    paintNow();
  });
}

export function paintNow() {
  if (!painter) return;
  painter.paint(take());
  painter.gl.flush();
  label();
}

function label() {
  const m = camera.take(canvas.width / canvas.height).matrix, box = canvas.getBoundingClientRect(), shown = [];
  const put = (text, p, kind) => {
    const [x, y, z] = project(m, p);
    if (z < -1 || z > 1 || Math.abs(x) > 1 || Math.abs(y) > 1) return;
    const span = el("bdi", { class: kind, text });
    span.style.left = (x + 1) / 2 * box.width + "px";
    span.style.top = (1 - y) / 2 * box.height + "px";
    shown.push(span);
  };
  for (const mark of [...state.marks].slice(0, 12)) put(mark, place(byMark.get(mark).head), "mark");
  for (const name of state.things) {
    const s = obstructions.find(o => o.name === name)?.solids[0];
    if (s) put(name, s.shape === "prism" ? place([...s.footprint[0], s.z[1]]) : place(s.a), "thing");
  }
  labels.replaceChildren(...shown);
}

function listen() {
  const pointers = new Map();
  let moved = 0;
  canvas.addEventListener("contextmenu", e => e.preventDefault());
  canvas.addEventListener("pointerdown", e => {
    canvas.setPointerCapture(e.pointerId);
    pointers.set(e.pointerId, [e.clientX, e.clientY]);
    moved = 0;
  });
  canvas.addEventListener("pointermove", e => {
    const last = pointers.get(e.pointerId);
    if (!last) return;
    const [dx, dy] = [e.clientX - last[0], e.clientY - last[1]], other = [...pointers].find(([id]) => id !== e.pointerId)?.[1];
    if (other) {
      const before = Math.hypot(last[0] - other[0], last[1] - other[1]), after = Math.hypot(e.clientX - other[0], e.clientY - other[1]);
      if (before > 0) camera.zoom(after / before);
      camera.pan(dx / 2, dy / 2, canvas.clientHeight);
    } else if (e.shiftKey || e.buttons === 2 || e.buttons === 4 || camera.parallel) camera.pan(dx, dy, canvas.clientHeight);
    else camera.orbit(dx, dy);
    moved += Math.abs(dx) + Math.abs(dy);
    pointers.set(e.pointerId, [e.clientX, e.clientY]);
    ask();
  });
  for (const end of ["pointerup", "pointercancel"]) canvas.addEventListener(end, e => pointers.delete(e.pointerId));
  canvas.addEventListener("click", e => {
    if (moved > 5) return;
    const hit = pickAt(e.clientX, e.clientY);
    if (hit?.nail) chooseNail(hit.nail);
    else if (hit) chooseObstruction(obstructions.find(o => o.name === hit.thing));
  });
  canvas.addEventListener("wheel", e => {
    e.preventDefault();
    camera.zoom(Math.exp(-e.deltaY * 0.0012));
    ask();
  }, { passive: false });
  canvas.addEventListener("webglcontextlost", e => e.preventDefault());
  canvas.addEventListener("webglcontextrestored", () => {
    painter = new Painter(canvas, nails.length > 1500 ? 8 : 12);
    refill();
  });
}

/** What stands at a place of the window: {nail} or {thing}; null for nothing. */
export function pickAt(clientX, clientY) {
  if (!painter) return null;
  const box = canvas.getBoundingClientRect(), ratio = canvas.width / box.width;
  const id = painter.pick(take(), Math.round((clientX - box.x) * ratio), Math.round((box.bottom - clientY) * ratio),
    // A boundary stands behind everything and would take every click that misses by a pixel.
    i => i >= FIRST_THING && obstructions[i - FIRST_THING].kind === "boundary");
  if (id === 0) return null;
  return id < FIRST_THING ? { nail: nails[id - 1].mark } : { thing: obstructions[id - FIRST_THING].name };
}

/** Where a point of the data lies in the window. */
export function placeInWindow(point) {
  const box = canvas.getBoundingClientRect(), [x, y] = project(camera.take(canvas.width / canvas.height).matrix, place(point));
  return [box.x + (x + 1) / 2 * box.width, box.y + (1 - y) / 2 * box.height];
}

/** Milliseconds a frame over some turns of the view, each finished before the next. */
export function measureFrames(frames) {
  const gl = painter.gl, pixel = new Uint8Array(4), start = performance.now();
  for (let i = 0; i < frames; i++) {
    camera.orbit(3, 0);
    painter.paint(take());
    gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, pixel);
  }
  return (performance.now() - start) / frames;
}
