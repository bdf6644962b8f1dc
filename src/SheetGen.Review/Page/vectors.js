/** Vectors of three numbers and matrices of sixteen, column by column. */

export const add = (a, b) => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const sub = (a, b) => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const times = (a, k) => [a[0] * k, a[1] * k, a[2] * k];
export const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
export const size = a => Math.hypot(a[0], a[1], a[2]);
export const unitOf = (a, otherwise = [0, 0, 1]) => size(a) > 1e-12 ? times(a, 1 / size(a)) : otherwise;
export const between = (a, b, t) => add(a, times(sub(b, a), t));

/** Two unit vectors square to a unit vector and to each other. */
export function squareTo(axis) {
  const u = unitOf(cross(axis, Math.abs(axis[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]));
  return [u, cross(axis, u)];
}

export function multiply(a, b) {
  const out = new Float32Array(16);
  for (let c = 0; c < 4; c++) {
    for (let r = 0; r < 4; r++) out[c * 4 + r] = a[r] * b[c * 4] + a[4 + r] * b[c * 4 + 1] + a[8 + r] * b[c * 4 + 2] + a[12 + r] * b[c * 4 + 3];
  }
  return out;
}

export function lookAt(eye, target, up) {
  const back = unitOf(sub(eye, target)), right = unitOf(cross(up, back), [1, 0, 0]), above = cross(back, right);
  return [right[0], above[0], back[0], 0, right[1], above[1], back[1], 0, right[2], above[2], back[2], 0, -dot(right, eye), -dot(above, eye), -dot(back, eye), 1];
}

export function perspective(height, aspect, near, far) {
  const f = 1 / Math.tan(height / 2);
  return [f / aspect, 0, 0, 0, 0, f, 0, 0, 0, 0, (far + near) / (near - far), -1, 0, 0, 2 * far * near / (near - far), 0];
}

export const parallel = (halfHeight, aspect, near, far) =>
  [1 / (halfHeight * aspect), 0, 0, 0, 0, 1 / halfHeight, 0, 0, 0, 0, 2 / (near - far), 0, 0, 0, (far + near) / (near - far), 1];

/** Clip coordinates of a point. */
export function project(m, p) {
  const w = m[3] * p[0] + m[7] * p[1] + m[11] * p[2] + m[15];
  return [0, 1, 2].map(r => (m[r] * p[0] + m[4 + r] * p[1] + m[8 + r] * p[2] + m[12 + r]) / w).concat(w);
}
