import { sectionOf } from "./data.js";
import { svg } from "./dom.js";

/** Nail symbols, told apart by shape first and colour second; the sheets' own shapes. Radius 1 about the origin. */

/** Degrees, clockwise on the screen, that the symbol of a turned nail is turned by: toward its tip. */
export function turnOf(nail, sign) {
  if (nail.status !== "redirected" && nail.status !== "noted") return 0;
  if (nail.splay !== 0) return nail.splay * sign > 0 ? 0 : 180;
  return nail.inclination > sectionOf(nail).inclination ? 90 : 270;
}

export function symbol(status, kind, attributes = {}) {
  const parts = [svg("circle", { r: 1, class: "body" })];
  if (status === "moved") parts.push(svg("path", { d: "M0-1V1" }));
  if (status === "redirected") parts.push(svg("path", { d: "M0-1A1 1 0 0 1 0 1Z", class: "full" }));
  if (status === "noted") parts.push(svg("path", { d: "M1 0H2.3M2.9 0L2 .5V-.5Z", class: "full" }));
  if (status === "unresolved") parts.push(svg("path", { d: "M-1.4-1.4H1.4V1.4H-1.4ZM-1.4-1.4L1.4 1.4M-1.4 1.4L1.4-1.4" }));
  if (kind === "proof") parts.push(svg("circle", { r: 1.55, class: "ring" }));
  if (kind === "verification") parts.push(svg("path", { d: "M1.9 0L0 1.9L-1.9 0L0-1.9Z", class: "ring" }));
  return svg("g", { ...attributes, class: `nail ${status} ${attributes.class ?? ""}` }, svg("g", { class: "sized" }, parts));
}

/** A symbol for a line of text. */
export const smallSymbol = (status, kind = "production") =>
  svg("svg", { viewBox: "-3 -3 6 6", class: "sign", "aria-hidden": "true", focusable: "false" }, symbol(status, kind));

const SEVERITY_SHAPES = {
  error: "M-2-2H2V2H-2ZM-1.1-1.1L1.1 1.1M-1.1 1.1L1.1-1.1",
  warning: "M0-2.2L2.3 1.8H-2.3ZM0-.8V.6M0 1V1.2",
  notice: "M-2 0A2 2 0 1 1 2 0A2 2 0 1 1-2 0M0-.2V1.1M0-1V-.8",
  accepted: "M-2.2 0L-.6 1.7L2.2-1.6",
};

export const severitySign = severity =>
  svg("svg", { viewBox: "-3 -3 6 6", class: `sign severity ${severity}`, "aria-hidden": "true", focusable: "false" }, svg("path", { d: SEVERITY_SHAPES[severity] ?? SEVERITY_SHAPES.notice }));
