/** A ZIP archive of texts, stored as they are (PKWARE APPNOTE 6.3, from memory; the tests unpack it with other programs). */

const TABLE = Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c >>> 0;
});

function crc(bytes) {
  let c = 0xffffffff;
  for (const b of bytes) c = TABLE[(c ^ b) & 255] ^ (c >>> 8);
  return (c ^ 0xffffffff) >>> 0;
}

/** @param {[string, string][]} files names and texts; every file bears the first day that the form can tell. */
export function makeZip(files) {
  const parts = [], central = [], encode = new TextEncoder();
  let at = 0;
  const record = (signature, fields) => {
    const size = fields.reduce((s, [n]) => s + n, 4), view = new DataView(new ArrayBuffer(size));
    view.setUint32(0, signature, true);
    let offset = 4;
    for (const [n, value] of fields) {
      if (n === 2) view.setUint16(offset, value, true);
      else view.setUint32(offset, value, true);
      offset += n;
    }
    return new Uint8Array(view.buffer);
  };
  for (const [fileName, text] of files) {
    const label = encode.encode(fileName), body = encode.encode(text);
    // Version 2.0, UTF-8 names, stored, 1980-01-01.
    const common = [[2, 20], [2, 0x800], [2, 0], [2, 0], [2, 0x21], [4, crc(body)], [4, body.length], [4, body.length], [2, label.length], [2, 0]];
    central.push(record(0x02014b50, [[2, 20], ...common, [2, 0], [2, 0], [2, 0], [4, 0], [4, at]]), label);
    for (const part of [record(0x04034b50, common), label, body]) {
      parts.push(part);
      at += part.length;
    }
  }
  const size = central.reduce((s, p) => s + p.length, 0);
  return [...parts, ...central, record(0x06054b50, [[2, 0], [2, 0], [2, files.length], [2, files.length], [4, size], [4, at], [2, 0]])];
}
