import { button, el, svg } from "./dom.js";

/** A drawing that is moved with one pointer and zoomed with wheel, buttons or two fingers. Coordinates are the drawing's own, y down. */
export function makeCanvas(host, label, onPick) {
  const world = svg("g");
  const picture = svg("svg", { class: "drawing", role: "img", "aria-label": label }, world);
  let box = { x: 0, y: 0, w: 1, h: 1 }, home = box;
  const pointers = new Map();
  let moved = 0, redraw = () => { };

  function scale() {
    const size = picture.getBoundingClientRect();
    return Math.min(size.width / box.w, size.height / box.h) || 1;
  }

  function apply() {
    const size = picture.getBoundingClientRect();
    if (!size.width) return;
    const k = scale();
    world.setAttribute("transform", `translate(${size.width / 2 - (box.x + box.w / 2) * k} ${size.height / 2 - (box.y + box.h / 2) * k}) scale(${k})`);
    redraw(k);
  }

  function zoom(factor, clientX, clientY) {
    const size = picture.getBoundingClientRect(), k = scale();
    const dx = (clientX ?? size.x + size.width / 2) - size.x - size.width / 2, dy = (clientY ?? size.y + size.height / 2) - size.y - size.height / 2;
    const cx = box.x + box.w / 2 + dx / k, cy = box.y + box.h / 2 + dy / k;
    const w = Math.min(home.w * 4, Math.max(home.w / 400, box.w / factor)), f = w / box.w;
    const mx = cx - dx / k * f, my = cy - dy / k * f;
    box = { x: mx - w / 2, y: my - box.h * f / 2, w, h: box.h * f };
    apply();
  }

  function shift(dx, dy) {
    const k = scale();
    box = { ...box, x: box.x - dx / k, y: box.y - dy / k };
    apply();
  }

  picture.addEventListener("wheel", e => {
    e.preventDefault();
    zoom(Math.exp(-e.deltaY * 0.0015), e.clientX, e.clientY);
  }, { passive: false });
  picture.addEventListener("pointerdown", e => {
    pointers.set(e.pointerId, [e.clientX, e.clientY]);
    moved = 0;
  });
  picture.addEventListener("pointermove", e => {
    const last = pointers.get(e.pointerId);
    if (!last) return;
    const others = [...pointers].filter(([id]) => id !== e.pointerId);
    if (others.length === 0) shift(e.clientX - last[0], e.clientY - last[1]);
    else {
      const [ox, oy] = others[0][1];
      const before = Math.hypot(last[0] - ox, last[1] - oy), after = Math.hypot(e.clientX - ox, e.clientY - oy);
      if (before > 0) zoom(after / before, (e.clientX + ox) / 2, (e.clientY + oy) / 2);
    }
    moved += Math.abs(e.clientX - last[0]) + Math.abs(e.clientY - last[1]);
    if (moved > 5 && !picture.hasPointerCapture(e.pointerId)) picture.setPointerCapture(e.pointerId);
    pointers.set(e.pointerId, [e.clientX, e.clientY]);
  });
  for (const end of ["pointerup", "pointercancel"]) picture.addEventListener(end, e => pointers.delete(e.pointerId));
  picture.addEventListener("click", e => { if (moved <= 5) onPick(e.target, toWorld(e.clientX, e.clientY)); });

  function toWorld(clientX, clientY) {
    const size = picture.getBoundingClientRect(), k = scale();
    return [box.x + box.w / 2 + (clientX - size.x - size.width / 2) / k, box.y + box.h / 2 + (clientY - size.y - size.height / 2) / k];
  }

  host.append(el("div", { class: "zoom", role: "group", "aria-label": label + ": size" },
    button("+", () => zoom(1.5), { "aria-label": "Larger" }), button("−", () => zoom(1 / 1.5), { "aria-label": "Smaller" }),
    button("All", () => { box = home; apply(); }, { "aria-label": "Show all" })), picture);
  new ResizeObserver(apply).observe(picture);

  return {
    picture, world, zoom, apply, scale,
    onScale(listener) { redraw = listener; },
    setHome(x, y, w, h) {
      home = box = { x, y, w, h };
      apply();
    },
    /** Moves the drawing no more than it takes for a place to be inside. */
    reveal(x, y) {
      const size = picture.getBoundingClientRect(), k = scale(), edge = 14 / k;
      const over = (at, middle, half) => Math.max(0, at - middle - half) - Math.max(0, middle - half - at);
      const dx = over(x, box.x + box.w / 2, size.width / k / 2 - edge), dy = over(y, box.y + box.h / 2, size.height / k / 2 - edge);
      if (dx === 0 && dy === 0) return;
      box = { ...box, x: box.x + dx, y: box.y + dy };
      apply();
    },
    toScreen(x, y) {
      const size = picture.getBoundingClientRect(), k = scale();
      return [size.x + size.width / 2 + (x - box.x - box.w / 2) * k, size.y + size.height / 2 + (y - box.y - box.h / 2) * k];
    },
  };
}
