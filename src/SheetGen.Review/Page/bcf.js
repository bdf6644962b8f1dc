import { byFinding, byMark, byObstruction, byWall, doc } from "./data.js";
import { keyOf, marks } from "./marks.js";
import { childrenOf, readMarkup, textOf } from "./markup.js";
import { makeZip } from "./zip.js";
import { add, cross, sub, times, unitOf } from "./vectors.js";

/** The checker's marks as BCF 3.0 (buildingSMART): a topic a mark, with a camera that looks at it, in metres and the coordinates of nails.ifc; and read back. */

const escape = text => String(text).replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, "\ufffd").replace(/[&<>"]/g, c => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;", "\"": "&quot;" })[c]);
const HEAD = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";

/** The same GUID for the same words, so that a later file replaces an earlier one's topics. */
function guidOf(text) {
  const words = [0x9e3779b9, 0x85ebca6b, 0xc2b2ae35, 0x27d4eb2f];
  for (const c of text) {
    for (let i = 0; i < 4; i++) {
      let w = Math.imul(words[i] ^ (c.codePointAt(0) + i * 0x1f123bb5), 0x01000193 + 2 * i);
      w ^= w >>> 15;
      words[i] = (w + words[(i + 1) % 4]) >>> 0;
    }
  }
  const hex = words.map(w => w.toString(16).padStart(8, "0")).join("");
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-a${hex.slice(17, 20)}-${hex.slice(20)}`;
}

/** Prints of a thing when it was marked, carried as a link of the topic, so that the mark can say what has changed since when the file is read back. */
const PRINTS = "urn:sheetgen:mark:";
const printsLink = mark => PRINTS + encodeURIComponent(JSON.stringify([mark.own, mark.around]));

/** Who made a mark without initials. */
const NOBODY = "checker";
const STATUS = { seen: "Seen", question: "Open", accepted: "Accepted", "": "Note" };

export function bcfFiles() {
  const files = [["bcf.version", HEAD + "<Version VersionId=\"3.0\"/>\n"],
    ["project.bcfp", `${HEAD}<ProjectInfo><Project ProjectId="${guidOf(doc.project.number + doc.project.title)}"><Name>${escape(doc.project.title || "Soil nail wall")}</Name></Project></ProjectInfo>\n`],
    ["extensions.xml", `${HEAD}<Extensions><TopicTypes><TopicType>Finding</TopicType><TopicType>Nail</TopicType></TopicTypes><TopicStatuses>${Object.values(STATUS).map(s => `<TopicStatus>${s}</TopicStatus>`).join("")}</TopicStatuses></Extensions>\n`]];
  for (const mark of marks.values()) {
    const guid = guidOf(mark.key), eye = guidOf("view " + mark.key), thing = subject(mark);
    const author = escape(mark.initials || NOBODY), day = (/^\d{4}-\d{2}-\d{2}$/.test(mark.on) ? mark.on : "2000-01-01") + "T00:00:00Z";
    files.push([`${guid}/markup.bcf`, `${HEAD}<Markup><Topic Guid="${guid}" TopicType="${mark.kind === "nail" ? "Nail" : "Finding"}" TopicStatus="${STATUS[mark.state]}"><ReferenceLinks><ReferenceLink>${escape(printsLink(mark))}</ReferenceLink></ReferenceLinks><Title>${escape(thing.title)}</Title>`
      + `<Labels>${thing.labels.map(l => `<Label>${escape(l)}</Label>`).join("")}</Labels><CreationDate>${day}</CreationDate><CreationAuthor>${author}</CreationAuthor><Description>${escape(thing.text)}</Description>`
      + (mark.note ? `<Comments><Comment Guid="${guidOf("note " + mark.key)}"><Date>${day}</Date><Author>${author}</Author><Comment>${escape(mark.note)}</Comment></Comment></Comments>` : "")
      + (thing.at ? `<Viewpoints><ViewPoint Guid="${eye}"><Viewpoint>viewpoint.bcfv</Viewpoint></ViewPoint></Viewpoints>` : "") + "</Topic></Markup>\n"]);
    if (thing.at) files.push([`${guid}/viewpoint.bcfv`, view(eye, thing)]);
  }
  return files;
}

/**
 * Marks of topics, as the page takes them. Topics of this page are known by their GUID, those of findings.bcf by the message of the finding; of the latter only
 * those that somebody has answered.
 * @param {[string, string][]} files names and texts of the archive.
 * @returns {{marks: object[], strange: string[]}} strange: titles of topics about nothing in this revision.
 */
export function marksOf(files) {
  const known = new Map(), list = [], strange = [], numbered = / \(F-\d+ of findings\.json\)$/;
  for (const mark of byMark.keys()) known.set(guidOf(keyOf("nail", mark)), ["nail", mark]);
  for (const id of byFinding.keys()) known.set(guidOf(keyOf("finding", id)), ["finding", id]);
  const byMessage = new Map([...byFinding.values()].map(f => [f.message.replace(/\s+/g, " "), f.id])), states = new Map(Object.entries(STATUS).map(([state, word]) => [word.toLowerCase(), state]));
  for (const [, text] of files) {
    const topic = childrenOf(readMarkup(text), "Topic")[0];
    if (!topic) continue;
    const status = topic.attributes.TopicStatus ?? "", about = textOf(topic, "Description");
    // BCF 3.0 keeps comments in the topic, 2.1 beside it.
    const comments = [...childrenOf(childrenOf(topic, "Comments")[0], "Comment"), ...childrenOf(readMarkup(text), "Comment")];
    let thing = known.get((topic.attributes.Guid ?? "").toLowerCase());
    if (!thing && byMessage.has(about.replace(numbered, "").replace(/\s+/g, " "))) {
      if (comments.length === 0 && (status === "Open" || status === "Accepted") && !textOf(topic, "ModifiedDate")) continue;
      thing = ["finding", byMessage.get(about.replace(numbered, "").replace(/\s+/g, " "))];
    }
    if (!thing) {
      strange.push(textOf(topic, "Title") || "a topic without a title");
      continue;
    }
    const state = states.get(status.toLowerCase()), last = comments[comments.length - 1], many = comments.length > 1;
    const said = comments.map(c => (many ? `${textOf(c, "Author")}, ${textOf(c, "Date").slice(0, 10)}: ` : "") + textOf(c, "Comment")).filter(Boolean);
    const dates = [topic, ...comments].flatMap(c => ["CreationDate", "ModifiedDate", "Date"].map(k => textOf(c, k).slice(0, 10))).filter(d => /^\d{4}-\d{2}-\d{2}$/.test(d)).sort();
    const who = (last && textOf(last, "Author")) || textOf(topic, "ModifiedAuthor") || textOf(topic, "CreationAuthor");
    list.push({
      kind: thing[0], key: keyOf(...thing), id: thing[1], state: state ?? "", note: [...(state === undefined && status ? [`status ${status}`] : []), ...said].join("\n"),
      initials: who === NOBODY ? "" : who, on: dates[dates.length - 1] ?? "", ...carriedPrints(topic), message: thing[0] === "finding" ? byFinding.get(thing[1]).message : "",
    });
  }
  return { marks: list, strange };
}

/** Empty prints where another program has dropped the link. */
function carriedPrints(topic) {
  const link = childrenOf(childrenOf(topic, "ReferenceLinks")[0], "ReferenceLink").map(l => l.text.trim()).find(l => l.startsWith(PRINTS));
  try {
    const [own, around] = JSON.parse(decodeURIComponent(link.slice(PRINTS.length)));
    return { own: String(own), around: String(around) };
  } catch {
    return { own: "", around: "" };
  }
}

export const bcfArchive = () => makeZip(bcfFiles());

function subject(mark) {
  if (mark.kind === "nail") {
    const n = byMark.get(mark.key.slice(5));
    if (!n) return { title: `Nail ${mark.key.slice(5)} (not in this revision)`, text: "The nail is not in this revision.", labels: ["gone"], at: null };
    return { title: "Nail " + n.mark, text: `${n.status}, station ${n.stationText}, elevation ${n.elevation}, length ${n.length} ${doc.units}`, labels: [n.status, n.mark], at: times(add(n.head, n.tip), 0.5), wall: byWall.get(n.wall) };
  }
  const f = [...byFinding.values()].find(x => keyOf("finding", x.id) === mark.key), n = f && byMark.get(f.nails[0]);
  if (!f) return { title: "Finding (not in this revision)", text: mark.message || "The finding is not in this revision.", labels: ["gone"], at: null };
  return { title: `${f.severity}: ${f.code}`, text: f.message, labels: [f.code, ...f.nails.slice(0, 20), ...(byObstruction.has(f.obstruction) ? [f.obstruction] : [])], at: f.points[0] ?? n?.head ?? null, wall: n ? byWall.get(n.wall) : null };
}

function view(guid, thing) {
  const spine = thing.wall.spine, a = spine[0], b = spine[spine.length - 1], d = unitOf([b[2] - a[2], b[3] - a[3], 0], [1, 0, 0]), side = thing.wall.side === "right" ? 1 : -1;
  const out = [d[1] * side, -d[0] * side, 0], m = doc.metres, away = 20 / m;
  const eye = add(thing.at, times(unitOf(add(out, [0, 0, 0.5])), away)), look = unitOf(sub(thing.at, eye)), up = cross(cross(look, [0, 0, 1]), look);
  // East, north, up: the order in which that form has X, Y and Z.
  const xyz = (name, v) => `<${name}><X>${v[1]}</X><Y>${v[0]}</Y><Z>${v[2]}</Z></${name}>`, real = p => [(p[0] + doc.world[0]) * m, (p[1] + doc.world[1]) * m, p[2] * m];
  return `${HEAD}<VisualizationInfo Guid="${guid}"><PerspectiveCamera>${xyz("CameraViewPoint", real(eye))}${xyz("CameraDirection", look)}${xyz("CameraUpVector", unitOf(up))}<FieldOfView>45</FieldOfView><AspectRatio>1.6</AspectRatio></PerspectiveCamera></VisualizationInfo>\n`;
}
