import { type DrawingName, drawingForms } from '../../../src/kinds/drawings.ts';
import { draws } from '../../../src/press/drawings/draws.ts';
import type { FedSize, Feed } from '../../../src/press/drawings/feed.ts';
import { type Drawing, finish } from '../../../src/press/drawings/finish.ts';

/** What a test feeds a drawing with. */
export interface Given {
  readonly sizes: Readonly<Record<string, Partial<FedSize> & { readonly text: string }>>;
  readonly choices?: Readonly<Record<string, string>>;
  readonly counts?: Readonly<Record<string, number>>;
  readonly pitchMm?: number;
  readonly labels?: Readonly<Record<string, string>>;
}

/** A drawing as a file of its own, from what a test gives; null where nothing is drawn. */
export function drawnFrom(name: DrawingName, given: Given): Drawing | null {
  const labels: Readonly<Record<string, string>> = drawingForms[name].labels;
  const feed: Feed = {
    size: (slot) => {
      const size = given.sizes[slot];
      if (size === undefined) return null;
      return { value: null, dimension: 'length', gauge: null, travel: null, sense: null, ...size };
    },
    pitchMm: () => given.pitchMm ?? null,
    count: (slot) => given.counts?.[slot] ?? 0,
    choice: (slot) => given.choices?.[slot] ?? '',
    label: (slot) => given.labels?.[slot] ?? labels[slot] ?? slot,
  };
  const sketch = draws[name](feed);
  if (sketch === null) return null;
  const { scene, title, words } = sketch;
  return finish(scene, { prefix: 'test', alone: true, reduced: false, title, words });
}

export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly text: string;
}

/** Every line of lettering with its box in mm, read from the SVG itself. */
export function letteringOf(svg: string): readonly Box[] {
  return [...svg.matchAll(/<text ([^>]*)>(.*?)<\/text>/g)].map(
    ([, attributes = '', inner = '']) => {
      const of = (name: string) => Number(new RegExp(`\\b${name}="([^"]+)"`).exec(attributes)?.[1]);
      const [x, y, size, width] = [of('x'), of('y'), of('font-size'), of('textLength')];
      return {
        left: x,
        right: x + width,
        // Figures of a fraction rise 0.8 above the baseline, tails fall 0.22 below (measured).
        top: y - 0.8 * size,
        bottom: y + 0.22 * size,
        text: inner.replace(/<[^>]+>/g, ''),
      };
    },
  );
}

/** The points of every path, arcs and circles by their ends, path by path, with class and data. */
export function pathsOf(svg: string): readonly {
  readonly part: string | null;
  readonly lines: readonly (readonly (readonly [number, number])[])[];
}[] {
  return [...svg.matchAll(/<path( class="([^"]+)")? d="([^"]*)"/g)].map(([, , part, d = '']) => {
    const lines: [number, number][][] = [];
    for (const [, command, numbers = ''] of d.matchAll(/([MLAZ])([^MLAZ]*)/g)) {
      const all = numbers.trim().split(/\s+/).map(Number);
      if (command === 'M') lines.push([]);
      const [x, y] = all.slice(-2);
      if (command !== 'Z' && x !== undefined && y !== undefined) lines.at(-1)?.push([x, y]);
      const first = lines.at(-1)?.[0];
      if (command === 'Z' && first) lines.at(-1)?.push(first);
    }
    return { part: part ?? null, lines };
  });
}

/** Left, right, top and bottom of all paths of a class. */
export function extentOf(svg: string, part: string): Omit<Box, 'text'> {
  const points = pathsOf(svg)
    .filter((path) => path.part === part)
    .flatMap(({ lines }) => lines.flat());
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return {
    left: Math.min(...xs),
    right: Math.max(...xs),
    top: Math.min(...ys),
    bottom: Math.max(...ys),
  };
}

/** How many times its size the drawing says that something is drawn; null where it says nothing. */
export function statedScale(svg: string): number | null {
  const words = letteringOf(svg)
    .map(({ text }) => text)
    .join(' ');
  const times = /drawn ([\d.]+) times/.exec(words)?.[1];
  if (times !== undefined) return Number(times);
  const named: Readonly<Record<string, number>> = {
    'true size': 1,
    'half size': 1 / 2,
    'twice its size': 2,
    'a third': 1 / 3,
    'a quarter': 1 / 4,
    'a fifth': 1 / 5,
    'a tenth': 1 / 10,
    'a twentieth': 1 / 20,
  };
  const found = Object.keys(named).find((each) => words.includes(`drawn ${each}`));
  return found === undefined ? null : (named[found] ?? null);
}
