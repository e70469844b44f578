import { describe, expect, test } from 'vitest';
import {
  operationDrawings,
  rankedDrawings,
} from '../../../src/press/drawings/operation-drawings.ts';
import { demoSheets } from '../demo-sheets.ts';
import { toPrint } from '../stand.ts';
import { extentOf, letteringOf, pathsOf } from './read-svg.ts';

const sheets = demoSheets().map(({ sheet }) => sheet);
const options = { prefix: 'd', alone: true };
const drawingsOf = (sheet: (typeof sheets)[number]) => rankedDrawings(sheet, options);

const slide = (features: string, steps: string) =>
  toPrint(`---
gaugeleaf: 1
sheet: tarn-t64-holme-seven
title: Tarn T64
unit:
  kind: carburetor
  features: [${features}]
  idle-needle-thread: 2 BA
  stop-screw-thread: 4 BA
settings:
  idle-mixture: { value: 1-1/2 turns out }
  idle-stop: { value: 2 turns in after contact, travel: 1.32 mm }
---

## Initial idle

${steps}
`).sheet;

describe('a drawing shows the unit at hand', () => {
  test('a screw under a slide is drawn where the unit has a slide, and a throttle lever nowhere', () => {
    for (const sheet of [
      ...sheets,
      slide('slide', '1. Set it.'),
      slide('fixed-jets', '1. Set it.'),
    ]) {
      const has = sheet.unit.features.some(({ id }) => id === 'slide');
      const shown = drawingsOf(sheet).map(({ shows }) => shows);
      const set = sheet.settings.has('idle-stop');
      expect(shown.includes('screw-under-slide'), sheet.file).toBe(set && has);
      expect(shown.includes('screw-on-lever'), sheet.file).toBe(set && !has);
      const words = drawingsOf(sheet).flatMap(({ svg }) =>
        letteringOf(svg).map(({ text }) => text),
      );
      if (has) expect(words.join(' '), sheet.file).not.toContain('lever');
    }
  });

  test.each([
    ['1. Screw the idle needle in.', 'idle needle'],
    ['1. Screw the air screw in.', 'air screw'],
    ['1. Turn both mixture screws in. The air screw of the pump stays.', 'mixture screw'],
    ['1. Turn the Pilot Air Screw in.', 'pilot air screw'],
    // What ends a heading and begins a step are no words beside each other.
    ['1. Screw it in.', 'idle needle'],
  ])('the screw is called as in the steps: %s', (steps, name) => {
    const sheet = slide('slide', steps);
    const [operation] = sheet.operations;
    if (operation === undefined) throw new Error('no operation');
    const [needle] = operationDrawings(sheet, operation, options);
    expect(needle?.shows).toBe('needle-turns');
    expect(letteringOf(needle?.svg ?? '').map(({ text }) => text)).toContain(name);
    expect(needle?.words).toContain(name);
  });

  test('as many lobes and sets of contacts as the distributor has', () => {
    const drawn = sheets.flatMap((sheet) =>
      drawingsOf(sheet)
        .filter(({ shows }) => shows === 'gap-on-lobe')
        .map(({ svg, words }) => {
          const parts = pathsOf(svg).map(({ part }) => part);
          const cam =
            pathsOf(svg)
              .find(({ part }) => part === 'cam')
              ?.lines.flat() ?? [];
          return {
            model: sheet.unit.model?.value,
            peaks: peaks(cam),
            sets: parts.filter((part) => part?.startsWith('block-')).length,
            lobes: /\d+ lobes/.exec(words)?.[0],
          };
        }),
    );
    expect(drawn).toEqual([
      { model: 'B12', peaks: 4, sets: 1, lobes: '4 lobes' },
      { model: 'N63', peaks: 8, sets: 2, lobes: '8 lobes' },
    ]);
  });

  test('the gap between contacts is to scale, and nothing is drawn without a count of lobes', () => {
    const [sheet] = sheets.filter(({ unit }) => unit.model?.value === 'B12');
    if (sheet === undefined) throw new Error('no sheet');
    const [{ svg = '' } = {}] = drawingsOf(sheet);
    const gap = extentOf(svg, 'fixed-open').top - extentOf(svg, 'moving-open').bottom;
    expect(Math.abs(gap - 0.381 * 5)).toBeLessThan(0.002);
    const uncounted = {
      ...sheet,
      unit: { ...sheet.unit, features: sheet.unit.features.filter(({ id }) => !/lobe/.test(id)) },
    };
    expect(drawingsOf(uncounted)).toEqual([]);
  });

  test('whoever has room for three gets those that the kind ranks first', () => {
    const first: Record<string, string[]> = Object.fromEntries(
      sheets.map((sheet) => [
        String(sheet.unit.model?.value),
        drawingsOf(sheet)
          .slice(0, 3)
          .map(({ shows, operation }) => `${operation.known?.name}: ${shows}`),
      ]),
    );
    expect(first.T71).toEqual([
      'float-level: float-height',
      'fast-idle-gap: plate-gap',
      'pump-stroke: lever-edge',
    ]);
    expect(first.P44).toEqual(['jet-height: nut-flats', 'initial-idle: screw-on-lever']);
    // Pumps, magnetos and generators have no drawings yet.
    const bare = Object.entries(first).filter(([, drawn]) => drawn.length === 0);
    expect(bare.map(([model]) => model).sort()).toEqual(['C38', 'H52', 'L47']);
  });

  test('where turns are shown it is said from where they are seen, and contact lies on the dashed edge', () => {
    for (const drawing of sheets.flatMap(drawingsOf)) {
      if (!/-turns|screw-on|screw-under/.test(drawing.shows)) continue;
      expect(
        letteringOf(drawing.svg)
          .map(({ text }) => text)
          .join(' '),
      ).toContain('Turns seen from the head.');
      expect(drawing.words).toMatch(/seen from (the head|above)/);
    }
  });
});

/** How often the distance from the middle of an outline rises to its greatest, once around. */
function peaks(outline: readonly (readonly [number, number])[]): number {
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  const cx = (Math.min(...xs) + Math.max(...xs)) / 2;
  const cy = (Math.min(...ys) + Math.max(...ys)) / 2;
  const far = outline.flatMap(([x, y], at) => {
    const [nextX, nextY] = outline[(at + 1) % outline.length] ?? [x, y];
    const step = (part: number) =>
      Math.hypot(x + (nextX - x) * part - cx, y + (nextY - y) * part - cy);
    return [0, 0.25, 0.5, 0.75].map(step);
  });
  const top = Math.max(...far) - 0.1;
  return far.filter((r, at) => r > top && (far.at(at - 1) ?? 0) <= top).length;
}
