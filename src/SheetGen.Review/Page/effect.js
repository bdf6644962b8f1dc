import { doc } from "./data.js";
import { el, name } from "./dom.js";
import { figure, length, unit } from "./words.js";

/** What the layout does to the engineer's design, nail by nail, as findings.json has it. Nothing is computed here. */

export const effect = doc.checked.effect ?? null;
export const effects = new Map((effect?.nails ?? []).map(n => [n.nail, n]));

export const force = doc.units === "m" ? "kN" : "kip";
export const area = value => value === undefined ? "–" : `${value.toFixed(doc.units === "m" ? 2 : 1)} ${unit}²`;
export const ratio = value => value === undefined ? "–" : value.toFixed(2);

/** True where the engineer's values give any ratio. */
export const hasRatios = [...effects.values()].some(e => e.drawn.ratio !== undefined);

/** The ratio that the engineer asks for in a nail's section; undefined where none is given. */
export const askedOf = nail => effect?.sections.find(s => s.wall === nail.wall && s.section === nail.section)?.least_ratio;

export const lowestCheck = place => place.checks?.reduce((least, c) => least === null || c.ratio < least.ratio ? c : least, null) ?? null;

export const isUnder = (nail, value) => value !== undefined && askedOf(nail) !== undefined && value < askedOf(nail);

/** The part of a nail's card. */
export function effectFacts(nail) {
  const e = effects.get(nail.mark);
  if (!e) return null;
  const d = e.drawn, g = e.grid, facts = [
    ["Area of face", `${area(d.area)}, ${ratio(e.area_of_design)} of the design's${g ? `; ${area(g.area)} on the grid` : ""}`],
    ["Force square to the face", `${(d.square * 100).toFixed(1)} %, ${(d.across * 100).toFixed(1)} % across it`],
    d.layers && ["Layers", d.layers.map(l => `${l.layer} ${figure(l.from)} to ${length(l.to)}`).join("; ")],
    ...(d.slip_surfaces ?? []).map(s => [`Behind surface ${s.surface}`, `${length(s.behind)}, ${length(s.front)} in front`]),
    d.max_load !== undefined && ["Greatest tension", `${d.max_load.toFixed(1)} ${force}`], d.head_load !== undefined && ["Load of the head", `${d.head_load.toFixed(1)} ${force}`],
  ];
  const before = c => g?.checks?.find(o => o.limit_state === c.limit_state && o.surface === c.surface)?.ratio;
  return [el("h4", { text: "What it carries" }),
    el("dl", { class: "facts" }, facts.filter(Boolean).map(([term, value]) => el("div", {}, el("dt", {}, name(term)), el("dd", {}, name(value))))),
    d.checks ? el("table", { class: "checks" }, el("thead", {}, el("tr", {}, ["Limit state", `Resistance, ${force}`, `Load, ${force}`, ...(g ? ["Grid"] : []), "Ratio"].map((h, i) => el("th", { scope: "col", class: i ? "right" : null, text: h })))),
      el("tbody", {}, d.checks.map(c => el("tr", {}, el("th", { scope: "row" }, name(c.surface === undefined ? c.limit_state : `${c.limit_state}, ${c.surface}`)),
        [c.resistance.toFixed(1), c.load.toFixed(1), ...(g ? [ratio(before(c))] : [])].map(v => el("td", { class: "right", text: v })), el("td", { class: isUnder(nail, c.ratio) ? "right bad" : "right" }, ratio(c.ratio)))))) : null,
    el("p", { class: "hint", text: `${askedOf(nail) === undefined ? "" : `The engineer asks for ${ratio(askedOf(nail))}. `}${effect.caution}` })];
}
