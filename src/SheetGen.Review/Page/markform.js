import { button, el, name } from "./dom.js";
import { changedSince, markOf, MARK_STATES, setMark } from "./marks.js";
import { chosenNail, onChange, state } from "./store.js";

/** The form for a checker's mark on the chosen thing. */

let initials = "", shown = null;

/** A mark may also be set by key or come from a file: the form on the card then shows it. */
onChange(what => { if (what === "marks") shown?.(); });

export function markForm(kind, id) {
  const mark = markOf(kind, id), since = changedSince(kind, id);
  const note = el("textarea", { rows: "2", "aria-label": "Note", placeholder: "Note" }), who = el("input", { type: "text", size: "5", "aria-label": "Initials", placeholder: "Initials", class: "initials" });
  note.value = mark?.note ?? "";
  who.value = mark?.initials || initials;
  const now = () => markOf(kind, id)?.state ?? "";
  const save = value => {
    initials = who.value.trim();
    setMark(kind, id, value, note.value.trim(), initials);
  };
  const buttons = MARK_STATES.map(s => button(s, () => save(now() === s ? "" : s), { "data-state": s, class: "state " + s }));
  const info = el("p", { class: "hint" });
  const show = () => {
    const own = markOf(kind, id);
    for (const b of buttons) b.setAttribute("aria-pressed", String(b.dataset.state === now()));
    if (own && document.activeElement !== note) note.value = own.note;
    info.replaceChildren(own ? name([own.state || "note", own.initials && "by " + own.initials, own.on && "on " + own.on].filter(Boolean).join(" ")) : "Not looked at yet.");
  };
  note.addEventListener("change", () => save(now()));
  who.addEventListener("change", () => { if (now() || note.value.trim()) save(now()); else initials = who.value.trim(); });
  shown = show;
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

