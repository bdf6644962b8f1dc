import { doc } from "./data.js";

/** Numbers and texts as people read them. */

export const unit = doc.units;

export const length = value => value === null || value === undefined ? "–" : value.toFixed(doc.decimals) + " " + unit;
export const figure = value => value === null || value === undefined ? "–" : value.toFixed(doc.decimals);
export const degrees = value => value === null || value === undefined ? "–" : String(Math.round(value * 100) / 100) + "°";
export const count = (n, one, many = one + "s") => `${n} ${n === 1 ? one : many}`;

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
