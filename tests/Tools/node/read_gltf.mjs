// Validates a binary glTF file with the Khronos validator, reads it with glTF Transform, and prints issues and nodes as JSON.
// Usage: node read_gltf.mjs FILE
// Each node with a mesh: name, group, extras, where the ends of its axis (0 and 1 on y) lie, scale, and the box of its points, in the scene.
import fs from "fs";
import validator from "gltf-validator";
import { NodeIO } from "@gltf-transform/core";

const bytes = new Uint8Array(fs.readFileSync(process.argv[2]));
const report = await validator.validateBytes(bytes);
const document = await new NodeIO().readBinary(bytes);
const nodes = [];
for (const node of document.getRoot().listNodes().filter(n => n.getMesh())) {
  const m = node.getWorldMatrix(), low = [Infinity, Infinity, Infinity], high = [-Infinity, -Infinity, -Infinity];
  const at = p => [0, 1, 2].map(r => m[r] * p[0] + m[4 + r] * p[1] + m[8 + r] * p[2] + m[12 + r]);
  let six = 0;
  for (const primitive of node.getMesh().listPrimitives()) {
    const position = primitive.getAttribute("POSITION"), index = primitive.getIndices();
    const point = i => at(position.getElement(i, []));
    for (let i = 0; i < position.getCount(); i++) point(i).forEach((v, k) => { low[k] = Math.min(low[k], v); high[k] = Math.max(high[k], v); });
    for (let i = 0; i < index.getCount(); i += 3) {
      const [p, q, r] = [0, 1, 2].map(k => point(index.getScalar(i + k)).map((v, d) => v - low[d]));
      six += p[0] * (q[1] * r[2] - q[2] * r[1]) - p[1] * (q[0] * r[2] - q[2] * r[0]) + p[2] * (q[0] * r[1] - q[1] * r[0]);
    }
  }
  const parents = [];
  for (let p = node.getParentNode(); p; p = p.getParentNode()) parents.push(p.getName());
  nodes.push({ name: node.getName(), parents, extras: node.getExtras(), start: at([0, 0, 0]), end: at([0, 1, 0]), scale: node.getScale(), low, high, volume: six / 6 });
}
const root = document.getRoot().getDefaultScene()?.listChildren()[0];
console.log(JSON.stringify({ issues: report.issues.messages, info: report.info, root: root ? { name: root.getName(), extras: root.getExtras() } : null, nodes }));
