import { byFinding, byMark, byObstruction, byWall, doc } from "./data.js";
import { keyOf, marks } from "./marks.js";
import { makeZip } from "./zip.js";
import { add, cross, sub, times, unitOf } from "./vectors.js";

/** The checker's marks as BCF 3.0 (buildingSMART): a topic a mark, with a camera that looks at it. Lengths in metres, as that form asks. */

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

const STATUS = { seen: "Seen", question: "Open", accepted: "Accepted", "": "Note" };

export function bcfFiles() {
  const files = [["bcf.version", HEAD + "<Version VersionId=\"3.0\"/>\n"],
    ["project.bcfp", `${HEAD}<ProjectInfo><Project ProjectId="${guidOf(doc.project.number + doc.project.title)}"><Name>${escape(doc.project.title || "Soil nail wall")}</Name></Project></ProjectInfo>\n`],
    ["extensions.xml", `${HEAD}<Extensions><TopicTypes><TopicType>Finding</TopicType><TopicType>Nail</TopicType></TopicTypes><TopicStatuses>${Object.values(STATUS).map(s => `<TopicStatus>${s}</TopicStatus>`).join("")}</TopicStatuses></Extensions>\n`]];
  for (const mark of marks.values()) {
    const guid = guidOf(mark.key), eye = guidOf("view " + mark.key), thing = subject(mark);
    const author = escape(mark.initials || "checker"), day = (/^\d{4}-\d{2}-\d{2}$/.test(mark.on) ? mark.on : "2000-01-01") + "T00:00:00Z";
    files.push([`${guid}/markup.bcf`, `${HEAD}<Markup><Topic Guid="${guid}" TopicType="${mark.kind === "nail" ? "Nail" : "Finding"}" TopicStatus="${STATUS[mark.state]}"><Title>${escape(thing.title)}</Title>`
      + `<Labels>${thing.labels.map(l => `<Label>${escape(l)}</Label>`).join("")}</Labels><CreationDate>${day}</CreationDate><CreationAuthor>${author}</CreationAuthor><Description>${escape(thing.text)}</Description>`
      + (mark.note ? `<Comments><Comment Guid="${guidOf("note " + mark.key)}"><Date>${day}</Date><Author>${author}</Author><Comment>${escape(mark.note)}</Comment></Comment></Comments>` : "")
      + (thing.at ? `<Viewpoints><ViewPoint Guid="${eye}"><Viewpoint>viewpoint.bcfv</Viewpoint></ViewPoint></Viewpoints>` : "") + "</Topic></Markup>\n"]);
    if (thing.at) files.push([`${guid}/viewpoint.bcfv`, view(eye, thing)]);
  }
  return files;
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
  const xyz = (name, v) => `<${name}><X>${v[1]}</X><Y>${v[0]}</Y><Z>${v[2]}</Z></${name}>`, real = p => [(p[0] + doc.origin[0]) * m, (p[1] + doc.origin[1]) * m, p[2] * m];
  return `${HEAD}<VisualizationInfo Guid="${guid}"><PerspectiveCamera>${xyz("CameraViewPoint", real(eye))}${xyz("CameraDirection", look)}${xyz("CameraUpVector", unitOf(up))}<FieldOfView>45</FieldOfView><AspectRatio>1.6</AspectRatio></PerspectiveCamera></VisualizationInfo>\n`;
}
