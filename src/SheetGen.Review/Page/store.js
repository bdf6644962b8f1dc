import { byMark, nails } from "./data.js";

/** What is chosen and what is filtered; every view listens. */

const listeners = [];

export const state = {
  /** {kind: "nail" | "finding" | "obstruction" | "row" | "section", key}, or null. */
  chosen: null,
  /** Marks of the nails that the chosen thing concerns. */
  marks: new Set(),
  /** Names of the obstructions that it concerns. */
  things: new Set(),
  /** Nails that pass the filter. */
  shown: new Set(nails.map(n => n.mark)),
  /** Findings that pass the filter. */
  findings: null,
};

export const onChange = listener => listeners.push(listener);

export function changed(what) {
  for (const listener of listeners) listener(what);
}

/** Chooses something; views show it, the card tells about it. */
export function choose(kind, key, marks, things = []) {
  state.chosen = kind === null ? null : { kind, key };
  state.marks = new Set(marks);
  state.things = new Set(things);
  changed("chosen");
}

export const chooseNothing = () => choose(null, null, []);

export function chooseNail(mark) {
  if (byMark.has(mark)) choose("nail", mark, [mark]);
}

export const chooseFinding = f => choose("finding", f.id, f.nails, f.obstruction ? [f.obstruction] : []);
export const chooseObstruction = o => choose("obstruction", o.name, nails.filter(n => n.nearest === o.name).map(n => n.mark), [o.name]);
export const rowKey = n => [n.wall, n.section, n.row].join("\u0001");
export const chooseRow = nail => choose("row", rowKey(nail), nails.filter(n => rowKey(n) === rowKey(nail)).map(n => n.mark));
export const sectionKey = (wall, section) => [wall, section].join("\u0001");
export const chooseSection = (wall, section) =>
  choose("section", sectionKey(wall, section), nails.filter(n => n.wall === wall && n.section === section).map(n => n.mark));

/** The one nail that is chosen, or the first of a finding; null where there is none. */
export function chosenNail() {
  if (!state.chosen || state.chosen.kind === "obstruction") return null;
  return byMark.get([...state.marks][0]) ?? null;
}
