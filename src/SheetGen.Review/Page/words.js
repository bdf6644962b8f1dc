import { doc } from "./data.js";

/** Numbers and texts as people read them. */

export const unit = doc.units;

export const length = value => value === null || value === undefined ? "–" : value.toFixed(doc.decimals) + " " + unit;
export const figure = value => value === null || value === undefined ? "–" : value.toFixed(doc.decimals);
export const degrees = value => value === null || value === undefined ? "–" : String(Math.round(value * 100) / 100) + "°";
export const count = (n, one, many = one + "s") => `${n} ${n === 1 ? one : many}`;

/** A station of the results as it is printed: station equations of the wall's line added, full stations of 100 ft or 1000 m, BK or AH where it exists twice. */
export function station(value, wall) {
  if (value === undefined || value === null) return "–";
  const zones = [[-Infinity, 0], ...(wall?.jumps ?? [])], has = (i, v) => v >= zones[i][0] - 1e-9 && v <= (zones[i + 1]?.[0] ?? Infinity) + 1e-9;
  let own = 0;
  while (own + 1 < zones.length && zones[own + 1][0] <= value + 1e-9) own++;
  const printed = value + zones[own][1], twice = zones.findIndex((z, i) => i !== own && has(i, printed - z[1]));
  const full = doc.units === "m" ? 1000 : 100, places = 10 ** doc.decimals, at = Math.round(Math.abs(printed) * places), head = Math.floor(at / (full * places));
  return (printed < 0 ? "-" : "") + head + "+" + ((at - head * full * places) / places).toFixed(doc.decimals).padStart(full === 100 ? 3 + doc.decimals : 4 + doc.decimals, "0") + (twice < 0 ? "" : own > twice ? " AH" : " BK");
}

/** The side of a turned nail's tip for a person in front of the wall, and along the stations. */
export function turnWords(nail, wall, inclination) {
  const words = [];
  if (nail.splay !== 0) {
    const up = nail.splay > 0, left = up === (wall.side === "right");
    words.push(`${degrees(Math.abs(nail.splay))} to the ${left ? "LEFT" : "RIGHT"} (${up ? "up-station" : "down-station"})`);
  }
  const change = nail.inclination - inclination;
  if (Math.abs(change) > 1e-9) words.push(`${degrees(Math.abs(change))} ${change > 0 ? "steeper" : "flatter"} than the grid`);
  return words.join(", ");
}
