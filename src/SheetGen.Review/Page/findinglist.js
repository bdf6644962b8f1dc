import { findings, SEVERITIES } from "./data.js";
import { button, byId, el, name, replace } from "./dom.js";
import { changedSince, markStateOf } from "./marks.js";
import { chooseFinding, onChange, state } from "./store.js";
import { severitySign } from "./symbols.js";

/** The findings that pass the filter, the grave ones first. */

const MOST = 300;
let list = null;

export function drawFindings() {
  list = el("ol", { class: "findings", "aria-label": "Findings" });
  byId("findings").append(el("p", { class: "counts" }, SEVERITIES.map(s => [severitySign(s), ` ${findings.filter(f => f.severity === s).length} ${s}  `])), list);
  onChange(what => {
    if (what === "filter" || what === "marks") fill();
    if (what === "chosen") mark();
  });
  fill();
}

export const orderedFindings = () => [...state.findings].sort((a, b) => SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity));

function fill() {
  const all = orderedFindings();
  replace(list, all.slice(0, MOST).map(f => {
    const checked = markStateOf("finding", f.id);
    return el("li", { "data-id": f.id, class: checked ? "checked " + checked : "" },
      severitySign(f.severity), button([name(f.message), checked ? el("em", { text: ` [${checked}${changedSince("finding", f.id) ? ", changed since" : ""}]` }) : null], () => chooseFinding(f), { class: "link" }));
  }), all.length === 0 ? el("li", { class: "hint", text: findings.length ? "No finding passes the filter." : "The checker found nothing to report." }) : null,
    all.length > MOST ? el("li", { class: "hint", text: `and ${all.length - MOST} more: narrow the filter` }) : null);
  mark();
}

function mark() {
  for (const item of list.children) {
    const on = state.chosen?.kind === "finding" && item.dataset.id === state.chosen.key;
    item.classList.toggle("chosen", on);
    if (on) item.scrollIntoView({ block: "nearest" });
  }
}

/** The finding after or before the chosen one. */
export function stepFinding(by) {
  const all = orderedFindings();
  if (all.length === 0) return;
  const at = all.findIndex(f => state.chosen?.kind === "finding" && f.id === state.chosen.key);
  chooseFinding(all[at < 0 ? (by > 0 ? 0 : all.length - 1) : (at + by + all.length) % all.length]);
}
