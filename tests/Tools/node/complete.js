// Asks the YAML language server for its diagnostics of a file and for completions at places in it.
// Usage: node complete.js FILE LINE:COLUMN ...   (from 1; the completion is asked for at the place)
// Prints {"problems": [...], "completions": {"LINE:COLUMN": [labels]}} as JSON.
"use strict";
const { spawn } = require("child_process");
const fs = require("fs");
const path = require("path");
const url = require("url");

const file = path.resolve(process.argv[2]);
const uri = url.pathToFileURL(file).href;
const server = spawn(process.execPath, [path.join(__dirname, "node_modules", "yaml-language-server", "bin", "yaml-language-server"), "--stdio"]);
server.stderr.on("data", d => process.stderr.write(d));
const waiting = new Map();
let next = 1, buffer = Buffer.alloc(0), told;
const diagnosed = new Promise(resolve => { told = resolve; });

function send(message) {
  const body = JSON.stringify({ jsonrpc: "2.0", ...message });
  server.stdin.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
}

function ask(method, params) {
  return new Promise(resolve => {
    waiting.set(next, resolve);
    send({ id: next++, method, params });
  });
}

server.stdout.on("data", data => {
  buffer = Buffer.concat([buffer, data]);
  for (;;) {
    const end = buffer.indexOf("\r\n\r\n");
    if (end < 0) return;
    const length = Number(/Content-Length: (\d+)/i.exec(buffer.toString("ascii", 0, end))[1]);
    if (buffer.length < end + 4 + length) return;
    const message = JSON.parse(buffer.toString("utf8", end + 4, end + 4 + length));
    buffer = buffer.subarray(end + 4 + length);
    if (message.method === undefined) waiting.get(message.id)(message.result);
    else if (message.method === "textDocument/publishDiagnostics") told(message.params.diagnostics);
    else if (message.id !== undefined) {
      const settings = { validate: true, completion: true, hover: true, schemaStore: { enable: false } };
      send({ id: message.id, result: message.method === "workspace/configuration" ? message.params.items.map(i => i.section === "yaml" ? settings : {}) : null });
    }
  }
});

(async () => {
  await ask("initialize", { processId: process.pid, rootUri: null, capabilities: { textDocument: { completion: { completionItem: { snippetSupport: true } } }, workspace: { configuration: true } } });
  send({ method: "initialized", params: {} });
  send({ method: "textDocument/didOpen", params: { textDocument: { uri, languageId: "yaml", version: 1, text: fs.readFileSync(file, "utf8") } } });
  const problems = await diagnosed;
  const completions = {};
  for (const place of process.argv.slice(3)) {
    const [line, column] = place.split(":").map(Number);
    const list = await ask("textDocument/completion", { textDocument: { uri }, position: { line: line - 1, character: column - 1 } });
    completions[place] = (list.items || list).map(i => i.label);
  }
  process.stdout.write(JSON.stringify({ problems: problems.map(p => `${p.range.start.line + 1}: ${p.message}`), completions }) + "\n");
  server.kill();
})();
