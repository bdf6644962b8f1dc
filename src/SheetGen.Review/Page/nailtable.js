import { nails } from "./data.js";
import { button, byId, el, name, replace } from "./dom.js";
import { effects, hasRatios, ratio } from "./effect.js";
import { changedSince, markStateOf } from "./marks.js";
import { chooseNail, onChange, state } from "./store.js";
import { smallSymbol } from "./symbols.js";
import { degrees, figure, unit } from "./words.js";

/** The nails as a table: what the pictures say, in words; a page of rows at a time. */

const PAGE = 100;
const COLUMNS = [
  ["Nail", n => n.mark, n => [smallSymbol(n.status, n.kind), button(name(n.mark), () => chooseNail(n.mark), { class: "link" })]],
  ["Status", n => n.status], ["Wall", n => n.wall, n => name(n.wall)], ["Section", n => n.section, n => name(n.section)], ["Row", n => parseFloat(n.row), n => n.row],
  ["Station", n => n.station, n => n.stationText, true], [`Elevation, ${unit}`, n => n.elevation, n => figure(n.elevation), true], [`Length, ${unit}`, n => n.length, n => figure(n.length), true],
  ["Splay", n => n.splay, n => degrees(n.splay), true], ["Incl.", n => n.inclination, n => degrees(n.inclination), true],
  ["Nearest", n => n.nearest, n => name(n.nearest)], [`Clear, ${unit}`, n => n.clear ?? Infinity, n => figure(n.clear), true],
  ["Margin to obstructions", n => n.marginObstruction ?? Infinity, n => degrees(n.marginObstruction), true], ["Margin to nails", n => n.marginNail ?? Infinity, n => degrees(n.marginNail), true],
  ["Area / design", n => effects.get(n.mark)?.area_of_design ?? -1, n => ratio(effects.get(n.mark)?.area_of_design), true],
  ...(hasRatios ? [["Lowest ratio", n => effects.get(n.mark)?.drawn.ratio ?? Infinity, n => ratio(effects.get(n.mark)?.drawn.ratio), true]] : []),
  ["Checker", n => markStateOf("nail", n.mark), n => markStateOf("nail", n.mark) + (changedSince("nail", n.mark) ? ", changed since" : "")],
];
let order = { column: -1, down: false }, page = 0, body = null, foot = null, heads = [];

export function drawTable() {
  body = el("tbody");
  foot = el("p", { class: "pages" });
  heads = COLUMNS.map(([label, , , right], i) => el("th", { scope: "col", class: right ? "right" : "" }, button(label, () => {
    order = { column: i, down: order.column === i && !order.down };
    page = 0;
    fill();
  })));
  byId("nails").append(el("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "Table of nails" }, el("table", { class: "nailtable" }, el("caption", { class: "quiet", text: "Every nail with its place, direction, status and least clear distance. Heads sort." }), el("thead", {}, el("tr", {}, heads)), body)), foot);
  onChange(what => {
    if (what === "filter") page = 0;
    if (what === "filter" || what === "marks") fill();
    if (what === "chosen") mark();
  });
  fill();
}

function fill() {
  const list = nails.filter(n => state.shown.has(n.mark));
  if (order.column >= 0) {
    const of = COLUMNS[order.column][1];
    list.sort((a, b) => (of(a) < of(b) ? -1 : of(a) > of(b) ? 1 : a.index - b.index) * (order.down ? -1 : 1));
  }
  heads.forEach((h, i) => i === order.column ? h.setAttribute("aria-sort", order.down ? "descending" : "ascending") : h.removeAttribute("aria-sort"));
  const pages = Math.max(1, Math.ceil(list.length / PAGE));
  page = Math.min(page, pages - 1);
  const go = to => { page = to; fill(); };
  replace(body, list.slice(page * PAGE, (page + 1) * PAGE).map(n => el("tr", { "data-nail": n.mark },
    COLUMNS.map(([, of, show, right], i) => el(i === 0 ? "th" : "td", { scope: i === 0 ? "row" : null, class: right ? "right" : null }, (show ?? of)(n))))));
  replace(foot, list.length === 0 ? "No nail passes the filter." : `Nails ${page * PAGE + 1} to ${Math.min(list.length, (page + 1) * PAGE)} of ${list.length}. `,
    pages > 1 ? [button("Earlier", () => go(Math.max(0, page - 1)), { disabled: page === 0 }), " ", button("Later", () => go(page + 1), { disabled: page >= pages - 1 })] : null);
  mark();
}

function mark() {
  for (const row of body.children) {
    row.classList.toggle("chosen", state.marks.has(row.dataset.nail));
    if (state.marks.has(row.dataset.nail)) row.setAttribute("aria-current", "true");
    else row.removeAttribute("aria-current");
  }
}
