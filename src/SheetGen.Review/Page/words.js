import { doc } from "./data.js";

/** Numbers and texts as people read them. */

export const unit = doc.units;

export const length = value => value === null || value === undefined ? "–" : value.toFixed(doc.decimals) + " " + unit;
export const figure = value => value === null || value === undefined ? "–" : value.toFixed(doc.decimals);
export const degrees = value => value === null || value === undefined ? "–" : String(Math.round(value * 100) / 100) + "°";
export const count = (n, one, many = one + "s") => `${n} ${n === 1 ? one : many}`;

/** A station as it is printed: full stations of 100 ft or 1000 m. */
export function station(value) {
  if (value === undefined || value === null) return "–";
  const full = doc.units === "m" ? 1000 : 100, places = 10 ** doc.decimals, at = Math.round(Math.abs(value) * places), head = Math.floor(at / (full * places));
  return (value < 0 ? "-" : "") + head + "+" + ((at - head * full * places) / places).toFixed(doc.decimals).padStart(full === 100 ? 3 + doc.decimals : 4 + doc.decimals, "0");
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
