import type { PaperSize } from '../orders/index.ts';
import type { LeafMarks, Punch } from '../orders/model.ts';
import { hangingHole } from './hanging.ts';

interface Holes {
  readonly diameterMm: number;
  /** From the edge of the leaf to the middle of a hole. */
  readonly edgeMm: number;
  /** From the middle of the leaf's height to the middles of the holes. */
  readonly middlesMm: readonly number[];
}

/**
 * ISO 838: two holes of 6 mm, 80 mm apart, 12 mm from the edge, from memory. Three holes: 4-1/4 in
 * apart, on half letter 2-3/4 in, 1/2 in from the edge, of 9/32 in; common practice, no source.
 */
function holesOf(punch: Punch, paper: PaperSize): Holes {
  if (punch === 'iso-838') return { diameterMm: 6, edgeMm: 12, middlesMm: [-40, 40] };
  const apartMm = (paper.small ? 2.75 : 4.25) * 25.4;
  return { diameterMm: 7.14, edgeMm: 12.7, middlesMm: [-apartMm, 0, apartMm] };
}

/** What is trimmed off each edge: the seal that a pouch needs around the card, in millimeters. */
const sealMm = 5;

/** A page in points. */
interface Leaf {
  readonly width: number;
  readonly height: number;
}

/**
 * Marks as PDF operators, for the page at an index from 0: the hole that it hangs by at the top of every
 * side, and those of a binder, if they were asked for, at the left of a front and the right of a back.
 */
export function overLeaf(
  paper: PaperSize,
  { punch, trim }: LeafMarks,
): (page: Leaf, index: number) => string {
  return (page, index) => {
    const content = [
      hangingMark(page),
      ...(punch === null ? [] : holes(page, holesOf(punch, paper), index % 2 === 1)),
      ...(trim ? corners(page) : []),
    ].join('\n');
    // Marks are no part of what a reader is read: they are artifacts, in a state of their own.
    return `q /Artifact BMC ${points(0.3)} w 0 G\n${content}\nEMC Q`;
  };
}

function points(mm: number): string {
  return ((mm * 72) / 25.4).toFixed(3);
}

function holes(page: Leaf, { diameterMm, edgeMm, middlesMm }: Holes, isBack: boolean): string[] {
  const { widthMm, heightMm } = inMm(page);
  const x = isBack ? widthMm - edgeMm : edgeMm;
  return middlesMm.map((middle) => circle(x, heightMm / 2 + middle, diameterMm));
}

function hangingMark(page: Leaf): string {
  const { widthMm, heightMm } = inMm(page);
  return circle(widthMm / 2, heightMm - hangingHole.edgeMm, hangingHole.diameterMm);
}

function inMm({ width, height }: Leaf): { widthMm: number; heightMm: number } {
  return { widthMm: (width * 25.4) / 72, heightMm: (height * 25.4) / 72 };
}

/** A circle of four arcs with a cross at its middle, all in millimeters from the lower left. */
function circle(x: number, y: number, diameterMm: number): string {
  const r = diameterMm / 2;
  // Four cubic curves come within .03 % of a circle with handles of this length.
  const k = r * 0.5523;
  const at = (across: number, up: number) => `${points(across)} ${points(up)}`;
  return [
    `${at(x + r, y)} m`,
    `${at(x + r, y + k)} ${at(x + k, y + r)} ${at(x, y + r)} c`,
    `${at(x - k, y + r)} ${at(x - r, y + k)} ${at(x - r, y)} c`,
    `${at(x - r, y - k)} ${at(x - k, y - r)} ${at(x, y - r)} c`,
    `${at(x + k, y - r)} ${at(x + r, y - k)} ${at(x + r, y)} c s`,
    `${at(x - 1, y)} m ${at(x + 1, y)} l ${at(x, y - 1)} m ${at(x, y + 1)} l S`,
  ].join(' ');
}

/** At each corner two strokes on the lines of the cut, in what is cut off. */
function corners(page: Leaf): string[] {
  const { width, height } = page;
  const far = { x: (width * 25.4) / 72, y: (height * 25.4) / 72 };
  const strokes: string[] = [];
  for (const [x, outX] of [
    [sealMm, 0],
    [far.x - sealMm, far.x],
  ] as const) {
    for (const [y, outY] of [
      [sealMm, 0],
      [far.y - sealMm, far.y],
    ] as const) {
      strokes.push(`${points(x)} ${points(y)} m ${points(outX)} ${points(y)} l S`);
      strokes.push(`${points(x)} ${points(y)} m ${points(x)} ${points(outY)} l S`);
    }
  }
  return strokes;
}
