/** Keeps texts of a drawing from standing on one another: the first of a group that has room is shown. */
export function declutter(picture) {
  const taken = [];
  for (const label of [...picture.querySelectorAll("text.label")].sort((a, b) => rank(a) - rank(b))) {
    label.classList.remove("crowded");
    const box = label.getBoundingClientRect();
    if (taken.some(t => box.left < t.right + 2 && box.right > t.left - 2 && box.top < t.bottom && box.bottom > t.top)) label.classList.add("crowded");
    else taken.push(box);
  }
}

const rank = label => label.classList.contains("mark") ? 0 : label.classList.contains("section") ? 1 : label.classList.contains("thingname") ? 3 : 2;
