import { doc, nails, STATUSES } from "./data.js";
import { byId, el, replace, svg } from "./dom.js";
import { addFilter } from "./filter.js";
import { onChange, state } from "./store.js";
import { figure, unit } from "./words.js";

/** Histograms of clear distances and of lengths; a bar, clicked, shows its nails. */

export function drawCharts() {
  const box = el("div", { class: "charts" });
  byId("charts").append(box);
  const fill = () => replace(box, clearChart(), lengthChart());
  onChange(what => { if (what === "filter") fill(); });
  fill();
}

const shown = () => nails.filter(n => state.shown.has(n.mark));

function clearChart() {
  const required = Math.max(doc.rules.nail, doc.rules.obstruction), step = doc.units === "m" ? 0.05 : 0.25;
  const values = shown().filter(n => n.clear !== null), low = Math.floor(values.reduce((m, n) => Math.min(m, n.clear), 0) / step + 1e-9), bins = [];
  const last = Math.max(low + 1, Math.min(low + 24, Math.ceil(values.reduce((m, n) => Math.max(m, n.clear), step) / step - 1e-9)));
  for (let i = low; i < last; i++) bins.push({ from: i * step, to: i + 1 === last ? Infinity : (i + 1) * step, list: [] });
  for (const n of values) bins[Math.max(0, Math.min(bins.length - 1, Math.floor(n.clear / step + 1e-9) - low))].list.push(n);
  return chart(`Clear distance to the nearest thing, ${unit}`, bins, b => b.to === Infinity ? `${figure(b.from)} and more` : `${figure(b.from)} to ${figure(b.to)}`,
    b => addFilter({ clearOver: b.from === bins[0].from ? "" : round(b.from), clear: b.to === Infinity ? "" : round(b.to) }), { at: required, text: `required ${figure(required)}`, bins });
}

function lengthChart() {
  const bins = [...new Set(shown().map(n => n.length))].sort((a, b) => a - b).map(l => ({ from: l, to: l, list: shown().filter(n => n.length === l) }));
  return chart(`Nail length, ${unit}`, bins, b => figure(b.from), b => addFilter({ long: round(b.from), longTo: round(b.to) }));
}

const round = v => String(Math.round(v * 1e5) / 1e5);

function chart(title, bins, label, choose, limit) {
  const w = 520, h = 150, foot = 22, most = Math.max(1, ...bins.map(b => b.list.length)), step = Math.min(64, w / Math.max(1, bins.length)), picture = svg("svg", { viewBox: `0 0 ${w} ${h + foot}`, class: "chart", role: "group", "aria-label": title });
  bins.forEach((b, i) => {
    const bar = svg("g", { tabindex: "0", role: "button", class: "barhit", "aria-label": `${label(b)}: ${b.list.length} nails` }, svg("rect", { x: i * step, y: 0, width: step, height: h, class: "back" }));
    let y = h;
    for (const status of STATUSES) {
      const tall = b.list.filter(n => n.status === status).length / most * (h - 30);
      if (tall > 0) bar.append(svg("rect", { x: i * step + 1, y: y -= tall, width: Math.max(1, step - 2), height: tall, class: "fill " + status }));
    }
    if (b.list.length && step > 16) bar.append(svg("text", { x: (i + 0.5) * step, y: y - 3, "font-size": 10, "text-anchor": "middle", text: String(b.list.length) }));
    bar.append(svg("title", { text: `${label(b)}: ${b.list.length}` }));
    for (const event of ["click", "keydown"]) bar.addEventListener(event, e => {
      if (event === "keydown" && e.key !== "Enter" && e.key !== " ") return;
      e.preventDefault();
      choose(b);
    });
    picture.append(bar);
    const every = Math.ceil(bins.length * 46 / w);
    if (i % every === 0) picture.append(svg("text", { x: (i + 0.5) * step, y: h + 14, "font-size": 10, "text-anchor": "middle", text: figure(b.from) }));
  });
  if (limit && bins.length) {
    const x = (limit.at - limit.bins[0].from) / ((limit.bins[0].to === Infinity ? limit.at + 1 : limit.bins[0].to) - limit.bins[0].from) * step;
    if (x >= 0 && x <= w) picture.append(svg("path", { d: `M${x} 0V${h}`, class: "limitline" }), svg("text", { x: x + 4, y: 10, "font-size": 10, text: limit.text }));
  }
  return el("figure", {}, el("figcaption", { text: title }), picture);
}

