/** A small reader of XML: elements as {name, attributes, children, text}. It makes no elements of the page, knows no entities but the five of XML and numbers, and asks for nothing. */

const TOKEN = /<!\[CDATA\[([\s\S]*?)\]\]>|<!-{2}[\s\S]*?-{2}>|<\?[\s\S]*?\?>|<!DOCTYPE[^>[]*(?:\[[\s\S]*?\]\s*)?>|<\/([^\s>]+)\s*>|<([^\s/>!?]+)((?:\s+[^\s=/>]+\s*=\s*(?:"[^"]*"|'[^']*'))*)\s*(\/?)>|([^<]+)/y;
const ATTRIBUTE = /([^\s=]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g;
const MOST_DEEP = 200;
const NAMED = { lt: "<", gt: ">", amp: "&", quot: "\"", apos: "'" };

const plain = text => text.replace(/&(?:#x([0-9a-fA-F]{1,6})|#([0-9]{1,7})|(\w+));/g, (all, hex, decimal, word) => {
  if (word) return NAMED[word] ?? all;
  const code = hex ? parseInt(hex, 16) : Number(decimal);
  return code <= 0x10ffff ? String.fromCodePoint(code) : all;
});
const local = name => name.slice(name.indexOf(":") + 1);

/** The root element; an error where the text is not well formed. */
export function readMarkup(text) {
  const root = { name: "", attributes: {}, children: [], text: "" }, open = [root];
  TOKEN.lastIndex = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  while (TOKEN.lastIndex < text.length) {
    const found = TOKEN.exec(text);
    if (!found) throw new Error("its XML cannot be read");
    const [, raw, end, start, attributes, empty, words] = found, top = open[open.length - 1];
    if (raw !== undefined) top.text += raw;
    else if (words !== undefined) top.text += plain(words);
    else if (end !== undefined) {
      if (open.length < 2 || top.name !== local(end)) throw new Error("its XML is not well formed");
      open.pop();
    } else if (start !== undefined) {
      const element = { name: local(start), attributes: {}, children: [], text: "" };
      for (const [, key, a, b] of attributes.matchAll(ATTRIBUTE)) element.attributes[local(key)] = plain(a ?? b);
      top.children.push(element);
      if (empty) continue;
      if (open.length > MOST_DEEP) throw new Error("its XML is too deep");
      open.push(element);
    }
  }
  if (open.length !== 1 || root.children.length !== 1) throw new Error("its XML is not well formed");
  return root.children[0];
}

/** Children of a name; of them the first one's text. */
export const childrenOf = (element, name) => element?.children.filter(c => c.name === name) ?? [];
export const textOf = (element, name) => childrenOf(element, name)[0]?.text.trim() ?? "";
