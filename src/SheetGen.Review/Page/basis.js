import { doc, findings, nails } from "./data.js";
import { append, byId, el, name } from "./dom.js";
import { count, length } from "./words.js";
import { nailLink } from "./card.js";

/** Verdict, tables of quantities, rules and defaults, proof, cautions. */

export function drawHead() {
  const p = doc.project;
  document.title = `${p.title || "Wall"} – review`;
  byId("title").replaceChildren(name(p.title || "Wall review"));
  append(byId("about"), [[p.number && name(p.number), p.revision && `revision ${p.revision}`, p.date, `${count(nails.length, "nail")}`, `units ${doc.units}`].filter(Boolean).flatMap((part, i) => i ? [" · ", part] : [part])]);
  drawVerdict();
  drawTables();
  drawBasis();
  append(byId("cautions"), [
    el("p", { text: "For review by the engineer of record. Not sealed. Local codes, the agency's standards and the project's own specifications govern over anything shown here." }),
    el("p", { text: "Obstructions are where the project file says: verify foundations and utilities in the field before drilling. Stability, capacity, facing and movement of the wall are not checked here. Defaults are labelled as defaults." }),
    el("p", { text: "This page sends nothing anywhere and asks for nothing: all it shows is inside this file; marks stay in this browser until you save them." })]);
}

const of = severity => findings.filter(f => f.severity === severity).length;

function drawVerdict() {
  const errors = of("error"), closest = nails.filter(n => n.clear !== null).sort((a, b) => a.clear - b.clear)[0], stop = nails.filter(n => n.status === "unresolved");
  append(byId("verdict"), [
    el("p", { class: errors ? "verdict bad" : "verdict good" }, el("strong", { text: errors ? `${count(errors, "error needs", "errors need")} the engineer.` : "No error." }), ` ${count(of("warning"), "warning")}, ${count(of("notice"), "notice")}, ${of("accepted")} accepted.`),
    closest ? el("p", {}, "Closest: ", el("strong", { text: length(closest.clear) }), ", ", nailLink(closest.mark), " to ", name(closest.nearest), ".") : null,
    stop.length ? el("p", { class: "stop" }, "Do not drill: ", stop.slice(0, 12).map(n => [nailLink(n.mark), " "]), stop.length > 12 ? `and ${stop.length - 12} more` : "") : null,
    el("p", {}, isBest() ? "Proven: no layout within the rules is better." : "Better layouts within the rules are not ruled out; the bounds stand below.")]);
}

const isBest = () => ["cover", "unresolved", "noted", "effort"].every(k => doc.checked.layout[k][0] === doc.checked.layout[k][1]);

function drawTables() {
  for (const t of doc.tables) {
    byId("tables").append(el("h2", { text: t.title }), el("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": t.title }, el("table", {},
      el("thead", {}, el("tr", {}, t.heads.map((h, i) => el("th", { scope: "col", class: t.numeric[i] ? "right" : null, text: h })))),
      el("tbody", {}, t.rows.map(row => el("tr", {}, row.map((cell, i) => el("td", { class: t.numeric[i] ? "right" : null }, name(cell)))))))));
  }
}

function drawBasis() {
  const score = doc.checked.layout, bound = b => b === null ? "none proven" : String(Math.round(b * 100) / 100);
  const table = (label, heads, rows) => el("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": label }, el("table", {}, el("caption", { text: label }), el("thead", {}, el("tr", {}, heads.map(h => el("th", { scope: "col", text: h })))), el("tbody", {}, rows.map(r => el("tr", {}, r.map((c, i) => el(i ? "td" : "th", { scope: i ? null : "row" }, c)))))));
  append(byId("basis"), [el("div", { class: "pair" },
    table("Rules", ["Rule", "Value", "From"], doc.values.map(([key, value, isDefault]) => [key, value, isDefault ? el("em", { text: "default" }) : "project file"])),
    el("div", {},
      table("How good the layout is, in order of weight", ["Figure", "Found", "No layout has less than"], [["Length without cover", String(Math.round(score.cover[0] * 100) / 100), bound(score.cover[1])], ["Unresolved nails", String(score.unresolved[0]), bound(score.unresolved[1])], ["Noted nails", String(score.noted[0]), bound(score.noted[1])], ["Effort", String(score.effort[0]), bound(score.effort[1])]]),
      doc.notes.length ? el("ul", {}, doc.notes.map(n => el("li", {}, name(n)))) : null,
      doc.checked.help.length ? [el("h3", { text: "What would free unresolved nails" }), el("ul", {}, doc.checked.help.map(h => el("li", {}, h.nails.map(m => [nailLink(m), " "]), ": ", name(h.value ? `${h.relaxation} ${h.value} ${h.result}` : h.result), h.needs_approval ? " (needs the engineer of record's consent)" : "")))] : null,
      el("h3", { text: "Made from" }),
      el("dl", { class: "facts" }, el("div", {}, el("dt", { text: "Project file, SHA-256" }), el("dd", { class: "hash", text: doc.checked.input_hash })), el("div", {}, el("dt", { text: "Program" }), el("dd", { text: "SheetGen " + doc.program })))))]);
}
