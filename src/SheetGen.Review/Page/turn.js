import { byWall, doc, nails, obstructions, sectionOf } from "./data.js";
import { betweenHoles, directionOf, hole, toSolid } from "./clear.js";
import { append, el, svg } from "./dom.js";
import { degrees, length } from "./words.js";
import { add, size, sub, times, unitOf } from "./vectors.js";

/** The room to turn of a nail: what its hole would meet in every direction that the rules allow, about the head where it stands. */

/** Horizontal unit vectors at the nail's head: into the soil and up-station, from its own direction less its splay. */
function frame(nail) {
  const along = unitOf(sub(nail.tip, nail.head)), plan = unitOf([along[0], along[1], 0]), a = nail.splay * Math.PI / 180;
  const side = byWall.get(nail.wall).side === "right" ? 1 : -1;
  // d = cos a n + sin a t, and t lies 90 degrees to the left of n where the soil is on the right.
  const t0 = [plan[1] * side, -plan[0] * side, 0];
  return { n: sub(times(plan, Math.cos(a)), times(t0, Math.sin(a))), t: add(times(t0, Math.cos(a)), times(plan, Math.sin(a))) };
}

/** Length of the nail in a direction: beyond the field tolerance it keeps its reach, by the project's rule. */
export function lengthAt(nail, splay, inclination) {
  const grid = sectionOf(nail).inclination, rules = doc.rules, rad = Math.PI / 180;
  if (!rules.lengthen || (Math.abs(splay) <= rules.field + 1e-9 && Math.abs(inclination - grid) <= rules.field + 1e-9)) return nail.gridLength;
  const kept = nail.gridLength * Math.cos(grid * rad) / (Math.cos(inclination * rad) * Math.cos(splay * rad));
  return Math.max(nail.gridLength, Math.ceil(kept / rules.increment - 1e-9) * rules.increment);
}

function steps(low, high, through, step) {
  const list = [];
  for (let k = Math.ceil((low - through) / step - 1e-9); through + k * step <= high + 1e-9; k++) list.push(through + k * step);
  return list;
}

/** Every direction with its least excess: clear distance less what the rule asks for, and what it is. */
export function roomToTurn(nail) {
  const { n, t } = frame(nail), rules = doc.rules, grid = sectionOf(nail).inclination;
  const splays = steps(-rules.maximum, rules.maximum, 0, rules.step);
  const inclinations = steps(Math.max(rules.inclination[0], grid - rules.maximum), Math.min(rules.inclination[1], grid + rules.maximum), grid, rules.step);
  const longest = lengthAt(nail, rules.maximum, inclinations[inclinations.length - 1] ?? grid) + 2;
  const others = nails.filter(o => o !== nail && size(sub(o.head, nail.head)) < longest + o.length + 2)
    .map(o => ({ name: o.mark, required: rules.nail, hole: hole(o.head, unitOf(sub(o.tip, o.head)), o.length, o.radius, rules.drift) }));
  const solids = obstructions.flatMap(o => o.solids.map(s => ({ name: o.name, required: o.required, solid: s })))
    .concat(facesFor(nail)).filter(s => nearSolid(s.solid, nail.head, longest + s.required));
  const cells = [];
  for (const inclination of inclinations) {
    for (const splay of splays) {
      const own = hole(nail.head, directionOf(n, t, splay, inclination), lengthAt(nail, splay, inclination), nail.radius, rules.drift);
      let worst = { excess: Infinity, clear: Infinity, name: "" };
      for (const o of others) {
        const clear = betweenHoles(own, o.hole);
        if (clear - o.required < worst.excess) worst = { excess: clear - o.required, clear, name: o.name };
      }
      for (const s of solids) {
        const clear = toSolid(own, s.solid);
        if (clear - s.required < worst.excess) worst = { excess: clear - s.required, clear, name: s.name };
      }
      cells.push({ splay, inclination, ...worst });
    }
  }
  return { splays, inclinations, cells, grid };
}

function facesFor(nail) {
  const list = [];
  for (const w of byWall.values()) {
    w.face.forEach((leg, i) => {
      if (w.name !== nail.wall || i !== nail.leg) for (const points of leg) list.push({ name: "the face of " + w.name, required: doc.rules.obstruction, solid: { shape: "panel", points } });
    });
  }
  return list;
}

function nearSolid(s, head, reach) {
  const points = s.shape === "prism" ? s.footprint.flatMap(p => [[...p, s.z[0]], [...p, s.z[1]]]) : s.shape === "panel" ? s.points : s.shape === "plane" ? [[...s.a, 0], [...s.b, 0]] : [s.a, s.b];
  const r = (s.r ?? 0) + reach, axes = s.shape === "plane" ? [0, 1] : [0, 1, 2];
  return axes.every(i => Math.min(...points.map(p => p[i])) <= head[i] + r && Math.max(...points.map(p => p[i])) >= head[i] - r);
}

const kindOf = cell => cell.excess >= -1e-9 ? "free" : cell.clear > 0 ? "close" : "blocked";

/** The picture: splay across (as seen in front of the wall), inclination down. */
export function turnPicture(nail) {
  const room = roomToTurn(nail), { splays, inclinations, cells, grid } = room, sign = byWall.get(nail.wall).sign, rules = doc.rules;
  const w = 360, left = 30, step = (w - left - 6) / splays.length, tall = Math.max(6, Math.min(14, step * 1.25));
  const x = splay => left + (splays.findIndex(s => Math.abs(s - splay * sign) < 1e-9) + 0.5) * step;
  const y = inclination => 16 + (inclination - inclinations[0]) / rules.step * tall + tall / 2;
  const picture = svg("svg", { viewBox: `0 0 ${w} ${inclinations.length * tall + 46}`, class: "turn", role: "img", "aria-label": turnSummary(nail, room) });
  const told = el("p", { class: "hint", text: "Point at a cell to see what is nearest there." });
  for (const cell of cells) {
    picture.append(svg("rect", { x: x(cell.splay) - step / 2, y: y(cell.inclination) - tall / 2, width: step + 0.05, height: tall + 0.05, class: kindOf(cell),
      "data-tell": `splay ${degrees(cell.splay)}, inclination ${degrees(cell.inclination)}: ${cell.name ? `${length(cell.clear)} to ${cell.name}` : "nothing near"}` }));
    if (kindOf(cell) === "blocked") picture.append(svg("path", { d: `M${x(cell.splay) - step / 2} ${y(cell.inclination) + tall / 2}l${step} ${-tall}`, class: "slash" }));
  }
  const band = (a, b, from, to, className) => svg("rect", { x: Math.min(x(a), x(b)) - step / 2, y: y(from) - tall / 2, width: Math.abs(x(b) - x(a)) + step, height: y(to) - y(from) + tall, class: className });
  const field = splays.filter(s => Math.abs(s) <= rules.field + 1e-9), steep = inclinations.filter(i => Math.abs(i - grid) <= rules.field + 1e-9);
  if (field.length && steep.length) picture.append(band(field[0], field[field.length - 1], steep[0], steep[steep.length - 1], "field"));
  picture.append(svg("circle", { cx: x(0), cy: y(grid), r: 3.4, class: "griddirection" }));
  if (splays.some(s => Math.abs(s - nail.splay) < 1e-9)) picture.append(svg("path", { d: `M${x(nail.splay) - 5} ${y(nail.inclination)}h10M${x(nail.splay)} ${y(nail.inclination) - 5}v10`, class: "now" }));
  const foot = inclinations.length * tall + 28;
  const label = (tx, ty, text, anchor = "middle") => svg("text", { x: tx, y: ty, "text-anchor": anchor, "font-size": 10, text });
  append(picture, [label(left - 4, y(inclinations[0]) + 3, degrees(inclinations[0]), "end"), label(left - 4, y(inclinations[inclinations.length - 1]) + 3, degrees(inclinations[inclinations.length - 1]), "end"),
    label(x(0), foot, "0°"), label(x(-sign * rules.maximum) + 10, foot, `${degrees(rules.maximum)} LEFT`, "start"), label(x(sign * rules.maximum) - 4, foot, `${degrees(rules.maximum)} RIGHT`, "end"), label(left, 10, "inclination, downward", "start")]);
  picture.addEventListener("pointermove", e => { if (e.target.dataset?.tell) told.textContent = e.target.dataset.tell; });
  return el("figure", { class: "turning" }, picture,
    el("figcaption", {}, turnSummary(nail, room), " ", el("span", { class: "key" }, el("i", { class: "free" }), "free ", el("i", { class: "close" }), "under the clearance ", el("i", { class: "blocked" }), "runs into something; square: field tolerance; cross: as laid out; ring: the grid's direction.")), told);
}

function turnSummary(nail, room) {
  const field = room.cells.filter(c => Math.abs(c.splay) <= doc.rules.field + 1e-9 && Math.abs(c.inclination - room.grid) <= doc.rules.field + 1e-9);
  const free = list => list.filter(c => kindOf(c) === "free").length;
  return `Room to turn of ${nail.mark}: ${free(field)} of ${field.length} directions within the field tolerance are free, ${free(room.cells)} of ${room.cells.length} in all.`;
}
