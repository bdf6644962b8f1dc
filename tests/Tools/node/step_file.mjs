// Reads the clear text encoding of ISO 10303-21: {header, lines: Map(number -> {entity, args})}. Written for the tests alone.
// An argument is {ref}, {text}, {real}, {int}, {name} (enumeration), {typed, args}, null ($), "*" or a list.

export function readStep(text) {
  const lines = new Map();
  if (!text.startsWith("ISO-10303-21;\n") || !text.endsWith("END-ISO-10303-21;\n")) throw new Error("no STEP file from first to last line");
  const [header, data] = text.split("DATA;\n");
  for (const line of data.split("\n").slice(0, -1)) {
    if (line === "ENDSEC;") break;
    const match = /^#(\d+)=([A-Z0-9]+)\((.*)\);$/.exec(line);
    if (!match) throw new Error("not a line: " + line.slice(0, 120));
    if (/[^\x20-\x7e]/.test(line)) throw new Error("not ASCII: " + line.slice(0, 120));
    const parser = new Parser(match[3]);
    const args = parser.list();
    if (parser.at !== match[3].length) throw new Error("rest of a line: " + line.slice(0, 120));
    if (lines.has(+match[1])) throw new Error("two lines #" + match[1]);
    lines.set(+match[1], { entity: match[2], args });
  }
  return { header, lines };
}

class Parser {
  constructor(text) { this.text = text; this.at = 0; }

  list() {
    const items = [];
    if (this.at >= this.text.length || this.text[this.at] === ")") return items;
    for (;;) {
      items.push(this.item());
      if (this.text[this.at] !== ",") return items;
      this.at++;
    }
  }

  item() {
    const rest = this.text.slice(this.at, this.at + 80), c = rest[0];
    if (c === "(") return this.inBrackets();
    if (c === "$") { this.at++; return null; }
    if (c === "*") { this.at++; return "*"; }
    if (c === "'") return { text: this.quoted() };
    let m;
    if ((m = /^#(\d+)/.exec(rest))) { this.at += m[0].length; return { ref: +m[1] }; }
    if ((m = /^\.([A-Z0-9_]+)\./.exec(rest))) { this.at += m[0].length; return { name: m[1] }; }
    if ((m = /^-?\d+\.\d*(E[+-]?\d+)?/.exec(rest))) { this.at += m[0].length; return { real: parseFloat(m[0]) }; }
    if ((m = /^-?\d+/.exec(rest))) { this.at += m[0].length; return { int: parseInt(m[0], 10) }; }
    if ((m = /^([A-Z0-9]+)\(/.exec(rest))) { this.at += m[0].length - 1; return { typed: m[1], args: this.inBrackets() }; }
    throw new Error("not a value: " + rest);
  }

  inBrackets() {
    this.at++;
    const items = this.list();
    if (this.text[this.at++] !== ")") throw new Error("no closing bracket: " + this.text.slice(0, 120));
    return items;
  }

  quoted() {
    let text = "";
    for (this.at++; ; this.at++) {
      const c = this.text[this.at];
      if (c === undefined) throw new Error("text without end");
      if (c === "'") {
        if (this.text[this.at + 1] !== "'") { this.at++; return text; }
        this.at++;
        text += "'";
      } else if (c === "\\") {
        const m = /^\\X([24])\\([0-9A-F]+)\\X0\\/.exec(this.text.slice(this.at));
        if (m) {
          const width = m[1] === "2" ? 4 : 8;
          for (let i = 0; i < m[2].length; i += width) text += String.fromCodePoint(parseInt(m[2].slice(i, i + width), 16));
          this.at += m[0].length - 1;
        } else if (this.text[this.at + 1] === "\\") { this.at++; text += "\\"; } else throw new Error("backslash in " + this.text.slice(0, 120));
      } else text += c;
    }
  }
}
