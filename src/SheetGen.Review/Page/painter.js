import { tubeShape } from "./mesh.js";

/** WebGL 2: tubes drawn many at a time, flat pieces, and a buffer of ids for picking. */

const COMMON = `#version 300 es
precision highp float;
uniform mat4 u_view; uniform vec4 u_clip[3]; uniform vec3 u_eye;
out vec3 v_at; out vec3 v_normal; out vec4 v_colour; flat out vec4 v_id;`;

const TUBE = COMMON + `
layout(location=0) in vec4 a_at; layout(location=1) in vec3 a_normal;
layout(location=2) in vec3 i_a; layout(location=3) in vec3 i_b; layout(location=4) in vec2 i_r; layout(location=5) in vec4 i_colour; layout(location=6) in vec4 i_id;
void main() {
  vec3 way = i_b - i_a; float run = length(way); vec3 axis = run > 1e-6 ? way / run : vec3(0., 0., 1.);
  vec3 u = normalize(cross(axis, abs(axis.z) < .9 ? vec3(0., 0., 1.) : vec3(1., 0., 0.))), v = cross(axis, u);
  float r = mix(i_r.x, i_r.y, a_at.z);
  v_at = mix(i_a, i_b, a_at.z) + (u * a_at.x + v * a_at.y + axis * a_at.w) * r;
  v_normal = u * a_normal.x + v * a_normal.y + axis * a_normal.z;
  v_colour = i_colour; v_id = i_id; gl_Position = u_view * vec4(v_at, 1.);
}`;

const FLAT = COMMON + `
layout(location=0) in vec3 a_at; layout(location=1) in vec3 a_normal; layout(location=2) in vec4 a_colour; layout(location=3) in vec4 a_id;
void main() { v_at = a_at; v_normal = a_normal; v_colour = a_colour; v_id = a_id; gl_Position = u_view * vec4(a_at, 1.); }`;

const PAINT = `#version 300 es
precision highp float;
in vec3 v_at; in vec3 v_normal; in vec4 v_colour; flat in vec4 v_id;
uniform vec4 u_clip[3]; uniform vec3 u_eye; uniform float u_ids; uniform float u_alpha; uniform float u_parallel;
out vec4 o_colour;
void main() {
  for (int i = 0; i < 3; i++) if (dot(u_clip[i].xyz, v_at) + u_clip[i].w < 0.) discard;
  if (u_ids > .5) { if (v_id.x + v_id.y + v_id.z < .001) discard; o_colour = vec4(v_id.xyz, 1.); return; }
  vec3 to = u_parallel > .5 ? normalize(u_eye) : normalize(u_eye - v_at);
  vec3 n = normalize(v_normal); if (dot(n, to) < 0.) n = -n;
  float light = .5 + .4 * max(0., dot(n, to)) + .16 * max(0., n.z);
  o_colour = vec4(v_colour.rgb * light * v_colour.a * u_alpha, v_colour.a * u_alpha);
}`;

function compile(gl, vertex, fragment) {
  const program = gl.createProgram();
  for (const [type, text] of [[gl.VERTEX_SHADER, vertex], [gl.FRAGMENT_SHADER, fragment]]) {
    const shader = gl.createShader(type);
    gl.shaderSource(shader, text);
    gl.compileShader(shader);
    if (!gl.getShaderParameter(shader, gl.COMPILE_STATUS)) throw new Error(gl.getShaderInfoLog(shader) ?? "shader");
    gl.attachShader(program, shader);
  }
  gl.linkProgram(program);
  if (!gl.getProgramParameter(program, gl.LINK_STATUS)) throw new Error(gl.getProgramInfoLog(program) ?? "program");
  const at = name => gl.getUniformLocation(program, name);
  return { program, view: at("u_view"), clip: at("u_clip"), eye: at("u_eye"), ids: at("u_ids"), alpha: at("u_alpha"), parallel: at("u_parallel") };
}

const STRIDE = 10;

/** Where the processor draws in place of a graphics card, smooth edges would cost two thirds of the time. */
function isSlow() {
  const gl = document.createElement("canvas").getContext("webgl2"), told = gl?.getExtension("WEBGL_debug_renderer_info");
  const name = gl ? String(gl.getParameter(told ? told.UNMASKED_RENDERER_WEBGL : gl.RENDERER)) : "";
  gl?.getExtension("WEBGL_lose_context")?.loseContext();
  return /swiftshader|llvmpipe|softpipe|software|basic render/i.test(name);
}

export class Painter {
  constructor(canvas, sides) {
    const gl = canvas.getContext("webgl2", { antialias: !isSlow(), alpha: true, premultipliedAlpha: true, preserveDrawingBuffer: true });
    if (!gl) throw new Error("no WebGL 2");
    this.gl = gl;
    this.canvas = canvas;
    this.tube = compile(gl, TUBE, PAINT);
    this.flat = compile(gl, FLAT, PAINT);
    this.shapes = { round: this.#shape(sides, "round"), flat: this.#shape(Math.max(sides, 20), "flat"), open: this.#shape(4, "open") };
    this.groups = new Map();
    gl.enable(gl.DEPTH_TEST);
    gl.blendFunc(gl.ONE, gl.ONE_MINUS_SRC_ALPHA);
  }

  #shape(sides, ends) {
    const gl = this.gl, shape = tubeShape(sides, ends), vertices = gl.createBuffer(), triangles = gl.createBuffer();
    gl.bindBuffer(gl.ARRAY_BUFFER, vertices);
    gl.bufferData(gl.ARRAY_BUFFER, shape.vertices, gl.STATIC_DRAW);
    gl.bindBuffer(gl.ELEMENT_ARRAY_BUFFER, triangles);
    gl.bufferData(gl.ELEMENT_ARRAY_BUFFER, shape.triangles, gl.STATIC_DRAW);
    return { vertices, triangles, count: shape.triangles.length };
  }

  #group(name, make) {
    if (!this.groups.has(name)) {
      const gl = this.gl, group = { array: gl.createVertexArray(), buffer: gl.createBuffer(), count: 0 };
      gl.bindVertexArray(group.array);
      make(gl, group);
      gl.bindVertexArray(null);
      this.groups.set(name, group);
    }
    return this.groups.get(name);
  }

  /** Sets a group of tubes: items {a, b, r: [at a, at b], rgb, alpha, id}; drawn with open ends where the camera is so far that they are thin. */
  tubes(name, kind, items) {
    this.#tubes(name, kind, items);
    if (kind === "round") this.#tubes(name + " thin", "open", items);
  }

  #tubes(name, kind, items) {
    const group = this.#group(name, (gl, g) => {
      const shape = this.shapes[kind];
      gl.bindBuffer(gl.ARRAY_BUFFER, shape.vertices);
      for (const [at, size, offset] of [[0, 4, 0], [1, 3, 16]]) {
        gl.enableVertexAttribArray(at);
        gl.vertexAttribPointer(at, size, gl.FLOAT, false, 28, offset);
      }
      gl.bindBuffer(gl.ELEMENT_ARRAY_BUFFER, shape.triangles);
      gl.bindBuffer(gl.ARRAY_BUFFER, g.buffer);
      for (const [at, size, type, offset] of [[2, 3, gl.FLOAT, 0], [3, 3, gl.FLOAT, 12], [4, 2, gl.FLOAT, 24], [5, 4, gl.UNSIGNED_BYTE, 32], [6, 4, gl.UNSIGNED_BYTE, 36]]) {
        gl.enableVertexAttribArray(at);
        gl.vertexAttribPointer(at, size, type, type !== gl.FLOAT, STRIDE * 4, offset);
        gl.vertexAttribDivisor(at, 1);
      }
      g.kind = kind;
    });
    const floats = new Float32Array(items.length * STRIDE), bytes = new Uint8Array(floats.buffer);
    items.forEach((t, i) => {
      floats.set([...t.a, ...t.b, ...t.r], i * STRIDE);
      bytes.set([...t.rgb, Math.round((t.alpha ?? 1) * 255), ...idBytes(t.id)], (i * STRIDE + 8) * 4);
    });
    this.#fill(group, floats, items.length);
  }

  /** Sets a group of triangles: a vertex an item {p, normal, rgb, alpha, id}. */
  pieces(name, items) {
    const group = this.#group(name, (gl, g) => {
      gl.bindBuffer(gl.ARRAY_BUFFER, g.buffer);
      for (const [at, size, type, offset] of [[0, 3, gl.FLOAT, 0], [1, 3, gl.FLOAT, 12], [2, 4, gl.UNSIGNED_BYTE, 24], [3, 4, gl.UNSIGNED_BYTE, 28]]) {
        gl.enableVertexAttribArray(at);
        gl.vertexAttribPointer(at, size, type, type !== gl.FLOAT, 32, offset);
      }
      g.kind = null;
    });
    const floats = new Float32Array(items.length * 8), bytes = new Uint8Array(floats.buffer);
    items.forEach((v, i) => {
      floats.set([...v.p, ...v.normal], i * 8);
      bytes.set([...v.rgb, Math.round((v.alpha ?? 1) * 255), ...idBytes(v.id)], (i * 8 + 6) * 4);
    });
    this.#fill(group, floats, items.length);
  }

  #fill(group, floats, count) {
    const gl = this.gl;
    gl.bindBuffer(gl.ARRAY_BUFFER, group.buffer);
    gl.bufferData(gl.ARRAY_BUFFER, floats, gl.DYNAMIC_DRAW);
    group.count = count;
  }

  #draw(name, camera, ids, alpha) {
    const group = this.groups.get(camera.thin && this.groups.has(name + " thin") && name !== "chosen" && name !== "marks" ? name + " thin" : name);
    if (!group || group.count === 0) return;
    const gl = this.gl, p = group.kind ? this.tube : this.flat;
    gl.useProgram(p.program);
    gl.uniformMatrix4fv(p.view, false, camera.matrix);
    gl.uniform4fv(p.clip, camera.clip);
    gl.uniform3fv(p.eye, camera.eye);
    gl.uniform1f(p.ids, ids ? 1 : 0);
    gl.uniform1f(p.alpha, alpha);
    gl.uniform1f(p.parallel, camera.parallel ? 1 : 0);
    gl.bindVertexArray(group.array);
    if (group.kind) gl.drawElementsInstanced(gl.TRIANGLES, this.shapes[group.kind].count, gl.UNSIGNED_SHORT, 0, group.count);
    else gl.drawArrays(gl.TRIANGLES, 0, group.count);
    gl.bindVertexArray(null);
  }

  /** Draws all: what is solid, then what is seen through, then what is chosen once more through everything. */
  paint(camera) {
    const gl = this.gl;
    gl.bindFramebuffer(gl.FRAMEBUFFER, null);
    gl.viewport(0, 0, this.canvas.width, this.canvas.height);
    gl.clearColor(0, 0, 0, 0);
    gl.depthMask(true);
    gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT);
    gl.disable(gl.BLEND);
    for (const name of ["things", "shafts", "pipes", "nails", "chosen", "marks"]) this.#draw(name, camera, false, 1);
    gl.enable(gl.BLEND);
    gl.depthMask(false);
    for (const name of ["clear", "faint", "ghosts"]) this.#draw(name, camera, false, 1);
    gl.depthFunc(gl.ALWAYS);
    for (const name of ["chosen", "marks"]) this.#draw(name, camera, false, 0.45);
    gl.depthFunc(gl.LESS);
    gl.depthMask(true);
  }

  /** The id nearest to a pixel within a few pixels; 0 where there is none. Ids that are weak give way to all others. Pixels from the lower left. */
  pick(camera, x, y, isWeak) {
    const gl = this.gl, reach = 3, wide = 2 * reach + 1, [w, h] = [this.canvas.width, this.canvas.height];
    if (!this.target || this.target.w !== w || this.target.h !== h) this.#makeTarget(w, h);
    gl.bindFramebuffer(gl.FRAMEBUFFER, this.target.buffer);
    gl.viewport(0, 0, w, h);
    gl.enable(gl.SCISSOR_TEST);
    gl.scissor(x - reach, y - reach, wide, wide);
    gl.clearColor(0, 0, 0, 0);
    gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT);
    gl.disable(gl.BLEND);
    for (const name of ["things", "shafts", "pipes", "nails", "chosen", "clear"]) this.#draw(name, camera, true, 1);
    const pixels = new Uint8Array(wide * wide * 4);
    gl.readPixels(x - reach, y - reach, wide, wide, gl.RGBA, gl.UNSIGNED_BYTE, pixels);
    gl.disable(gl.SCISSOR_TEST);
    gl.bindFramebuffer(gl.FRAMEBUFFER, null);
    let best = 0, least = Infinity;
    for (let i = 0; i < wide * wide; i++) {
      const id = pixels[4 * i] + 256 * pixels[4 * i + 1] + 65536 * pixels[4 * i + 2];
      const far = (i % wide - reach) ** 2 + (Math.floor(i / wide) - reach) ** 2 + (isWeak(id) ? 1000 : 0);
      if (id && far < least) [best, least] = [id, far];
    }
    return best;
  }

  #makeTarget(w, h) {
    const gl = this.gl;
    if (this.target) for (const kind of ["colour", "depth"]) gl.deleteRenderbuffer(this.target[kind]);
    const target = { w, h, buffer: this.target?.buffer ?? gl.createFramebuffer(), colour: gl.createRenderbuffer(), depth: gl.createRenderbuffer() };
    gl.bindFramebuffer(gl.FRAMEBUFFER, target.buffer);
    for (const [kind, format, slot] of [["colour", gl.RGBA8, gl.COLOR_ATTACHMENT0], ["depth", gl.DEPTH_COMPONENT24, gl.DEPTH_ATTACHMENT]]) {
      gl.bindRenderbuffer(gl.RENDERBUFFER, target[kind]);
      gl.renderbufferStorage(gl.RENDERBUFFER, format, w, h);
      gl.framebufferRenderbuffer(gl.FRAMEBUFFER, slot, gl.RENDERBUFFER, target[kind]);
    }
    this.target = target;
  }
}

const idBytes = (id = 0) => [id & 255, (id >> 8) & 255, (id >> 16) & 255, 0];
