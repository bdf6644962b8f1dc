// Checks the lines of an IFC 4.3 file against what two packages know of the schema: web-ifc (every entity with its arguments and their types)
// and @ifc-lite/data (supertypes, abstract entities, property and quantity sets). Returns a list of faults in words.
import fs from "fs";
import path from "path";
import { fileURLToPath } from "url";
import { ENTITIES_IFC4X3, getPropertySets } from "@ifc-lite/data";

const folder = path.join(path.dirname(fileURLToPath(import.meta.url)), "node_modules", "web-ifc");
const integers = new Set(["IfcInteger", "IfcPositiveInteger", "IfcCountMeasure", "IfcDimensionCount", "IfcTimeStamp", "IfcDayInMonthNumber"]);

function readSchema() {
  const all = fs.readFileSync(path.join(folder, "ifc-schema.d.ts"), "utf8");
  const text = all.slice(all.indexOf("declare namespace IFC4X3 {"));
  const classes = new Map(), unions = new Map();
  for (const m of text.matchAll(/\n {4}class (Ifc\w+)(?: extends (\w+))? \{\n([\s\S]*?)\n {4}\}/g)) {
    const ctor = /\n {8}constructor\((.*)\);/.exec("\n" + m[3]);
    const enumeration = [...m[3].matchAll(/static (\w+): any;/g)].map(e => e[1]);
    const value = /\bvalue: (\w+);/.exec(m[3]);
    classes.set(m[1], {
      parent: m[2], enumeration, isValue: m[2] === "NumberHandle" || value !== null && enumeration.length === 0, value: value ? value[1] : "number",
      args: ctor && !/^\(?v(alue)?: /.test(ctor[1]) ? splitArguments(ctor[1]) : [],
    });
  }
  for (const m of text.matchAll(/\n {4}type (Ifc\w+) = (.*);/g)) unions.set(m[1], m[2]);
  return { classes, unions, byUpper: new Map([...classes.keys()].map(n => [n.toUpperCase(), n])) };
}

function splitArguments(text) {
  const parts = [];
  let depth = 0, from = 0;
  for (let i = 0; i < text.length; i++) {
    if ("(<".includes(text[i])) depth++;
    else if (")>".includes(text[i])) depth--;
    else if (text[i] === "," && depth === 0) { parts.push(text.slice(from, i)); from = i + 1; }
  }
  if (text.trim()) parts.push(text.slice(from));
  return parts.map(p => ({ name: p.trim().split(":")[0], type: p.slice(p.indexOf(":") + 1).trim() }));
}

export async function schemaFaults(lines) {
  const schema = readSchema(), faults = [];
  const tables = new Map(ENTITIES_IFC4X3.map(e => [e.name, e]));
  const nameOf = number => schema.byUpper.get(lines.get(number)?.entity);
  const isA = (name, wanted) => { for (let n = name; n; n = schema.classes.get(n)?.parent) if (n === wanted) return true; return false; };

  function names(type, seen = new Set()) { // every class that a type of the schema stands for
    const found = new Set();
    for (const m of type.matchAll(/\b(Ifc\w+|logical|number|string|boolean)\b/g)) {
      if (seen.has(m[1])) continue;
      seen.add(m[1]);
      if (schema.unions.has(m[1])) for (const n of names(schema.unions.get(m[1]), seen)) found.add(n);
      else found.add(m[1]);
    }
    return found;
  }

  function simple(name, value) { // a value of a defined type, or of an enumeration
    const of = schema.classes.get(name);
    if (!of) return name === "number" ? value.int !== undefined || value.real !== undefined : name === "string" ? value.text !== undefined : false;
    if (of.enumeration.length) return value.name !== undefined && of.enumeration.includes(value.name);
    if (["IfcBoolean", "IfcLogical"].includes(name)) return ["T", "F", ...(name === "IfcLogical" ? ["U"] : [])].includes(value.name);
    if (integers.has(name)) return value.int !== undefined;
    if (of.value === "string") return value.text !== undefined && (!["IfcLabel", "IfcIdentifier"].includes(name) || value.text.length <= 255);
    if (/Positive/.test(name) && !(value.real > 0)) return false;
    if (/NonNegative/.test(name) && !(value.real >= 0)) return false;
    return value.real !== undefined;
  }

  function fits(type, value) {
    if (value === null) return /\| null$/.test(type);
    type = type.replace(/ \| null$/, "");
    const list = /^(.*)\[\]$/.exec(type);
    if (Array.isArray(value)) return list !== null && value.length > 0 && value.every(v => fits(list[1], v));
    if (list) return false;
    const allowed = names(type);
    if (value.ref !== undefined) return [...allowed].some(a => isA(nameOf(value.ref), a));
    const isSelect = schema.unions.has(type.trim());
    if (value.typed !== undefined) {
      const name = schema.byUpper.get(value.typed);
      return isSelect && allowed.has(name) && value.args.length === 1 && simple(name, value.args[0]);
    }
    return !isSelect && [...allowed].some(a => simple(a, value));
  }

  const ids = new Set();
  for (const [number, { entity, args }] of lines) {
    const name = schema.byUpper.get(entity), of = schema.classes.get(name);
    if (!of) { faults.push(`#${number} ${entity}: no such entity`); continue; }
    if (tables.get(name)?.abstract) faults.push(`#${number} ${entity} is abstract`);
    const given = args.filter(a => a !== "*");
    if (given.length !== of.args.length) { faults.push(`#${number} ${entity}: ${given.length} arguments, the schema has ${of.args.length}`); continue; }
    of.args.forEach((a, i) => { if (!fits(a.type, given[i])) faults.push(`#${number} ${entity}.${a.name}: ${JSON.stringify(given[i]).slice(0, 80)} is no ${a.type.slice(0, 80)}`); });
    if (of.args[0]?.name === "GlobalId") {
      const id = given[0].text;
      if (!/^[0-3][0-9A-Za-z_$]{21}$/.test(id)) faults.push(`#${number}: ${id} is no GlobalId`);
      if (ids.has(id)) faults.push(`#${number}: ${id} stands twice`);
      ids.add(id);
    }
    const kind = of.args.findIndex(a => a.name === "PredefinedType"), object = of.args.findIndex(a => a.name === "ObjectType");
    if (kind >= 0 && object >= 0 && given[kind]?.name === "USERDEFINED" && !given[object]) faults.push(`#${number} ${entity}: USERDEFINED without ObjectType`);
  }
  await checkSets(lines, nameOf, isA, faults);
  return faults;
}

/** Sets that begin with Pset_ or Qto_ must be the schema's: on the right elements, with properties of theirs in the right types. */
async function checkSets(lines, nameOf, isA, faults) {
  const sets = new Map((await getPropertySets("IFC4X3")).map(s => [s.name, s]));
  const measures = { IFCQUANTITYLENGTH: "IfcLengthMeasure", IFCQUANTITYAREA: "IfcAreaMeasure", IFCQUANTITYVOLUME: "IfcVolumeMeasure", IFCQUANTITYWEIGHT: "IfcMassMeasure", IFCQUANTITYCOUNT: "IfcCountMeasure" };
  const types = new Map([...sets.values()].flatMap(s => s.properties).filter(p => p.dataType).map(p => [p.dataType.toUpperCase(), p.dataType]));
  const used = new Set();
  for (const [number, { entity, args }] of lines) {
    if (entity !== "IFCRELDEFINESBYPROPERTIES") continue;
    const set = lines.get(args[5].ref), name = set.args[2].text, items = set.args[set.args.length - 1].map(r => lines.get(r.ref));
    used.add(args[5].ref);
    if (new Set(items.map(i => i.args[0].text)).size !== items.length) faults.push(`#${number} ${name}: two properties of one name`);
    if (!/^(Pset|Qto)_/.test(name)) continue;
    const known = sets.get(name);
    if (!known) { faults.push(`#${number} ${name}: no set of the schema`); continue; }
    for (const object of args[4]) {
      if (!known.applicableEntities.some(a => isA(nameOf(object.ref), a))) faults.push(`#${number} ${name}: not for ${nameOf(object.ref)}`);
    }
    for (const item of items) {
      const property = known.properties.find(p => p.name === item.args[0].text);
      const type = measures[item.entity] ?? types.get(item.args[2]?.typed);
      if (!property) faults.push(`#${number} ${name}.${item.args[0].text}: no property of the set`);
      else if (property.dataType !== type) faults.push(`#${number} ${name}.${property.name}: ${type} and not ${property.dataType}`);
    }
  }
  for (const [number, { entity }] of lines) {
    if (["IFCPROPERTYSET", "IFCELEMENTQUANTITY"].includes(entity) && !used.has(number)) faults.push(`#${number}: a set of nothing`);
  }
}
