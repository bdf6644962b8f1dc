// Opens an IFC file with web-ifc, checks it against the schema, and prints as JSON what stands in it, for the tests.
// Usage: node read_ifc.mjs FILE [--schema]   (with --schema only the faults against the schema)
// Points are easting, northing, elevation in metres of the model's world (a map conversion is not added, but printed).
import fs from "fs";
import { IfcAPI } from "web-ifc";
import { readStep } from "./step_file.mjs";
import { schemaFaults } from "./ifc_schema.mjs";

const bytes = fs.readFileSync(process.argv[2]);
const { header, lines } = readStep(bytes.toString("latin1"));
const print = console.log, said = [];
console.log = console.error = text => said.push("web-ifc says: " + text); // It tells its troubles there.
const of = entity => [...lines].filter(([, l]) => l.entity === entity).map(([number, l]) => ({ number, ...l }));
const faults = await schemaFaults(lines);
if (process.argv[3] === "--schema") {
  print(JSON.stringify({ faults }));
  process.exit(0);
}
faults.push(...places(), ...alignments());

// Sets by the object that has them: {object number: {set: {property: value}}}
const sets = new Map();
for (const { args } of of("IFCRELDEFINESBYPROPERTIES")) {
  const set = lines.get(args[5].ref), values = {};
  for (const item of set.args[set.args.length - 1].map(r => lines.get(r.ref))) {
    const value = item.entity === "IFCPROPERTYSINGLEVALUE" ? item.args[2].args[0] : item.args[3];
    values[item.args[0].text] = value.text ?? value.real ?? value.int ?? value.name;
  }
  for (const object of args[4]) {
    if (!sets.has(object.ref)) sets.set(object.ref, {});
    if (sets.get(object.ref)[set.args[2].text]) faults.push(`two sets ${set.args[2].text} on #${object.ref}`);
    sets.get(object.ref)[set.args[2].text] = values;
  }
}

const shapes = await readShapes();
const parts = new Map(of("IFCRELAGGREGATES").map(r => [r.args[4].ref, r.args[5].map(p => p.ref)]));
const element = number => ({ entity: lines.get(number).entity, id: lines.get(number).args[0].text, name: lines.get(number).args[2]?.text, sets: sets.get(number) ?? {}, ...shapes.get(number) });
const nails = of("IFCELEMENTASSEMBLY").map(a => {
  const [bar, hole] = parts.get(a.number);
  return { mark: a.args[2].text, id: a.args[0].text, sets: sets.get(a.number), bar: element(bar), hole: element(hole), head: positions.get(a.number) };
});
const others = ["IFCWALL", "IFCCOVERING", "IFCPILE", "IFCBEAM", "IFCPIPESEGMENT", "IFCVIRTUALELEMENT", "IFCSITE", "IFCFACILITY", "IFCFACILITYPARTCOMMON", "IFCALIGNMENT"]
  .flatMap(e => of(e)).map(l => element(l.number));
const proxies = of("IFCBUILDINGELEMENTPROXY").filter(p => p.args[4]?.text === "OBSTRUCTION").map(p => element(p.number));
const map = of("IFCMAPCONVERSION")[0]?.args, crs = of("IFCPROJECTEDCRS")[0]?.args;
const project = of("IFCPROJECT")[0];
print(JSON.stringify({
  header, faults: [...faults, ...said], nails, others: [...others, ...proxies], project: project.args[0].text,
  map: map ? { easting: map[2].real, northing: map[3].real, name: crs[0]?.text } : null,
  unit: lengthUnit(), count: lines.size,
}));

function lengthUnit() {
  const units = lines.get(project.args[8].ref).args[0].map(u => lines.get(u.ref)).find(u => u.args.some(a => a?.name === "LENGTHUNIT"));
  return units.entity === "IFCSIUNIT" ? 1 : lines.get(units.args[3].ref).args[0].args[0].real;
}

/** Every element stands in one place, every place in a whole, up to the project. */
function places() {
  const bad = [], held = new Map();
  for (const r of [...of("IFCRELAGGREGATES").map(l => l.args[5]), ...of("IFCRELCONTAINEDINSPATIALSTRUCTURE").map(l => l.args[4]), ...of("IFCRELNESTS").map(l => l.args[5])]) {
    for (const { ref } of r) held.set(ref, (held.get(ref) ?? 0) + 1);
  }
  for (const [number, { entity, args }] of lines) {
    const isProduct = /^IFC(ELEMENTASSEMBLY|REINFORCINGBAR|BUILDINGELEMENTPROXY|WALL|COVERING|PILE|BEAM|PIPESEGMENT|VIRTUALELEMENT|SITE|FACILITY|FACILITYPARTCOMMON|ALIGNMENT|ALIGNMENTHORIZONTAL|ALIGNMENTSEGMENT|REFERENT)$/.test(entity);
    if (isProduct && held.get(number) !== 1) bad.push(`#${number} ${entity} ${args[2]?.text ?? ""} stands in ${held.get(number) ?? 0} places`);
  }
  return bad;
}

/** Segments that follow one another, a last one without length, and places along the curve that are where their coordinates say. */
function alignments() {
  const bad = [];
  globalThis.positions = new Map();
  const segmentsOf = new Map(of("IFCCOMPOSITECURVE").map(c => [c.number, c.args[0].map(s => segment(s.ref))]));
  for (const [, segments] of segmentsOf) {
    let at = 0;
    segments.forEach((s, i) => {
      if (i > 0 && distance(s.point(0), segments[i - 1].point(segments[i - 1].length)) > 1e-6) bad.push("a segment does not start where the one before ends");
      s.start = at;
      at += s.length;
    });
    if (segments[segments.length - 1].length !== 0 || segments[segments.length - 1].transition !== "DISCONTINUOUS") bad.push("no last segment without length");
    if (segments.slice(0, -1).some(s => s.transition === "DISCONTINUOUS")) bad.push("a curve that is broken inside");
  }
  const linear = new Map();
  for (const { number, args } of of("IFCLINEARPLACEMENT")) {
    const expression = lines.get(lines.get(args[1].ref).args[0].ref).args, segments = segmentsOf.get(expression[4].ref);
    const along = expression[0].args[0].real, left = expression[1].real, up = expression[2].real;
    const s = segments.slice(0, -1).findLast(x => x.start <= along + 1e-9) ?? segments[0];
    const p = s.point(along - s.start), t = s.heading(along - s.start);
    const at = [p[0] - Math.sin(t) * left, p[1] + Math.cos(t) * left, up], given = lines.get(lines.get(args[2].ref).args[0].ref).args[0].map(v => v.real);
    if (Math.hypot(at[0] - given[0], at[1] - given[1], at[2] - given[2]) > 1e-6) bad.push(`#${number}: a linear placement is not where its coordinates are: ${at} ${given}`);
    linear.set(number, at);
  }
  const nested = new Map(of("IFCRELNESTS").flatMap(r => r.args[5].map(p => [p.ref, r])));
  for (const { number, args } of of("IFCRELPOSITIONS")) {
    if (!nested.has(args[4].ref)) bad.push(`#${number}: a referent that belongs to no alignment`);
    for (const product of args[5]) positions.set(product.ref, linear.get(lines.get(args[4].ref).args[5].ref));
  }
  for (const { number, args } of of("IFCRELNESTS")) {
    const along = args[5].map(p => lines.get(p.ref)).filter(l => l.entity === "IFCREFERENT")
      .map(l => lines.get(lines.get(lines.get(l.args[5].ref).args[1].ref).args[0].ref).args[0].args[0].real);
    if (along.some((a, i) => i > 0 && a < along[i - 1])) bad.push(`#${number}: referents are not in order`);
  }
  for (const { args } of of("IFCRELNESTS")) { // the business logic says the same as the geometry
    const business = args[5].map(p => lines.get(p.ref)).filter(l => l.entity === "IFCALIGNMENTSEGMENT").map(l => lines.get(l.args[7].ref).args);
    if (business.length === 0) continue;
    const curves = [...segmentsOf.values()].find(s => s.length === business.length && s.every((c, i) => distance(c.point(0), lines.get(business[i][2].ref).args[0].map(v => v.real)) < 1e-6));
    if (!curves) { bad.push("segments of an alignment that no curve has"); continue; }
    curves.forEach((c, i) => {
      if (Math.abs(Math.sin((c.heading(0) - business[i][3].real) / 2)) > 1e-9) bad.push("a direction of a segment that is not the curve's");
      if (Math.abs(c.length - business[i][6].real) > 1e-9) bad.push("a length of a segment that is not the curve's");
      for (const [given, own] of [[business[i][4].real, c.curvature], [business[i][5].real, c.endCurvature]]) {
        if (Math.abs(own - (given === 0 ? 0 : 1 / given)) > 1e-12) bad.push("a radius of a segment that is not the curve's");
      }
    });
  }
  return bad;
}

function segment(number) {
  const { args } = lines.get(number), axes = lines.get(args[1].ref).args, from = lines.get(axes[0].ref).args[0].map(v => v.real);
  const direction = lines.get(axes[1].ref).args[0].map(v => v.real), heading = Math.atan2(direction[1], direction[0]);
  const begin = args[2].args[0].real, signed = args[3].args[0].real, parent = lines.get(args[4].ref);
  // Curvature to the left at s: of a circle by the sign of the length, of a clothoid s A / |A|^3 on the parent curve.
  const constant = parent.entity === "IFCCLOTHOID" ? parent.args[1].real : 0, sharpness = constant === 0 ? 0 : constant / Math.abs(constant) ** 3;
  const turn = parent.entity === "IFCCIRCLE" ? Math.sign(signed) / parent.args[1].real : sharpness * begin;
  const bearing = s => heading + turn * s + sharpness * s * s / 2;
  return {
    length: Math.abs(signed), transition: args[0].name, curvature: turn, endCurvature: turn + sharpness * Math.abs(signed), heading: bearing,
    point: s => { // Simpson's rule, as dull as can be
      const steps = 400, h = s / steps, at = [...from];
      for (let i = 0; i < steps; i++) {
        const [a, b, c] = [i * h, (i + 0.5) * h, (i + 1) * h].map(bearing);
        at[0] += h / 6 * (Math.cos(a) + 4 * Math.cos(b) + Math.cos(c));
        at[1] += h / 6 * (Math.sin(a) + 4 * Math.sin(b) + Math.sin(c));
      }
      return at;
    },
  };
}

function distance(a, b) { return Math.hypot(a[0] - b[0], a[1] - b[1]); }

/** Shapes as web-ifc sees them: box, volume of closed meshes, and both ends of the axis of what is long and round. */
async function readShapes() {
  const api = new IfcAPI();
  await api.Init();
  const model = api.OpenModel(new Uint8Array(bytes), { COORDINATE_TO_ORIGIN: false });
  if (api.GetModelSchema(model) !== "IFC4X3_ADD2") faults.push("web-ifc reads the schema as " + api.GetModelSchema(model));
  const found = new Map();
  api.StreamAllMeshes(model, mesh => {
    const points = [], triangles = [];
    for (let i = 0; i < mesh.geometries.size(); i++) {
      const placed = mesh.geometries.get(i), geometry = api.GetGeometry(model, placed.geometryExpressID), m = placed.flatTransformation;
      const v = api.GetVertexArray(geometry.GetVertexData(), geometry.GetVertexDataSize()), index = api.GetIndexArray(geometry.GetIndexData(), geometry.GetIndexDataSize());
      const first = points.length;
      for (let k = 0; k < v.length; k += 6) { // y is up there
        const [x, y, z] = [0, 1, 2].map(r => m[r] * v[k] + m[4 + r] * v[k + 1] + m[8 + r] * v[k + 2] + m[12 + r]);
        points.push([x, -z, y]);
      }
      for (let k = 0; k < index.length; k += 3) triangles.push([first + index[k], first + index[k + 1], first + index[k + 2]]);
      geometry.delete();
    }
    if (points.length === 0) return;
    const low = [0, 1, 2].map(r => points.reduce((s, p) => Math.min(s, p[r]), Infinity)), high = [0, 1, 2].map(r => points.reduce((s, p) => Math.max(s, p[r]), -Infinity));
    let six = 0;
    for (const [a, b, c] of triangles) {
      const [p, q, r] = [a, b, c].map(i => points[i].map((value, k) => value - low[k]));
      six += p[0] * (q[1] * r[2] - q[2] * r[1]) - p[1] * (q[0] * r[2] - q[2] * r[0]) + p[2] * (q[0] * r[1] - q[1] * r[0]);
    }
    found.set(mesh.expressID, { low, high, volume: six / 6, ends: ends(points) });
  });
  return found;
}

/** Middles of the two end circles: the two farthest groups of points. */
function ends(points) {
  const middle = mean(points), far = farthest(points, middle), other = farthest(points, far);
  const axis = other.map((v, k) => v - far[k]), size = Math.hypot(...axis);
  const at = points.map(p => p.reduce((s, v, k) => s + (v - far[k]) * axis[k], 0) / size);
  const near = points.filter((_, i) => at[i] < size / 2), beyond = points.filter((_, i) => at[i] >= size / 2);
  return near.length && beyond.length ? [mean(unique(near)), mean(unique(beyond))] : null;
}

function unique(points) { return [...new Map(points.map(p => [p.map(v => v.toFixed(5)).join(), p])).values()]; }
function mean(points) { return [0, 1, 2].map(k => points.reduce((s, p) => s + p[k], 0) / points.length); }
function farthest(points, from) { return points.reduce((best, p) => Math.hypot(...p.map((v, k) => v - from[k])) > Math.hypot(...best.map((v, k) => v - from[k])) ? p : best, points[0]); }
