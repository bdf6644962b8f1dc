import { byMark, doc, findings, nails, SEVERITIES, STATUSES, walls } from "./data.js";
import { button, byId, el, replace } from "./dom.js";
import { markStateOf, MARK_STATES } from "./marks.js";
import { changed, onChange, state } from "./store.js";
import { count, unit } from "./words.js";

/** What is looked at: by words, status, wall, section, row, what is nearest, clear distance, length, checker's mark. */

const inputs = {};

export function drawFilter() {
  const text = (key, label, type = "text", more = {}) => inputs[key] = el("input", { type, "aria-label": label, placeholder: label, ...more });
  const pickOne = (key, label, options) => inputs[key] = el("select", { "aria-label": label }, el("option", { value: "", text: label }), options.map(o => el("option", { value: o, text: o })));
  const unique = key => [...new Set(nails.map(n => n[key]))];
  const row = el("form", { class: "bar" },
    text("words", "Search marks, reasons, findings", "search", { class: "wide", id: "search" }),
    walls.length > 1 ? pickOne("wall", "Any wall", unique("wall")) : null,
    pickOne("section", "Any section", unique("section")), pickOne("row", "Any row", unique("row").sort((a, b) => parseFloat(a) - parseFloat(b) || (a < b ? -1 : 1))),
    pickOne("status", "Any status", STATUSES), pickOne("nearest", "Nearest: anything", ["a nail", ...new Set(nails.filter(n => doc.obstructions.some(o => o.name === n.nearest)).map(n => n.nearest))]),
    range("Clear", text("clearOver", `Clear distance from, ${unit}`, "number"), text("clear", `Clear distance under, ${unit}`, "number")),
    range("Length", text("long", `Length from, ${unit}`, "number"), text("longTo", `Length to, ${unit}`, "number")),
    pickOne("severity", "Any severity", SEVERITIES), pickOne("mark", "Any mark", ["none", ...MARK_STATES]),
    button("Clear", () => setFilter({})), el("output", { id: "filter-count" }));
  row.addEventListener("input", apply);
  row.addEventListener("submit", e => e.preventDefault());
  byId("filter").append(row);
  onChange(what => { if (what === "marks" && inputs.mark.value) apply(); });
  apply();
}

function range(label, from, to) {
  for (const [input, hint] of [[from, "from"], [to, label === "Clear" ? "under" : "to"]]) {
    input.placeholder = hint;
    input.step = "any";
    input.className = "short";
  }
  return el("span", { class: "range" }, `${label}, ${unit}`, from, to);
}

/** Sets some fields and empties the others. */
export function setFilter(values) {
  for (const [key, input] of Object.entries(inputs)) input.value = values[key] ?? "";
  apply();
}

export function addFilter(values) {
  for (const [key, value] of Object.entries(values)) inputs[key].value = value;
  apply();
}

const number = key => inputs[key].value === "" ? null : inputs[key].valueAsNumber;
const words = n => `${n.mark} ${n.status} ${n.section} ${n.nearest} ${n.kind} ${n.stationText}`.toLowerCase();

function apply() {
  const v = Object.fromEntries(Object.entries(inputs).map(([key, input]) => [key, input.value])), sought = v.words.trim().toLowerCase();
  const [clear, clearOver, long, longTo] = ["clear", "clearOver", "long", "longTo"].map(number), isThing = new Set(doc.obstructions.map(o => o.name));
  const reasoned = sought ? new Set(doc.checked.changes.filter(c => c.reason.toLowerCase().includes(sought)).map(c => c.nail)) : null;
  const passes = n => (!v.wall || n.wall === v.wall) && (!v.section || n.section === v.section) && (!v.row || n.row === v.row) && (!v.status || n.status === v.status)
    && (!v.nearest || (v.nearest === "a nail" ? n.nearest !== "" && !isThing.has(n.nearest) : n.nearest === v.nearest))
    && (clear === null || (n.clear !== null && n.clear < clear)) && (clearOver === null || n.clear === null || n.clear >= clearOver)
    && (long === null || n.length >= long) && (longTo === null || n.length <= longTo)
    && (!v.mark || (markStateOf("nail", n.mark) || "none") === v.mark);
  const nailFields = ["wall", "section", "row", "status", "nearest", "clear", "clearOver", "long", "longTo"], narrowed = nailFields.some(k => v[k] !== undefined && v[k] !== "");
  const plain = new Set(nails.filter(passes).map(n => n.mark));
  state.shown = sought || v.severity ? new Set([...plain].filter(m => hit(m))) : plain;
  function hit(mark) {
    const n = byMark.get(mark);
    const own = v.severity ? findings.some(f => f.severity === v.severity && f.nails.includes(mark)) : true;
    return own && (!sought || words(n).includes(sought) || reasoned.has(mark));
  }
  state.findings = findings.filter(f => (!v.severity || f.severity === v.severity)
    && (!sought || `${f.message} ${f.code} ${f.id} ${f.nails.join(" ")}`.toLowerCase().includes(sought))
    && (!v.mark || (markStateOf("finding", f.id) || "none") === v.mark)
    && (!narrowed || f.nails.some(m => plain.has(m)) || (f.nails.length === 0 && (!v.wall || f.wall === v.wall) && !v.section && !v.row && !v.status && !v.nearest && clear === null && clearOver === null && long === null && longTo === null)));
  replace(byId("filter-count"), `${state.shown.size} of ${count(nails.length, "nail")}, ${state.findings.length} of ${count(findings.length, "finding")}`);
  changed("filter");
}
