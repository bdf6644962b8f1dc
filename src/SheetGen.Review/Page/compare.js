import { byMark, byWall, doc, nails } from "./data.js";
import { append, button, byId, el, name, replace, svg } from "./dom.js";
import { elevationPicture } from "./elevation.js";
import { planPicture } from "./plan.js";
import { setGhosts } from "./space.js";
import { chooseNail } from "./store.js";
import { count, degrees, length } from "./words.js";
import { size, sub } from "./vectors.js";

/** An older revision beside this one: what changed, a line a nail; the old nails as ghosts in every view. */

const ANGLE = 1e-6;

/** Nails that were added, are gone or changed. Points of the older are put on this revision's origin. */
export function differences(old) {
  const shift = [old.origin[0] - doc.origin[0], old.origin[1] - doc.origin[1], 0], moved = p => [p[0] + shift[0], p[1] + shift[1], p[2]];
  const before = new Map(old.nails.map(n => [n.mark, { ...n, head: moved(n.head), tip: moved(n.tip) }])), list = [];
  // In another unit both have been rounded, each in its own.
  const smallest = (old.isConverted ? 1.3 : 0.6) * 10 ** -doc.decimals, sameLength = old.isConverted ? smallest : ANGLE;
  for (const n of nails) {
    const o = before.get(n.mark);
    if (!o) {
      list.push({ mark: n.mark, what: "new" });
      continue;
    }
    const words = [], far = size(sub(n.head, o.head));
    if (far > smallest) words.push(`head ${length(far)} away`);
    if (Math.abs(n.splay - o.splay) > ANGLE) words.push(`splay ${degrees(o.splay)} to ${degrees(n.splay)}`);
    if (Math.abs(n.inclination - o.inclination) > ANGLE) words.push(`inclination ${degrees(o.inclination)} to ${degrees(n.inclination)}`);
    if (Math.abs(n.length - o.length) > sameLength) words.push(`length ${length(o.length)} to ${length(n.length)}`);
    if (n.status !== o.status) words.push(`${o.status} to ${n.status}`);
    if (words.length === 0 && o.own && n.own !== o.own) words.push("bar, hole or kind");
    if (words.length) list.push({ mark: n.mark, what: words.join(", "), old: o });
  }
  for (const o of before.values()) if (!byMark.has(o.mark)) list.push({ mark: o.mark, what: "gone", old: o });
  return list;
}

export function compareWith(old, fileName) {
  const list = differences(old), ghosts = list.filter(d => d.old).map(d => d.old), new_ = list.filter(d => d.what === "new").length, gone = list.filter(d => d.what === "gone").length;
  setGhosts(ghosts.map(g => ({ head: g.head, tip: g.tip, radius: Number.isFinite(g.radius) ? g.radius : nails[0].radius })));
  drawGhosts(ghosts);
  const same = old.checked ? old.checked.input_hash === doc.checked.input_hash : old.input_hash === doc.checked.input_hash;
  const words = list.length === 0 ? "no nail differs" : `${count(list.length, "nail differs", "nails differ")}: ${new_} new, ${gone} gone, ${list.length - new_ - gone} changed`;
  byId("changes").hidden = false;
  replace(byId("changes"), el("h2", { id: "changes-head" }, "Changed since ", name(fileName)), el("p", { text: `${words}${same ? "; both were made from the same project file" : ""}. Old places are drawn as dashed ghosts.` }),
    button("Take the ghosts away", () => { setGhosts([]); drawGhosts([]); byId("changes").hidden = true; }),
    list.length ? el("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "Changed nails" }, el("table", {}, el("thead", {}, el("tr", {}, ["Nail", "What"].map(h => el("th", { scope: "col", text: h })))),
      el("tbody", {}, list.map(d => el("tr", {}, el("td", {}, byMark.has(d.mark) ? button(name(d.mark), () => chooseNail(d.mark), { class: "link" }) : name(d.mark)), el("td", { text: d.what })))))) : null);
  return words;
}

function drawGhosts(ghosts) {
  for (const layer of elevationPicture().querySelectorAll("[data-ghosts]")) layer.replaceChildren();
  const onPlan = planPicture().querySelector("[data-ghosts]");
  onPlan.replaceChildren();
  for (const g of ghosts) {
    onPlan.append(svg("path", { d: `M${g.head[1]} ${-g.head[0]}L${g.tip[1]} ${-g.tip[0]}`, class: "ghost" }));
    const wall = byWall.get(g.wall), section = wall?.sections[0], layer = wall && elevationPicture().querySelector(`[data-ghosts="${CSS.escape(g.wall)}"]`);
    if (layer) append(layer, [svg("circle", { cx: g.x, cy: -g.elevation, r: 0.24 * Math.min(section.h, section.v), class: "ghost" }, svg("title", { text: "before: " + g.mark }))]);
  }
}
