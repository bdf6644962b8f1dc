import { doc, nails, readDocument } from "./data.js";
import { button, el, saveFile, tell } from "./dom.js";
import { bcfArchive, marksOf } from "./bcf.js";
import { compareWith } from "./compare.js";
import { keep, marks, orphans, take } from "./marks.js";
import { changed } from "./store.js";
import { readZip } from "./unzip.js";
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
    old = inUnit(old);
  } catch (e) {
    tell(`${fileName} was not taken: ${e.message}.`, "bad");
    return;
  }
  const taken = take(old.marks), lost = orphans().length, changes = compareWith(old, fileName);
  keep();
  changed("marks");
  tell(`${fileName}: ${count(taken, "mark")} taken${lost ? `, ${lost} of nails or findings that this revision does not have (they stay in the saved review)` : ""}; ${changes}.`);
}

/** Takes marks from a BCF file, this page's own or another program's. */
export async function takeBcf(bytes, fileName) {
  let read;
  try {
    if (bytes.length > LIMIT) throw new Error("it is too large");
    const files = await readZip(bytes, n => /(^|\/)markup\.bcf$/.test(n));
    if (files.length === 0) throw new Error("it holds no topic of BCF");
    read = marksOf(files);
  } catch (e) {
    tell(`${fileName} was not taken: ${e.message}.`, "bad");
    return;
  }
  const taken = take(read.marks), strange = read.strange.length;
  keep();
  changed("marks");
  tell(`${fileName}: ${count(taken, "mark")} taken${strange ? `; ${count(strange, "topic")} about nothing in this revision: ${read.strange.slice(0, 5).join(", ")}${strange > 5 ? ` and ${strange - 5} more` : ""}` : ""}.`);
}

/** Takes a file by what it holds: an archive is BCF, all else a review or page. */
async function takeFile(file) {
  const bytes = new Uint8Array(await file.arrayBuffer());
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) await takeBcf(bytes, file.name);
  else takeReview(new TextDecoder().decode(bytes), file.name);
}

/** An older review or page that the program put into this one. */
export function takeOlder() {
  const older = JSON.parse(document.getElementById("older").textContent);
  if (older) takeReview(older.text, older.name);
}

const METRES = { "ft": 0.3048, "us-ft": 1200 / 3937, "m": 1 };

/** An older document with its lengths in this page's unit; its prints, made in the other unit, tell nothing then. */
function inUnit(old) {
  if (old.units === doc.units) return old;
  const k = METRES[old.units] / doc.metres;
  if (!Number.isFinite(k)) throw new Error(`its lengths are in ${old.units}, these in ${doc.units}`);
  const nails = old.nails.map(n => ({ ...n, head: n.head.map(v => v * k), tip: n.tip.map(v => v * k), x: n.x * k, elevation: n.elevation * k, length: n.length * k, radius: n.radius * k, own: "", around: "" }));
  return { ...old, nails, origin: old.origin.map(v => v * k), isConverted: true };
}

const isPoint = p => Array.isArray(p) && p.length === 3 && p.every(Number.isFinite);

export function fileButtons() {
  const input = el("input", { type: "file", accept: ".json,.html,.bcf,.bcfzip,application/json,text/html", class: "hidden", "aria-label": "Saved review, BCF file or older page", tabindex: "-1" });
  input.addEventListener("change", async () => {
    const file = input.files[0];
    if (file) await takeFile(file);
    input.value = "";
  });
  return [
    button("Save review", () => saveFile("review.json", reviewText(), "application/json"), { title: "review.json: your marks, and this revision's nails to compare with" }),
    button("Save BCF", () => saveFile("review.bcf", bcfArchive(), "application/octet-stream"), { title: "The marks as BCF 3.0 topics" }),
    button("Load review, BCF or older page", () => input.click(), { title: "Marks carry over; nails are compared" }), input,
  ].flat();
}

export const bytesOf = async () => [...new Uint8Array(await new Blob(bcfArchive()).arrayBuffer())];
