import { doc, nails, readDocument } from "./data.js";
import { button, el, saveFile, tell } from "./dom.js";
import { bcfArchive } from "./bcf.js";
import { compareWith } from "./compare.js";
import { keep, marks, orphans, take } from "./marks.js";
import { changed } from "./store.js";
import { count } from "./words.js";

/** Saving and loading: review.json holds the marks, and of each nail what a later revision is compared with. */

const KEPT = ["mark", "wall", "section", "row", "kind", "status", "stationText", "x", "elevation", "head", "tip", "splay", "inclination", "length", "radius", "own", "around"];
const LIMIT = 60e6;
// In two pieces: a script may not hold its own end or another's beginning.
const DATA = "<" + "script type=\"application/json\" id=\"data\">";

export function reviewText() {
  return JSON.stringify({
    format: 1, kind: "sheetgen review", project: doc.project, units: doc.units, input_hash: doc.checked.input_hash, program: doc.program, origin: doc.origin,
    marks: [...marks.values()], columns: KEPT, nails: nails.map(n => KEPT.map(k => n[k])),
  }, null, 1).replace(/\n {2,}/g, " ") + "\n";
}

/** Takes a saved review, or an older page, by its text. */
export function takeReview(text, fileName) {
  let old;
  try {
    if (text.length > LIMIT) throw new Error("it is too large");
    if (text.trimStart().startsWith("{")) {
      const raw = JSON.parse(text);
      if (raw.kind !== "sheetgen review") throw new Error("it is not a saved review");
      old = { ...readDocument(text), marks: raw.marks };
    } else {
      // Found as text, so that nothing of a strange page is ever parsed as one.
      const start = text.indexOf(DATA), end = text.indexOf("<" + "/script>", start);
      if (start < 0 || end < 0) throw new Error("it is neither a saved review nor a review page");
      const data = text.slice(start + DATA.length, end);
      old = { ...readDocument(data), marks: [] };
    }
    for (const n of old.nails) if (typeof n.mark !== "string" || !isPoint(n.head) || !isPoint(n.tip)) throw new Error("a nail in it has no mark or no place");
    if (!Array.isArray(old.origin) || !old.origin.slice(0, 2).every(Number.isFinite)) throw new Error("it has no origin");
    if (old.units !== doc.units) throw new Error(`its lengths are in ${old.units}, these in ${doc.units}`);
  } catch (e) {
    tell(`${fileName} was not taken: ${e.message}.`, "bad");
    return;
  }
  const taken = take(old.marks), lost = orphans().length, changes = compareWith(old, fileName);
  keep();
  changed("marks");
  tell(`${fileName}: ${count(taken, "mark")} taken${lost ? `, ${lost} of nails or findings that this revision does not have (they stay in the saved review)` : ""}; ${changes}.`);
}

/** An older review or page that the program put into this one. */
export function takeOlder() {
  const older = JSON.parse(document.getElementById("older").textContent);
  if (older) takeReview(older.text, older.name);
}

const isPoint = p => Array.isArray(p) && p.length === 3 && p.every(Number.isFinite);

export function fileButtons() {
  const input = el("input", { type: "file", accept: ".json,.html,application/json,text/html", class: "hidden", "aria-label": "Saved review or older page", tabindex: "-1" });
  input.addEventListener("change", async () => {
    const file = input.files[0];
    if (file) takeReview(await file.text(), file.name);
    input.value = "";
  });
  return [
    button("Save review", () => saveFile("review.json", reviewText(), "application/json"), { title: "review.json: your marks, and this revision's nails to compare with" }),
    button("Save BCF", () => saveFile("review.bcf", bcfArchive(), "application/octet-stream"), { title: "The marks as BCF 3.0 topics" }),
    button("Load review or older page", () => input.click(), { title: "Marks carry over; nails are compared" }), input,
  ].flat();
}

export const bytesOf = async () => [...new Uint8Array(await new Blob(bcfArchive()).arrayBuffer())];
