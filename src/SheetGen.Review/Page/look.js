import { button } from "./dom.js";
import { refill } from "./space.js";

/** Light or dark: as the system says, until the user says otherwise. */

const PLACE = "sheetgen.review look";
const dark = matchMedia("(prefers-color-scheme: dark)");

function kept() {
  try {
    return localStorage.getItem(PLACE);
  } catch {
    return null;
  }
}

export function applyLook() {
  document.documentElement.dataset.look = kept() ?? (dark.matches ? "dark" : "light");
}

export function lookButton() {
  const change = () => {
    const next = document.documentElement.dataset.look === "dark" ? "light" : "dark";
    try {
      localStorage.setItem(PLACE, next);
    } catch { /* Then it lasts as long as the page is open. */ }
    document.documentElement.dataset.look = next;
    refill();
  };
  dark.addEventListener("change", () => {
    applyLook();
    refill();
  });
  return button("Light / dark", change);
}
