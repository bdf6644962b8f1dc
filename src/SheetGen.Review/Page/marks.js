import { byFinding, byMark, doc } from "./data.js";
import { tell } from "./dom.js";
import { changed } from "./store.js";

/** The checker's marks: kept in this browser under the project's number and title, so that the next revision's page finds them. */

export const MARK_STATES = ["seen", "question", "accepted"];
const PLACE = "sheetgen.review " + JSON.stringify([doc.project.number, doc.project.title]);

/** By key: {kind, key, state, note, initials, on, own, around, message}. */
export const marks = new Map();

/** What a thing is called across revisions: a nail by its mark, a finding by what it says of what. */
export function keyOf(kind, id) {
  if (kind === "nail") return "nail " + id;
  const f = byFinding.get(id);
  return "finding " + JSON.stringify([f.code, f.wall ?? "", f.nails, f.obstruction ?? "", f.nails.length ? "" : [f.station ?? "", f.nails.length || f.obstruction || f.station !== undefined ? "" : f.message]]);
}

/** Prints of a thing and its surroundings as they are now. */
export function printsOf(kind, id) {
  if (kind === "nail") {
    const n = byMark.get(id);
    return { own: n.own, around: n.around };
  }
  const f = byFinding.get(id), named = f.nails.map(m => byMark.get(m)).filter(Boolean);
  return { own: f.severity + " " + f.message, around: named.map(n => n.own + n.around).join(" ") };
}

export const markOf = (kind, id) => marks.get(keyOf(kind, id)) ?? null;
export const markStateOf = (kind, id) => markOf(kind, id)?.state ?? "";

/** What has changed since the mark was made: "", "itself", "its surroundings", or "not known" where a file of another program does not tell. */
export function changedSince(kind, id) {
  const mark = markOf(kind, id);
  if (!mark) return "";
  const now = printsOf(kind, id);
  if (mark.own === "") return "not known";
  return mark.own !== now.own ? "itself" : mark.around !== now.around ? "its surroundings" : "";
}

export function setMark(kind, id, state, note, initials) {
  const key = keyOf(kind, id);
  if (!state && !note) marks.delete(key);
  else marks.set(key, { kind, key, id, state, note, initials, on: new Date().toISOString().slice(0, 10), ...printsOf(kind, id), message: kind === "finding" ? byFinding.get(id).message : "" });
  keep();
  changed("marks");
}

export function keep() {
  try {
    localStorage.setItem(PLACE, JSON.stringify({ format: 1, marks: [...marks.values()] }));
  } catch {
    tell("This browser keeps nothing for pages like this one: save the review as a file before you close it.", "bad");
  }
}

/** Takes marks from a saved review; those made later win. */
export function take(list) {
  let taken = 0;
  for (const m of Array.isArray(list) ? list : []) {
    if (!m || typeof m.key !== "string" || (m.kind !== "nail" && m.kind !== "finding") || !(m.state === "" || MARK_STATES.includes(m.state))) continue;
    const text = value => typeof value === "string" ? value : "";
    const clean = { kind: m.kind, key: m.key, id: text(m.id), state: m.state, note: text(m.note), initials: text(m.initials), on: text(m.on), own: text(m.own), around: text(m.around), message: text(m.message) };
    const here = marks.get(m.key);
    if (here && here.on > clean.on) continue;
    marks.set(m.key, clean);
    taken++;
  }
  return taken;
}

export function remember() {
  try {
    const kept = JSON.parse(localStorage.getItem(PLACE) ?? "null");
    if (kept?.format === 1) take(kept.marks);
  } catch { /* What cannot be read is not there; the page says so when something is to be kept. */ }
}

const present = () => new Set([...byMark.keys()].map(m => keyOf("nail", m)).concat([...byFinding.keys()].map(id => keyOf("finding", id))));

/** Marks of things that this revision no longer has. */
export function orphans() {
  const here = present();
  return [...marks.values()].filter(m => !here.has(m.key));
}
