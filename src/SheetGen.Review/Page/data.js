/** The page's data as objects: nails by mark, findings with points relative to the project's origin. */

/** Reads a document of this page, or of an older one. */
export function readDocument(text) {
  const raw = JSON.parse(text);
  if (raw.format !== 1 || !Array.isArray(raw.nails) || !Array.isArray(raw.columns)) throw new Error("not the data of a review page of this form");
  const nails = raw.nails.map((row, index) => {
    const nail = { index };
    raw.columns.forEach((name, i) => { nail[name] = row[i]; });
    return nail;
  });
  return { ...raw, nails };
}

export const doc = readDocument(document.getElementById("data").textContent);

export const nails = doc.nails;
export const byMark = new Map(nails.map(n => [n.mark, n]));
export const obstructions = doc.obstructions;
export const byObstruction = new Map(obstructions.map(o => [o.name, o]));
export const walls = doc.walls;
export const byWall = new Map(walls.map(w => [w.name, w]));

export const reasons = new Map(doc.checked.changes.map(c => [c.nail, c]));

export const findings = doc.checked.findings.map(f => ({
  ...f,
  nails: f.nails ?? [],
  points: (f.points ?? []).map(p => [p[0] - doc.origin[0], p[1] - doc.origin[1], p[2]]),
}));
export const byFinding = new Map(findings.map(f => [f.id, f]));

export const STATUSES = ["grid", "moved", "redirected", "noted", "unresolved"];
export const SEVERITIES = ["error", "warning", "notice", "accepted"];

export const STATUS_WORDS = {
  grid: "at its grid place",
  moved: "moved",
  redirected: "redirected within the field tolerance",
  noted: "redirected beyond the field tolerance, noted",
  unresolved: "unresolved: do not drill",
};

export const sectionOf = nail => byWall.get(nail.wall).sections.find(s => s.name === nail.section);

/** Findings that name a nail. */
export const findingsOf = mark => findings.filter(f => f.nails.includes(mark));

/** How a nail is near to something: the least clear distance that the rule asks for there. */
export const requiredOf = nail => byMark.has(nail.nearest) ? doc.rules.nail : byObstruction.get(nail.nearest)?.required ?? doc.rules.obstruction;
