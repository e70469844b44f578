import {
  escapeXml,
  type Face,
  type Line,
  lineHeight,
  nameLines,
  typeSize,
} from '../lettering/index.ts';
import { n } from './pen.ts';
import type { Label, Scene } from './scene.ts';
import { stroke } from './scene.ts';

/** A drawing as SVG at the size it is printed at. */
export interface Drawing {
  readonly svg: string;
  /** In mm, lettering and all. */
  readonly widthMm: number;
  readonly heightMm: number;
  /** The same in words, for who can't see it: what it shows, and every size that is on it. */
  readonly words: string;
  /** What it shows, in a few words. */
  readonly title: string;
}

/** How a drawing is finished. */
export interface FinishOptions {
  /** What the ids begin with: no two drawings on a page may share it. */
  readonly prefix: string;
  /**
   * For a file of its own, whose reader may lack the fonts: every line is held to the width that it
   * has in them, and paper lies behind.
   */
  readonly alone: boolean;
  /**
   * Printed at seven tenths of its size, for a page that is held nearer than a card hangs: at 360 mm its
   * lettering takes up what it does at 500 mm otherwise. What is said of its scale is left out.
   */
  readonly reduced: boolean;
  readonly title: string;
  readonly words: string;
}

/** What a reduced drawing is of its size. */
const REDUCED = 0.72;

/** How much a value's lettering is enlarged in a reduced drawing: figures of its fractions stay 1.7 mm high. */
const VALUE_IN_REDUCED = 1.32;

/** A label where it stands. */
export interface PlacedLabel extends Label {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

const MARGIN = 0.6;
/** Between the drawing and its column of labels. */
const GUTTER = 4.2;
/** Between two labels, and between the drawing and the lines below it. */
const APART = 1.5;

const faces: Readonly<Record<Face, string>> = {
  size: 'font-family="\'Gaugeleaf Sans\', Arial, sans-serif" font-weight="600"',
  name: "font-family=\"'Gaugeleaf Condensed', 'Arial Narrow', Arial, sans-serif\"",
  upper: "font-family=\"'Gaugeleaf Upper', 'Gaugeleaf Sans', Arial, sans-serif\"",
  lower: "font-family=\"'Gaugeleaf Lower', 'Gaugeleaf Sans', Arial, sans-serif\"",
};

/** Sets the lettering of a scene beside and below it, and writes the whole. */
export function finish(scene: Scene, options: FinishOptions): Drawing {
  const xs = scene.reach.map(({ x }) => x);
  const ys = scene.reach.map(({ y }) => y);
  const body = {
    left: Math.min(...xs) - stroke.thick / 2,
    right: Math.max(...xs) + stroke.thick / 2,
    top: Math.min(...ys) - stroke.thick / 2,
    bottom: Math.max(...ys) + stroke.thick / 2,
  };
  const enlarged = options.reduced ? VALUE_IN_REDUCED : 1;
  const labels = placed(scene.labels, body, enlarged);
  const right = Math.max(body.right, ...labels.map((label) => label.left + label.width));
  const top = Math.min(body.top, ...labels.map((label) => label.top));
  const end = Math.max(body.bottom, ...labels.map((label) => label.top + label.height));
  const notes = (options.reduced ? [] : scene.notes).flatMap((parts) => {
    const [line, ...more] = nameLines(parts.join(' '), right - body.left);
    if (line !== undefined && more.length === 0) return [line];
    return parts.flatMap((part) => nameLines(part, right - body.left));
  });
  const notesTop = end + (notes.length === 0 ? 0 : APART);
  const bottom = notesTop + notes.length * lineHeight.name;
  const [x, y] = [body.left - MARGIN, top - MARGIN];
  const widthMm = Math.max(right, ...notes.map(({ width }) => body.left + width)) + MARGIN - x;
  const heightMm = bottom + MARGIN - y;
  const { prefix, alone, reduced } = options;
  const printed = reduced ? REDUCED : 1;
  const ids = { title: escapeXml(`${prefix}-title`), words: escapeXml(`${prefix}-words`) };
  const out = [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${n(widthMm * printed)}mm" height="${n(heightMm * printed)}mm" viewBox="${n(x)} ${n(y)} ${n(widthMm)} ${n(heightMm)}" role="img" aria-labelledby="${ids.words}">`,
    `<title id="${ids.title}">${escapeXml(options.title)}</title>`,
    `<desc id="${ids.words}">${escapeXml(options.words)}</desc>`,
  ];
  if (alone) {
    out.push(
      `<rect x="${n(x)}" y="${n(y)}" width="${n(widthMm)}" height="${n(heightMm)}" fill="#fff"/>`,
    );
  }
  out.push(
    '<g stroke="#000" stroke-linecap="butt" stroke-linejoin="round">',
    ...scene.marks,
    ...labels.map(leader),
    '</g>',
    '<g fill="#000">',
  );
  for (const label of labels) {
    label.lines.forEach((line, at) => {
      const factor = times(label, enlarged);
      const top = label.top + at * lineHeight[label.kind] * factor;
      out.push(lettered(line, label.kind, label.left, top, alone, factor));
    });
  }
  for (const { line, at } of scene.inside) {
    const left = at.x - line.width / 2;
    out.push(lettered(line, 'name', left, at.y - lineHeight.name / 2, alone));
  }
  notes.forEach((line, at) => {
    out.push(lettered(line, 'name', body.left, notesTop + at * lineHeight.name, alone));
  });
  out.push('</g>', '</svg>');
  return {
    svg: `${out.join('\n')}\n`,
    widthMm: widthMm * printed,
    heightMm: heightMm * printed,
    words: options.words,
    title: options.title,
  };
}

interface Extent {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Labels in a column to the right of the drawing, each as near its wish as the others let it. */
export function placed(
  labels: readonly Label[],
  body: Extent,
  enlarged = 1,
): readonly PlacedLabel[] {
  const left = body.right + GUTTER;
  const sorted = labels
    .map((label, index) => ({ label, index }))
    .sort((a, b) => a.label.wishY - b.label.wishY || a.index - b.index)
    .map(({ label }) => ({
      ...label,
      left,
      top: 0,
      width: Math.max(...label.lines.map((line) => line.width)) * times(label, enlarged),
      height: label.lines.length * lineHeight[label.kind] * times(label, enlarged),
    }));
  // Blocks of labels that touch, each block centered on the wishes of its members.
  const blocks: { members: typeof sorted; offsets: number[]; height: number; top: number }[] = [];
  for (const label of sorted) {
    let block = {
      members: [label],
      offsets: [0],
      height: label.height,
      top: label.wishY - label.height / 2,
    };
    for (let last = blocks.at(-1); last !== undefined; last = blocks.at(-1)) {
      if (last.top + last.height + APART <= block.top) break;
      blocks.pop();
      const shift = last.height + APART;
      const members = [...last.members, ...block.members];
      const offsets = [...last.offsets, ...block.offsets.map((offset) => offset + shift)];
      const tops = members.map((each, at) => each.wishY - each.height / 2 - (offsets[at] ?? 0));
      block = {
        members,
        offsets,
        height: shift + block.height,
        top: tops.reduce((sum, each) => sum + each, 0) / tops.length,
      };
    }
    blocks.push(block);
  }
  return blocks.flatMap(({ members, offsets, top }) =>
    members.map((label, at) => ({ ...label, top: top + (offsets[at] ?? 0) })),
  );
}

/** Values are enlarged, and what else holds a fraction; other names stay as they are. */
function times({ kind, lines }: Label, enlarged: number): number {
  const isDrawn = lines.some((line) => line.stretches.some(({ face }) => face === 'upper'));
  return kind === 'size' || isDrawn ? enlarged : 1;
}

/** A level stretch beside the words, then straight to what they name. */
function leader(label: PlacedLabel): string {
  const y = label.top + label.height / 2;
  const start = label.left - 0.9;
  const bend = label.left - 2.6;
  const { anchor } = label;
  const dot =
    label.end === 'dot'
      ? `<circle cx="${n(anchor.x)}" cy="${n(anchor.y)}" r="0.6" fill="#000" stroke="none"/>`
      : '';
  return `<path class="leader" d="M${n(start)} ${n(y)}L${n(bend)} ${n(y)}L${n(anchor.x)} ${n(anchor.y)}" fill="none" stroke-width="${stroke.thin}"/>${dot}`;
}

function lettered(
  line: Line,
  kind: 'size' | 'name',
  x: number,
  top: number,
  alone: boolean,
  factor = 1,
): string {
  const size = typeSize[kind] * factor;
  // Capitals (0.7 of the type size) stand in the middle of their line.
  const baseline = top + (lineHeight[kind] * factor) / 2 + 0.35 * size;
  const held = alone
    ? ` textLength="${n(line.width * factor)}" lengthAdjust="spacingAndGlyphs"`
    : '';
  const content = line.stretches
    .map(({ face, text }) =>
      face === kind ? escapeXml(text) : `<tspan ${faces[face]}>${escapeXml(text)}</tspan>`,
    )
    .join('');
  return `<text class="${kind}" x="${n(x)}" y="${n(baseline)}" font-size="${n(size)}" xml:space="preserve" ${faces[kind]}${held}>${content}</text>`;
}
