import { byFinding, byMark, byObstruction, byWall, doc, findingsOf, nails, reasons, requiredOf, sectionOf, STATUS_WORDS } from "./data.js";
import { button, byId, el, name, replace } from "./dom.js";
import { chooseFinding, chooseNail, chooseObstruction, chooseRow, chooseSection, onChange, state } from "./store.js";
import { severitySign, smallSymbol } from "./symbols.js";
import { count, degrees, length, station, turnWords } from "./words.js";
import { sectionPicture } from "./cut.js";
import { turnPicture } from "./turn.js";
import { markForm } from "./markform.js";
import { effectFacts } from "./effect.js";

/** What is known of the chosen thing. */

export function drawCard() {
  onChange(what => { if (what === "chosen") refresh(); });
  refresh();
}

function refresh() {
  const body = byId("card-body"), chosen = state.chosen;
  const make = { nail: () => nailCard(byMark.get(chosen.key)), finding: () => findingCard(byFinding.get(chosen.key)), obstruction: () => thingCard(byObstruction.get(chosen.key)), row: () => groupCard("Row"), section: () => groupCard("Section") };
  replace(body, chosen ? make[chosen.kind]() : nothingCard());
}

/** What deserves the first look, where nothing is chosen. */
function nothingCard() {
  const first = (value, show) => nails.filter(n => n[value] !== null).sort((a, b) => a[value] - b[value]).slice(0, 6)
    .map(n => el("li", {}, smallSymbol(n.status, n.kind), nailLink(n.mark), ` ${show(n)}`));
  const stop = nails.filter(n => n.status === "unresolved" || n.status === "noted");
  return [
    el("p", { class: "hint" }, "Click a nail, an obstruction, a finding or a row of the table to see all about it. Arrows step to the next nail, ", el("kbd", { text: "f" }), " to the next finding, ", el("kbd", { text: "?" }), " shows all keys."),
    stop.length ? [el("h4", { text: "Unresolved or noted on the sheets" }), el("ul", { class: "plain" }, stop.slice(0, 12).map(n => el("li", {}, smallSymbol(n.status, n.kind), nailLink(n.mark), ` ${turnWords(n, byWall.get(n.wall), sectionOf(n).inclination) || STATUS_WORDS[n.status]}`))), stop.length > 12 ? el("p", { class: "hint", text: `and ${stop.length - 12} more` }) : null] : null,
    el("h4", { text: "Closest to anything" }), el("ul", { class: "plain" }, first("clear", n => [length(n.clear), " to ", n.nearest].join(""))),
    el("h4", { text: "Least room to stray toward an obstruction" }), el("ul", { class: "plain" }, first("marginObstruction", n => degrees(n.marginObstruction))),
    el("h4", { text: "Least room to stray toward another nail" }), el("ul", { class: "plain" }, first("marginNail", n => degrees(n.marginNail))),
  ];
}

export const nailLink = mark => byMark.has(mark) ? button(name(mark), () => chooseNail(mark), { class: "link one" }) : name(mark);
export const thingLink = text => byObstruction.has(text) ? button(name(text), () => chooseObstruction(byObstruction.get(text)), { class: "link" }) : nailLink(text);

const facts = rows => el("dl", { class: "facts" }, rows.filter(Boolean).map(([term, ...value]) => el("div", {}, el("dt", { text: term }), el("dd", {}, value))));

function nailCard(n) {
  const wall = byWall.get(n.wall), section = sectionOf(n), turned = turnWords(n, wall, section.inclination), reason = reasons.get(n.mark), own = findingsOf(n.mark);
  const margin = (label, value) => [label, degrees(value), " of straying before it touches"];
  return [
    el("h3", {}, smallSymbol(n.status, n.kind), name(n.mark)),
    el("p", { class: "status " + n.status, text: STATUS_WORDS[n.status] + (n.kind === "production" ? "" : ` · ${n.kind} test nail`) }),
    n.status === "unresolved" ? el("p", { class: "stop", text: "DO NOT DRILL: something is too close. The engineer decides." }) : null,
    facts([
      ["Station", n.stationText], ["Elevation", length(n.elevation)], ["Length", length(n.length)], ["Inclination", degrees(n.inclination)],
      ["Turned", turned || "not turned"], n.moved && ["Grid station", n.gridText],
      ["Bar, hole", `${n.bar}, ${doc.units === "m" ? Math.round(n.radius * 2000) + " mm" : Math.round(n.radius * 2400) / 100 + " in"}`],
      ["Belongs to", button(`row ${n.row}`, () => chooseRow(n), { class: "link" }), " of ", button(name("section " + n.section), () => chooseSection(n.wall, n.section), { class: "link" }), ` of ${n.wall}`],
      ["Head", coordinates(n.head)], ["Tip", coordinates(n.tip)],
    ]),
    el("h4", { text: "What it is near" }),
    n.clear === null ? el("p", { text: "Nothing is near it." }) : el("p", {}, el("strong", { class: n.clear < requiredOf(n) - 1e-9 ? "bad" : "good", text: length(n.clear) }), " clear to ", thingLink(n.nearest), `; ${length(requiredOf(n))} is required. The line in 3D and below joins the two nearest points.`),
    facts([margin("Margin to obstructions", n.marginObstruction), margin("Margin to nails", n.marginNail)]),
    sectionPicture(n),
    turnPicture(n),
    effectFacts(n),
    reason ? [el("h4", { text: "Why it is so" }), el("p", {}, name(reason.reason)), tried(reason, wall)] : null,
    own.length ? [el("h4", { text: "Findings" }), el("ul", { class: "plain" }, own.map(f => el("li", {}, severitySign(f.severity), button(name(f.message), () => chooseFinding(f), { class: "link" }))))] : null,
    markForm("nail", n.mark),
  ];
}

const coordinates = p => `N ${(p[0] + doc.origin[0]).toFixed(doc.decimals)}, E ${(p[1] + doc.origin[1]).toFixed(doc.decimals)}, ${p[2].toFixed(doc.decimals)}`;

/** Cheaper choices that failed, as the placer gives them. */
function tried(reason, wall) {
  if (!reason.failed?.length) return null;
  return el("details", {}, el("summary", { text: `${count(reason.failed.length, "cheaper choice")} tried, and what each meets` }),
    el("table", {}, el("thead", {}, el("tr", {}, ["Station", "Splay", "Incl.", "Meets", "Clear"].map(h => el("th", { scope: "col", text: h })))),
      el("tbody", {}, reason.failed.map(c => el("tr", {}, el("td", { text: station(c.station, wall) }), el("td", { text: degrees(c.splay_deg) }), el("td", { text: degrees(c.inclination_deg) }), el("td", {}, thingLink(c.blocker)), el("td", { text: c.clear === undefined ? "" : length(c.clear) }))))));
}

function findingCard(f) {
  return [
    el("h3", {}, severitySign(f.severity), `${f.severity}: ${f.code}`),
    el("p", {}, name(f.message)),
    facts([
      f.nails.length > 0 && ["Nails", f.nails.slice(0, 30).map(m => [nailLink(m), " "]), f.nails.length > 30 ? `and ${f.nails.length - 30} more` : ""],
      f.obstruction !== undefined && ["Obstruction", thingLink(f.obstruction)],
      f.clear !== undefined && ["Clear", length(f.clear)], f.required !== undefined && ["Required", length(f.required)],
      f.station !== undefined && ["Station", station(f.station, byWall.get(f.wall)) + (f.to_station === undefined ? "" : " to " + station(f.to_station, byWall.get(f.wall)))],
      f.depths && ["Depth along the holes", f.depths.map(length).join(" and ")],
    ]),
    f.nails.length > 0 && byMark.has(f.nails[0]) ? sectionPicture(byMark.get(f.nails[0])) : null,
    markForm("finding", f.id),
  ];
}

function thingCard(o) {
  const near = nails.filter(n => n.nearest === o.name).sort((a, b) => a.clear - b.clear);
  return [
    el("h3", {}, name(o.name)),
    facts([["Kind", o.kind], ["Clearance required", length(o.required)], ...Object.entries(o.facts).map(([key, value]) => [key.replaceAll("_", " "), name(value)])]),
    el("p", { text: near.length ? `${count(near.length, "nail has", "nails have")} it as the nearest thing:` : "No nail has it as the nearest thing." }),
    el("ul", { class: "plain" }, near.slice(0, 40).map(n => el("li", {}, smallSymbol(n.status, n.kind), nailLink(n.mark), ` ${length(n.clear)} clear`))),
    near.length > 40 ? el("p", { text: `and ${near.length - 40} more, farther away` }) : null,
  ];
}

function groupCard(kind) {
  const own = nails.filter(n => state.marks.has(n.mark)), first = own[0];
  if (!first) return el("p", { text: "No nails." });
  const section = sectionOf(first), by = {};
  for (const n of own) by[n.status] = (by[n.status] ?? 0) + 1;
  const closest = own.filter(n => n.clear !== null).sort((a, b) => a.clear - b.clear)[0];
  return [
    el("h3", {}, kind === "Row" ? `Row ${first.row}, ` : "", name("section " + first.section)),
    facts([
      ["Wall", name(first.wall)], ["Stations", section.stations], ["Nails", String(own.length)], ["Length together", length(own.reduce((s, n) => s + n.length, 0))],
      ["Spacing", `${length(section.h)} by ${length(section.v)} at most`], ["Grid inclination", degrees(section.inclination)], ["Bar", section.bar],
      closest && ["Closest", `${length(closest.clear)}, `, nailLink(closest.mark), " to ", thingLink(closest.nearest)],
    ]),
    el("ul", { class: "plain" }, Object.entries(by).map(([status, n]) => el("li", {}, smallSymbol(status), `${n} ${STATUS_WORDS[status]}`))),
  ];
}
