/** A point of a drawing, in mm: x to the right, y down. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A line of straights and arcs, as SVG has it and as points along it. */
export interface Trace {
  /** SVG path data. */
  readonly d: string;
  /** Points along it, close enough that no straight between two is more than 0.01 mm off. */
  readonly points: readonly Point[];
}

/** Numbers of a drawing: a micrometer is finer than any press. */
export function n(value: number): string {
  return String(Math.round(value * 1000) / 1000 || 0);
}

/** Draws a line: straights, arcs, and their end. Angles are in degrees, clockwise from the right. */
export class Pen {
  readonly #points: Point[] = [];
  #d = '';

  constructor(x: number, y: number) {
    this.#points.push({ x, y });
    this.#d = `M${n(x)} ${n(y)}`;
  }

  line(...to: readonly (readonly [number, number])[]): this {
    for (const [x, y] of to) {
      this.#points.push({ x, y });
      this.#d += `L${n(x)} ${n(y)}`;
    }
    return this;
  }

  /** An arc about a center, from the angle where the pen stands to another; clockwise if it grows. */
  arc(cx: number, cy: number, radius: number, from: number, to: number): this {
    const turn = to - from;
    const steps = Math.max(2, Math.ceil(Math.abs(turn) / 8));
    const pieces = Math.max(1, Math.ceil(Math.abs(turn) / 170));
    for (let at = 1; at <= steps; at++) {
      this.#points.push(onCircle(cx, cy, radius, from + (turn * at) / steps));
    }
    for (let at = 1; at <= pieces; at++) {
      const { x, y } = onCircle(cx, cy, radius, from + (turn * at) / pieces);
      this.#d += `A${n(radius)} ${n(radius)} 0 0 ${turn > 0 ? 1 : 0} ${n(x)} ${n(y)}`;
    }
    return this;
  }

  open(): Trace {
    return { d: this.#d, points: this.#points };
  }

  closed(): Trace {
    const [first] = this.#points;
    return { d: `${this.#d}Z`, points: first ? [...this.#points, first] : [] };
  }
}

/** The point of a circle at an angle in degrees, clockwise from the right. */
export function onCircle(cx: number, cy: number, radius: number, angleDeg: number): Point {
  const angle = (angleDeg * Math.PI) / 180;
  return { x: cx + radius * Math.cos(angle), y: cy + radius * Math.sin(angle) };
}

/** A closed polygon. */
export function polygon(...corners: readonly (readonly [number, number])[]): Trace {
  const [first, ...rest] = corners;
  if (first === undefined) return { d: '', points: [] };
  return new Pen(first[0], first[1]).line(...rest).closed();
}

/** An open line through points. */
export function polyline(...through: readonly (readonly [number, number])[]): Trace {
  const [first, ...rest] = through;
  if (first === undefined) return { d: '', points: [] };
  return new Pen(first[0], first[1]).line(...rest).open();
}

/** A rectangle, its corners rounded by `radius` mm. */
export function box(x: number, y: number, width: number, height: number, radius = 0): Trace {
  const right = x + width;
  const bottom = y + height;
  if (radius === 0) return polygon([x, y], [right, y], [right, bottom], [x, bottom]);
  const r = Math.min(radius, width / 2, height / 2);
  return new Pen(x + r, y)
    .line([right - r, y])
    .arc(right - r, y + r, r, -90, 0)
    .line([right, bottom - r])
    .arc(right - r, bottom - r, r, 0, 90)
    .line([x + r, bottom])
    .arc(x + r, bottom - r, r, 90, 180)
    .line([x, y + r])
    .arc(x + r, y + r, r, 180, 270)
    .closed();
}

/** A whole circle. */
export function circle(cx: number, cy: number, radius: number): Trace {
  return new Pen(cx + radius, cy).arc(cx, cy, radius, 0, 360).closed();
}

/** Points turned about a center by an angle in degrees, clockwise. */
export function turned(
  corners: readonly (readonly [number, number])[],
  cx: number,
  cy: number,
  angleDeg: number,
): readonly (readonly [number, number])[] {
  const angle = (angleDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return corners.map(([x, y]) => [
    cx + (x - cx) * cos - (y - cy) * sin,
    cy + (x - cx) * sin + (y - cy) * cos,
  ]);
}
