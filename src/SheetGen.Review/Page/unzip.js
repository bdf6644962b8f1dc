/** Reads a ZIP archive (PKWARE APPNOTE 6.3, from memory): stored and deflated files, as texts. What is packed too large is refused. */

const MOST_BYTES = 60e6, MOST_FILES = 20000;

/** @param {Uint8Array} bytes the archive. @param {(name: string) => boolean} wanted which files are read. @returns name and text of each. */
export async function readZip(bytes, wanted) {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength), decode = new TextDecoder(), files = [];
  const bad = () => new Error("it is no ZIP archive, or a broken one");
  let end = bytes.length - 22, left = MOST_BYTES;
  while (end >= 0 && end > bytes.length - 22 - 65536 && view.getUint32(end, true) !== 0x06054b50) end--;
  if (end < 0 || view.getUint32(end, true) !== 0x06054b50) throw bad();
  const count = view.getUint16(end + 10, true);
  if (count > MOST_FILES) throw new Error("it holds too many files");
  for (let i = 0, at = view.getUint32(end + 16, true); i < count; i++) {
    if (at + 46 > bytes.length || view.getUint32(at, true) !== 0x02014b50) throw bad();
    const method = view.getUint16(at + 10, true), packed = view.getUint32(at + 20, true), label = view.getUint16(at + 28, true), header = view.getUint32(at + 42, true);
    const name = decode.decode(bytes.subarray(at + 46, at + 46 + label));
    at += 46 + label + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
    if (!wanted(name)) continue;
    if (header + 30 > bytes.length || view.getUint32(header, true) !== 0x04034b50) throw bad();
    const from = header + 30 + view.getUint16(header + 26, true) + view.getUint16(header + 28, true), body = bytes.subarray(from, from + packed);
    if (body.length !== packed) throw bad();
    const plain = method === 0 ? body : method === 8 ? await inflate(body, left) : null;
    if (!plain) throw new Error("a file in it is packed in a way that is not read");
    left -= plain.length;
    if (left < 0) throw new Error("it is too large");
    files.push([name, decode.decode(plain)]);
  }
  return files;
}

async function inflate(body, most) {
  const parts = [], reader = new Blob([body]).stream().pipeThrough(new DecompressionStream("deflate-raw")).getReader();
  let size = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    parts.push(value);
    size += value.length;
    if (size > most) {
      await reader.cancel();
      throw new Error("it is too large");
    }
  }
  const all = new Uint8Array(size);
  parts.reduce((at, part) => { all.set(part, at); return at + part.length; }, 0);
  return all;
}
