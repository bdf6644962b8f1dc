import { add, cross, lookAt, multiply, parallel, perspective, times, unitOf } from "./vectors.js";

/** Where the eye is: a target, two angles and a distance; seen in perspective or, for a true section, in parallel. */
export class Camera {
  constructor() {
    this.target = [0, 0, 0];
    this.yaw = 0;
    this.pitch = 0.5;
    this.distance = 100;
    this.parallel = false;
    this.planes = [];
    this.lens = 0.6;
  }

  get direction() {
    return [Math.sin(this.yaw) * Math.cos(this.pitch), Math.cos(this.yaw) * Math.cos(this.pitch), Math.sin(this.pitch)];
  }

  /** Eye, matrix and clip planes for a picture of a width per height. */
  take(aspect) {
    const toEye = this.direction, eye = add(this.target, times(toEye, this.distance));
    const up = Math.abs(toEye[2]) > 0.9995 ? [-Math.sin(this.yaw), -Math.cos(this.yaw), 0] : [0, 0, 1];
    const near = this.distance / 100, far = this.distance * 40;
    const lens = this.parallel ? parallel(this.distance * Math.tan(this.lens / 2), aspect, -far, far) : perspective(this.lens, aspect, near, far);
    const clip = new Float32Array(12);
    for (let i = 0; i < 3; i++) clip.set(this.planes[i] ?? [0, 0, 0, 1], 4 * i);
    return { matrix: multiply(lens, lookAt(eye, this.target, up)), eye: this.parallel ? toEye : eye, clip, parallel: this.parallel };
  }

  orbit(dx, dy) {
    this.yaw -= dx * 0.006;
    this.pitch = Math.max(-1.55, Math.min(1.57, this.pitch + dy * 0.006));
  }

  pan(dx, dy, height) {
    const back = this.direction, right = unitOf(cross([0, 0, 1], back), [Math.cos(this.yaw), -Math.sin(this.yaw), 0]), up = cross(back, right);
    const k = 2 * this.distance * Math.tan(this.lens / 2) / height;
    this.target = add(this.target, add(times(right, -dx * k), times(up, dy * k)));
  }

  zoom(factor) {
    this.distance = Math.max(1, Math.min(1e5, this.distance / factor));
  }

  /** Looks from a direction at a box so that its half diagonal fits. */
  look(from, target, reach) {
    const d = unitOf(from);
    this.yaw = Math.atan2(d[0], d[1]);
    this.pitch = Math.asin(Math.max(-1, Math.min(1, d[2])));
    this.target = target;
    this.distance = reach / Math.tan(this.lens / 2);
  }
}

/** A plane through a point: what lies on the side of the normal is kept. */
export const keepBeyond = (point, normal) => [...normal, -(normal[0] * point[0] + normal[1] * point[1] + normal[2] * point[2])];
