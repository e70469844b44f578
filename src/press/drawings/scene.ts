import { type Line, nameLines, sizeLines } from '../lettering/index.ts';
import { hatching } from './hatching.ts';
import { n, type Point, polyline, type Trace } from './pen.ts';

/** The two strokes of all drawings, in mm: what is cut or seen first, and everything else. */
export const stroke = { thick: 0.7, thin: 0.35 } as const;

/** How a shape is drawn. */
export interface Look {
  readonly stroke?: keyof typeof stroke;
  /** White hides what lies behind; solid black is for sections too thin to hatch. */
  readonly fill?: 'white' | 'black' | 'none';
  /** Hatching of a section, and which way it leans. */
  readonly hatch?: 'right' | 'left';
  /** Outlines inside this one that are not cut. */
  readonly holes?: readonly Trace[];
  /** Not there now: where a part was, or will be. */
  readonly dashed?: boolean;
  /** What it is, for whoever measures the drawing. */
  readonly part?: string;
}

/** Words to be set beside the drawing, and what they belong to. */
export interface Label {
  readonly kind: 'size' | 'name';
  readonly lines: readonly Line[];
  /** Where its leader ends. */
  readonly anchor: Point;
  /** A dot inside a part; nothing where the leader prolongs a line of the drawing. */
  readonly end: 'dot' | 'none';
  /** The height at which it would best stand. */
  readonly wishY: number;
}

/** The broadest that a label is set where a drawing says nothing else, in mm: 60 mm for the whole. */
const COLUMN = 24;

const HEAD = { length: 2.7, half: 0.68 };
/** How far the tail of an arrow stands out from a gap too small to hold it. */
const TAIL = 5.2;
/** From a part to the start of an extension line, and from the arrows to its end. */
const OFF = 0.9;
const OVER = 1.3;

/** What a drawing is made of, in the order in which it is painted. */
export class Scene {
  readonly marks: string[] = [];
  readonly labels: Label[] = [];
  /** Lines of words below, each in the parts at which it may be parted. */
  readonly notes: (readonly string[])[] = [];
  /** Names that stand inside a part, centered on a point. */
  readonly inside: { readonly line: Line; readonly at: Point }[] = [];
  /** Corners of everything drawn, lettering left out. */
  readonly reach: Point[] = [];
  readonly #column: number;

  /** `column` is the broadest that its labels are set, in mm. */
  constructor(column = COLUMN) {
    this.#column = column;
  }

  shape(trace: Trace, look: Look = {}): void {
    const fill = { white: '#fff', black: '#000', none: 'none' }[look.fill ?? 'white'];
    const d = [trace, ...(look.holes ?? [])].map((each) => each.d).join('');
    const part = look.part === undefined ? '' : ` class="${look.part}"`;
    if (look.hatch !== undefined) {
      // The white below, then the lines, then the outline over their ends.
      const lines = hatching(
        [trace, ...(look.holes ?? [])].map(({ points }) => points),
        look.hatch,
      );
      this.marks.push(`<path d="${d}" fill="#fff" fill-rule="evenodd" stroke="none"/>`);
      this.marks.push(`<path d="${lines}" fill="none" stroke-width="${stroke.thin}"/>`);
    }
    const dashes = look.dashed === true ? ' stroke-dasharray="2 1.2"' : '';
    const width = stroke[look.stroke ?? 'thick'];
    this.marks.push(
      `<path${part} d="${d}" fill="${look.hatch === undefined ? fill : 'none'}" stroke-width="${width}"${dashes}/>`,
    );
    this.reach.push(...trace.points);
  }

  /** An open line; thin unless it is said. */
  line(trace: Trace, look: Look = {}): void {
    this.shape(trace, { stroke: 'thin', fill: 'none', ...look });
  }

  /** Long dashes and dots through the middle of what is round. */
  axis(...through: readonly (readonly [number, number])[]): void {
    const trace = polyline(...through);
    this.marks.push(
      `<path d="${trace.d}" fill="none" stroke-width="${stroke.thin}" stroke-dasharray="5 1 0.8 1"/>`,
    );
    this.reach.push(...trace.points);
  }

  /** An arrowhead with its tip at a point, looking the way of an angle in degrees. */
  head(tip: Point, angleDeg: number): void {
    const angle = (angleDeg * Math.PI) / 180;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const at = (back: number, side: number) => {
      const point = { x: tip.x - back * cos - side * sin, y: tip.y - back * sin + side * cos };
      this.reach.push(point);
      return `${n(point.x)} ${n(point.y)}`;
    };
    this.marks.push(
      `<path d="M${n(tip.x)} ${n(tip.y)}L${at(HEAD.length, HEAD.half)}L${at(HEAD.length, -HEAD.half)}Z" fill="#000" stroke="none"/>`,
    );
  }

  /**
   * A distance across: between the uprights at `left` and `right`, whose extension lines come from
   * the heights `from`; the arrows stand at the height `y`, outside where they would cross what lies
   * between. Its label stands to the right.
   */
  across(
    left: number,
    right: number,
    y: number,
    from: { readonly left: number; readonly right: number },
    label: string | null,
    outside = false,
  ): void {
    const up = (start: number) => Math.sign(y - start) || -1;
    for (const [x, start] of [[left, from.left] as const, [right, from.right] as const]) {
      const way = up(start);
      if (Math.abs(y - start) < OFF) continue;
      this.line(polyline([x, start + way * OFF], [x, y + way * OVER]));
    }
    const roomy = !outside && right - left >= 2 * HEAD.length + 2.5;
    if (roomy) {
      this.line(polyline([left, y], [right + OVER, y]));
      this.head({ x: left, y }, 180);
      this.head({ x: right, y }, 0);
    } else {
      this.line(polyline([left - TAIL, y], [left, y]));
      this.line(polyline([right, y], [right + TAIL, y]));
      this.head({ x: left, y }, 0);
      this.head({ x: right, y }, 180);
    }
    if (label !== null) this.sizeLabel(label, { x: right + (roomy ? OVER : TAIL), y }, 'none');
  }

  /** A distance up and down, between the levels `top` and `bottom`; the arrows stand at `x`. */
  upright(
    top: number,
    bottom: number,
    x: number,
    from: { readonly top: number; readonly bottom: number },
    label: string | null,
  ): void {
    for (const [y, start] of [[top, from.top] as const, [bottom, from.bottom] as const]) {
      const way = Math.sign(x - start) || 1;
      if (Math.abs(x - start) < OFF) continue;
      this.line(polyline([start + way * OFF, y], [x + way * OVER, y]));
    }
    const roomy = bottom - top >= 2 * HEAD.length + 1.5;
    if (roomy) {
      this.line(polyline([x, top], [x, bottom]));
      this.head({ x, y: top }, -90);
      this.head({ x, y: bottom }, 90);
    } else {
      this.line(polyline([x, top - TAIL], [x, bottom + TAIL]));
      this.head({ x, y: top }, 90);
      this.head({ x, y: bottom }, -90);
    }
    if (label !== null) this.sizeLabel(label, { x, y: (top + bottom) / 2 }, 'none');
  }

  /** A size as written, its leader from a point of the drawing. */
  sizeLabel(text: string, anchor: Point, end: Label['end'] = 'dot', wishY = anchor.y): void {
    this.labels.push({ kind: 'size', lines: sizeLines(text, this.#column), anchor, end, wishY });
  }

  /** A part's name beside the drawing, its leader ending in the part. */
  name(text: string, anchor: Point, wishY = anchor.y): void {
    const lines = nameLines(text, this.#column);
    this.labels.push({ kind: 'name', lines, anchor, end: 'dot', wishY });
  }

  /** A part's name inside it where it takes no more than `width` mm; else beside, with a leader. */
  nameInside(text: string, at: Point, width: number, wishY = at.y): void {
    const [line, ...more] = nameLines(text, width);
    if (line !== undefined && more.length === 0 && line.width <= width)
      this.inside.push({ line, at });
    else this.name(text, at, wishY);
  }

  /** A line of words below, in parts: what is to scale and what is not. */
  note(...parts: readonly string[]): void {
    this.notes.push(parts);
  }
}
