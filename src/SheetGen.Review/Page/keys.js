import { byMark, nails } from "./data.js";
import { append, button, byId, el } from "./dom.js";
import { stepFinding } from "./findinglist.js";
import { markChosen } from "./markform.js";
import { home, section } from "./space.js";
import { chooseNail, chooseNothing, chosenNail, state } from "./store.js";

/** Keys. Arrows follow the elevation as it is drawn. */

const KEYS = [
  ["← → ↑ ↓", "next nail that way in the elevation"], ["f, F", "next finding, the one before"], ["s, q, a", "mark what is chosen: seen, question, accepted"], ["n", "write a note"],
  ["x", "true section through the chosen nail in 3D"], ["h", "all of the wall in 3D"], ["/", "search"], ["t", "to the table of nails"], ["Esc", "choose nothing"], ["?", "this list"],
];

export function showHelp() {
  const help = byId("help");
  help.replaceChildren();
  append(help, [el("h2", { id: "help-head", text: "Keys" }), el("dl", { class: "keys" }, KEYS.map(([key, what]) => el("div", {}, el("dt", {}, el("kbd", { text: key })), el("dd", { text: what })))),
    el("p", { text: "In 3D: drag turns, shift and drag moves, the wheel zooms, two fingers move and zoom. Drawings: drag moves, the wheel zooms. A click chooses everywhere at once." }), button("Close", () => help.close())]);
  help.showModal();
}

export function listenToKeys() {
  document.addEventListener("keydown", e => {
    if (e.ctrlKey || e.metaKey || e.altKey || byId("help").open || e.target.closest?.("input,select,textarea")) return;
    const actions = {
      ArrowLeft: () => step(-1, 0), ArrowRight: () => step(1, 0), ArrowUp: () => step(0, 1), ArrowDown: () => step(0, -1),
      f: () => stepFinding(1), F: () => stepFinding(-1), s: () => markChosen("seen"), q: () => markChosen("question"), a: () => markChosen("accepted"),
      n: () => byId("card").querySelector("textarea")?.focus(), x: section, h: home, "/": () => byId("search").focus(), t: () => byId("nails").querySelector(".scroll").focus(),
      Escape: chooseNothing, "?": showHelp,
    };
    if (!actions[e.key] || (e.key.startsWith("Arrow") && e.target.closest?.(".scroll,.findings"))) return;
    e.preventDefault();
    actions[e.key]();
  });
}

/** The nearest shown nail in a direction of the elevation; a step along the row counts less than one across it. */
function step(dx, dz) {
  const from = chosenNail() ?? nails.find(n => state.shown.has(n.mark));
  if (!from) return;
  if (!state.chosen) return chooseNail(from.mark);
  let best = null, least = Infinity;
  for (const mark of state.shown) {
    const n = byMark.get(mark);
    if (n === from || n.wall !== from.wall) continue;
    const along = (n.x - from.x) * dx + (n.elevation - from.elevation) * dz, across = Math.abs((n.x - from.x) * dz) + Math.abs((n.elevation - from.elevation) * dx);
    if (along <= 1e-6 || across > 2 * along) continue;
    const far = along + 3 * across;
    if (far < least) [best, least] = [n, far];
  }
  if (best) chooseNail(best.mark);
}

