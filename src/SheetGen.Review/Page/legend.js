import { nails, STATUSES, STATUS_WORDS } from "./data.js";
import { button, byId, el } from "./dom.js";
import { addFilter } from "./filter.js";
import { smallSymbol } from "./symbols.js";

/** What the symbols mean and how many nails bear each; a click shows those nails. */

const SHORT = { grid: "grid", moved: "moved", redirected: "turned", noted: "noted", unresolved: "do not drill" };

export function drawLegend() {
  const items = STATUSES.map(s => [s, nails.filter(n => n.status === s).length]).filter(([, n]) => n > 0);
  byId("elevation-head").after(el("div", { class: "legend" },
    items.map(([s, n]) => button([smallSymbol(s), ` ${SHORT[s]} `, el("b", { text: String(n) })], () => addFilter({ status: s }), { title: STATUS_WORDS[s] })),
    ["proof", "verification"].filter(k => nails.some(n => n.kind === k)).map(k => el("span", {}, smallSymbol("grid", k), ` ${k} test`))));
}
