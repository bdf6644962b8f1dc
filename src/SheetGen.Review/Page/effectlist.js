import { byMark } from "./data.js";
import { byId, el, name, replace } from "./dom.js";
import { area, effect, effects, force, hasRatios, isUnder, lowestCheck, ratio } from "./effect.js";
import { nailLink } from "./card.js";
import { onChange, state } from "./store.js";
import { count, length } from "./words.js";

/** What the layout does to the design: the changed nails, places without a nail, loads of the tests, what is not compared. */

const MOST = 200, ZONES = ["inner", "upper row", "corner", "end"];

export function drawEffect() {
  const section = byId("effect");
  if (!effect) return;
  section.hidden = false;
  const list = el("div");
  section.append(el("p", { class: "stop", text: effect.caution }), list, ...[leftOut(), tests(), missing(), effect.layers ? el("p", { class: "hint" }, name(effect.layers)) : null].filter(Boolean));
  const fill = () => replace(list, changedNails());
  onChange(what => { if (what === "filter") fill(); });
  fill();
}

const table = (label, heads, rows, left = 1) => el("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": label }, el("table", {}, el("caption", { text: label }),
  el("thead", {}, el("tr", {}, heads.map((h, i) => el("th", { scope: "col", class: i < left ? null : "right", text: h })))),
  el("tbody", {}, rows.map(r => el("tr", {}, r.map((c, i) => el(i ? "td" : "th", { scope: i ? null : "row", class: i < left ? null : "right" }, c)))))));

/** In the order of the sheets: by place on the face, lowest ratio first, then greatest share of area. */
function changedNails() {
  const all = [...effects.values()].filter(e => e.changed && byMark.has(e.nail)), own = all.filter(e => state.shown.has(e.nail)), key = e => e.drawn.ratio ?? Infinity, zone = e => ZONES.indexOf(e.zone);
  own.sort((a, b) => zone(a) - zone(b) || (key(a) === key(b) ? 0 : key(a) - key(b)) || b.area_of_design - a.area_of_design || (a.nail < b.nail ? -1 : 1));
  if (all.length === 0) return el("p", { text: "Every nail stands, points and reaches as on the grid and carries the grid's area." });
  const shown = own.slice(0, MOST), rows = shown.map(e => {
    const nail = byMark.get(e.nail), low = lowestCheck(e.drawn);
    return [nailLink(e.nail), e.zone, area(e.drawn.area), ratio(e.area_of_design), ratio(e.drawn.square),
      ...(hasRatios ? [ratio(e.grid?.ratio), el("span", { class: isUnder(nail, e.drawn.ratio) ? "bad" : null, text: ratio(e.drawn.ratio) }), low ? name(low.surface === undefined ? low.limit_state : `${low.limit_state}, ${low.surface}`) : ""] : [])];
  });
  return [table(`Changed nails against the design: ${own.length} of ${count(all.length, "nail")} that pass the filter`,
    ["Nail", "Place on the face", "Area of face", "Area / design", "Square to the face", ...(hasRatios ? ["Ratio on the grid", "Ratio as drawn", "Lowest limit state"] : [])], rows, 2),
  own.length > MOST ? el("p", { class: "hint", text: `and ${own.length - MOST} more: narrow the filter, or see the workbook` }) : null];
}

function leftOut() {
  return effect.left_out.length === 0 ? null : table("Grid places without a nail, and who carries their face", ["Place", "Area of face", "Carried by"],
    effect.left_out.map(s => [name(s.place), area(s.area), s.carried_by.map(c => [nailLink(c.nail), ` +${area(c.growth)} `])]), 1);
}

function tests() {
  if (effect.tests.length === 0) return null;
  const stretch = value => value === undefined ? "–" : force === "kN" ? `${value.toFixed(1)} mm` : `${value.toFixed(3)} in`;
  return table("Loads of nail tests", ["Section", "Test", "Soil", "Bonded length", `Test load, ${force}`, `Limit of the bar, ${force}`, "Free length", "Least movement of the head"],
    effect.tests.map(t => [name(`${t.wall}, ${t.section}`), t.kind, name(t.soil ?? "every soil"), length(t.bonded_length), t.test_load.toFixed(1), t.bar_limit.toFixed(1), length(t.free_length), stretch(t.least_stretch)]), 3);
}

function missing() {
  const lacking = effect.sections.filter(s => s.missing?.length);
  return lacking.length === 0 ? null : el("ul", { class: "plain" }, lacking.map(s => el("li", {}, name(`${s.wall}, section ${s.section}: ${s.missing.join("; ")}`))));
}
