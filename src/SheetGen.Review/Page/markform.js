import { button, el, name } from "./dom.js";
import { changedSince, markOf, MARK_STATES, setMark } from "./marks.js";
import { chosenNail, state } from "./store.js";

/** The form for a checker's mark on the chosen thing. */

let initials = "";

export function markForm(kind, id) {
  const mark = markOf(kind, id), since = changedSince(kind, id);
  const note = el("textarea", { rows: "2", "aria-label": "Note", placeholder: "Note" }), who = el("input", { type: "text", size: "5", "aria-label": "Initials", placeholder: "Initials", class: "initials" });
  note.value = mark?.note ?? "";
  who.value = mark?.initials || initials;
  let chosen = mark?.state ?? "";
  const set = value => { chosen = value; save(); };
  const save = () => {
    initials = who.value.trim();
    setMark(kind, id, chosen, note.value.trim(), initials);
    show();
  };
  const buttons = MARK_STATES.map(s => button(s, () => set(chosen === s ? "" : s), { "data-state": s, class: "state " + s }));
  const info = el("p", { class: "hint" });
  const show = () => {
    const now = markOf(kind, id);
    for (const b of buttons) b.setAttribute("aria-pressed", String(b.dataset.state === (now?.state ?? "")));
    info.replaceChildren(now ? name([now.state || "note", now.initials && "by " + now.initials, now.on && "on " + now.on].filter(Boolean).join(" ")) : "Not looked at yet.");
  };
  note.addEventListener("change", save);
  who.addEventListener("change", () => { if (chosen || note.value.trim()) save(); else initials = who.value.trim(); });
  show();
  return el("div", { class: "markform" }, el("h4", { text: "Checker's mark" }),
    since ? el("p", { class: "since", text: `Changed since it was marked: ${since}.` }) : null,
    el("div", { class: "states", role: "group", "aria-label": "Checker's mark" }, buttons, who), note, info);
}

/** Marks what is chosen by key; a second time takes the mark away. */
export function markChosen(value) {
  const nail = chosenNail(), kind = state.chosen?.kind === "finding" ? "finding" : nail && state.chosen.kind === "nail" ? "nail" : null;
  if (!kind) return;
  const id = state.chosen.key, mark = markOf(kind, id);
  setMark(kind, id, mark?.state === value ? "" : value, mark?.note ?? "", mark?.initials || initials);
}

