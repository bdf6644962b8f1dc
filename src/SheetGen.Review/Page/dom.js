/** Building of elements. Texts become text nodes, never markup. */

const SVG = "http://www.w3.org/2000/svg";

function fill(element, attributes, children) {
  for (const [name, value] of Object.entries(attributes ?? {})) {
    if (value === null || value === undefined || value === false) continue;
    if (name.startsWith("on")) element.addEventListener(name.slice(2), value);
    else if (name === "text") element.textContent = value;
    else element.setAttribute(name, value === true ? "" : String(value));
  }
  append(element, children);
  return element;
}

export function append(element, children) {
  for (const child of children.flat(Infinity)) {
    if (child === null || child === undefined || child === false) continue;
    element.append(child instanceof Node ? child : document.createTextNode(String(child)));
  }
}

export const el = (tag, attributes, ...children) => fill(document.createElement(tag), attributes, children);
export const svg = (tag, attributes, ...children) => fill(document.createElementNS(SVG, tag), attributes, children);
export const byId = id => document.getElementById(id);

/** A name of the user's: keeps its own direction of writing to itself. */
export const name = text => el("bdi", { text });

export const button = (label, action, more) => el("button", { type: "button", onclick: action, ...more }, label);

export function replace(element, ...children) {
  element.replaceChildren();
  append(element, children);
}

/** Hands the user a file. */
export function saveFile(fileName, content, type) {
  const link = el("a", { href: URL.createObjectURL(new Blob([content], { type })), download: fileName });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(link.href), 10000);
}

/** A message for everyone, read out by screen readers too. */
export function tell(text, kind = "plain") {
  const news = byId("news");
  news.className = kind;
  replace(news, text, text ? button("Close", () => tell("")) : null);
}
