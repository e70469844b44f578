import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type DrawingName, drawingForm, drawingForms } from '../../../src/kinds/drawings.ts';
import { runs } from '../../suite/part.ts';
import {
  type Box,
  drawnFrom,
  extentOf,
  type Given,
  letteringOf,
  pathsOf,
  statedScale,
} from './read-svg.ts';

/** Coordinates are written to a micrometer. */
const MICRON = 0.0011;

/** The longest that papers write, and the shortest. */
const written = fc.constantFrom(
  '13/64 ± 1/64 in',
  'No. 29 drill',
  '29/32 +1/32/-1/64 in',
  '0.0670 +0.0005/-0 in',
  '1-1/2 turns in after contact',
  'about 1-3/4 turns out from lightly seated',
  '0.001 in leaf',
  '12,5 ± 0,5 mm',
  '1-29/32 to 2-31/64 in',
  '2 mm',
);
/** Lengths from a thousandth of an inch to four inches, in mm. */
const lengths = fc.double({ min: 0.0254, max: 101.6, noNaN: true });
const turns = fc.double({ min: 0, max: 8, noNaN: true });
const pitch = fc.option(fc.double({ min: 0.35, max: 1.6, noNaN: true }), { nil: undefined });
const part = fc.constantFrom('float', 'throttle plate', 'idle mixture adjusting needle', 'bore');

const gauge = fc.record({
  text: fc.option(fc.constantFrom('13/64 drill', '0.026 in wire', 'No. 20 AWG'), { nil: null }),
  mm: lengths,
  flat: fc.boolean(),
});

function choicesOf(name: DrawingName): fc.Arbitrary<Record<string, string>> {
  const choices: Readonly<Record<string, readonly string[]>> = drawingForms[name].choices;
  return fc.record(
    Object.fromEntries(
      Object.entries(choices).map(([slot, forms]) => [slot, fc.constantFrom(...forms)]),
    ),
  );
}

function givenFor(name: DrawingName): fc.Arbitrary<Given> {
  const sizes: Readonly<Record<string, { readonly dimensions: readonly string[] }>> =
    drawingForms[name].sizes;
  const fed = Object.entries(sizes).map(([slot, { dimensions }]) => {
    const value = dimensions.includes('turns') ? turns : lengths;
    const dimension = fc.constantFrom(...dimensions);
    const travel = fc.option(fc.constantFrom('0.0547 in', '1.628 mm'), { nil: null });
    const sense = fc.constantFrom('in', 'out', 'down', 'up', null);
    const drawn = { text: written, value, dimension, gauge: fc.option(gauge), travel, sense };
    return [slot, fc.record(drawn)] as const;
  });
  const counts = (drawingForm(name)?.counts ?? []).map((slot) => [
    slot,
    fc.integer({ min: 1, max: 12 }),
  ]);
  const labels = Object.keys(drawingForms[name].labels).map((slot) => [slot, part] as const);
  return fc.record({
    sizes: fc.record(Object.fromEntries(fed)),
    choices: choicesOf(name),
    counts: fc.record(Object.fromEntries(counts)),
    pitchMm: pitch,
    labels: fc.record(Object.fromEntries(labels)),
  }) as fc.Arbitrary<Given>;
}

const names = Object.keys(drawingForms) as DrawingName[];

function meet(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

/** Whether a straight line has a point in a box: clipped by each side in turn (Liang and Barsky). */
function crosses(a: readonly [number, number], b: readonly [number, number], box: Box): boolean {
  let [from, to] = [0, 1];
  const sides: readonly (readonly [number, number])[] = [
    [a[0] - b[0], a[0] - box.left],
    [b[0] - a[0], box.right - a[0]],
    [a[1] - b[1], a[1] - box.top],
    [b[1] - a[1], box.bottom - a[1]],
  ];
  for (const [step, room] of sides) {
    if (step === 0 && room < 0) return false;
    if (step < 0) from = Math.max(from, room / step);
    if (step > 0) to = Math.min(to, room / step);
  }
  return from < to;
}

/** What holds for any drawing, whatever it is fed with. */
function expectSound(name: DrawingName, given: Given): void {
  const drawing = drawnFrom(name, given);
  if (drawing === null) return;
  const { svg, words } = drawing;
  expect(svg).not.toMatch(/NaN|Infinity|undefined/);
  expect(drawnFrom(name, given)?.svg).toBe(svg);
  const [, x = 0, y = 0, width = 0, height = 0] = (
    /viewBox="(\S+) (\S+) (\S+) (\S+)"/.exec(svg) ?? []
  ).map(Number);
  const boxes = letteringOf(svg);
  const faults: string[] = [];
  const outside = (px: number, py: number) => px < x || px > x + width || py < y || py > y + height;
  for (const [at, box] of boxes.entries()) {
    if (outside(box.left, box.top) || outside(box.right, box.bottom)) {
      faults.push(`"${box.text}" is cut off`);
    }
    for (const other of boxes.slice(at + 1)) {
      if (meet(box, other)) faults.push(`"${box.text}" lies on "${other.text}"`);
    }
  }
  for (const line of pathsOf(svg).flatMap(({ lines }) => lines)) {
    for (const [at, to] of line.entries()) {
      if (outside(...to)) faults.push(`${to} is cut off`);
      const start = line[at - 1] ?? to;
      for (const box of boxes) {
        if (crosses(start, to, box))
          faults.push(`a line from ${start} to ${to} meets "${box.text}"`);
      }
    }
  }
  expect(faults).toEqual([]);
  // Black on white, two strokes, no gray: what survives a copy of a copy.
  const colors = [...svg.matchAll(/(?:fill|stroke)="([^"]+)"/g)].map(([, color]) => color);
  expect(colors.filter((color) => !/^(none|#000|#fff)$/.test(color ?? ''))).toEqual([]);
  const strokes = new Set([...svg.matchAll(/stroke-width="([^"]+)"/g)].map(([, w]) => w));
  expect([...strokes].filter((w) => w !== '0.35' && w !== '0.7')).toEqual([]);
  // Capitals are 0.703 of the type size, figures of a fraction 0.537, both measured in the fonts.
  for (const [, face, size] of svg.matchAll(/<text class="(\w+)"[^>]* font-size="([^"]+)"/g)) {
    expect([face, Number(size) * 0.703 >= 2.3, Number(size) * 0.537 >= 1.7]).toEqual([
      face,
      true,
      true,
    ]);
  }
  // Every size on the drawing is in its words.
  for (const [, body = ''] of svg.matchAll(/<desc[^>]*>(.*?)<\/desc>/g)) {
    expect(body.length).toBeGreaterThan(20);
  }
  expect(words).not.toMatch(/\s{2}|undefined|null/);
}

describe.each(names)('%s', (name) => {
  test('letters meet nothing, and nothing is cut off, whatever the sizes', () => {
    fc.assert(
      fc.property(givenFor(name), (given) => expectSound(name, given)),
      { numRuns: runs(60) },
    );
  });
});

describe('what is to scale', () => {
  test('a gap under or over a float', () => {
    const cases = fc.record({ value: lengths, choices: choicesOf('float-height') });
    let drawn = 0;
    fc.assert(
      fc.property(cases, ({ value, choices }) => {
        const drawing = drawnFrom('float-height', {
          sizes: { gap: { text: '13/64 in', value } },
          choices,
        });
        if (drawing === null) return;
        drawn++;
        const { svg } = drawing;
        const scale = statedScale(svg) ?? 0;
        const face = extentOf(svg, choices.gasket === 'fitted' ? 'gasket' : 'cover');
        const float = extentOf(svg, 'float');
        if (choices.cover === 'inverted') {
          const side = choices.to === 'far' ? float.top : float.bottom;
          expect(Math.abs(face.top - side - value * scale)).toBeLessThan(MICRON);
          return;
        }
        // Aslant, it is measured at the end of its straight side, which is a corner of its outline.
        const points = pathsOf(svg).filter((path) => path.part === 'float');
        const off = points.flatMap(({ lines }) => lines.flat()).map(([, y]) => y - face.bottom);
        const nearest = Math.min(...off.map((each) => Math.abs(each - value * scale)));
        expect(nearest).toBeLessThan(MICRON);
      }),
    );
    expect(drawn).toBeGreaterThan(50);
  });

  test.each(['plate-gap', 'offset-plate-gap'] as const)('a gap of %s', (name) => {
    fc.assert(
      fc.property(
        lengths,
        choicesOf(name),
        fc.integer({ min: 0, max: 30 }),
        (value, choices, closed) => {
          const drawing = drawnFrom(name, {
            sizes: {
              gap: { text: '0.026 in', value },
              'closed-angle': { text: '12°', value: closed, dimension: 'angle' },
            },
            choices,
          });
          if (drawing === null) return;
          const { svg } = drawing;
          const walls = pathsOf(svg).filter((path) => path.part === 'wall');
          const inner = Math.min(...(walls[1]?.lines.flat() ?? []).map(([x]) => x));
          const wide = value * (statedScale(svg) ?? 0);
          expect(Math.abs(inner - extentOf(svg, 'plate').right - wide)).toBeLessThan(MICRON);
          const rod = extentOf(svg, 'gauge');
          expect(Math.abs(rod.right - rod.left - wide)).toBeLessThan(MICRON);
        },
      ),
    );
  });

  test('a rod and its jet, all at one scale', () => {
    const { svg } = drawnFrom('rod-in-jet', {
      sizes: {
        jet: { text: 'No. 47 drill', value: 1.9939 },
        thick: { text: '0.0670 in', value: 1.7018 },
        thin: { text: '0.0560 in', value: 1.4224 },
      },
    }) ?? { svg: '' };
    const scale = statedScale(svg) ?? 0;
    expect(scale).toBe(6);
    const bore =
      Math.min(
        ...(
          pathsOf(svg)
            .find((path) => path.part === 'jet-right')
            ?.lines.flat() ?? []
        ).map(([x]) => x),
      ) - extentOf(svg, 'jet-left').right;
    expect(Math.abs(bore - 1.9939 * scale)).toBeLessThan(2 * MICRON);
    const rod =
      pathsOf(svg)
        .find((path) => path.part === 'rod')
        ?.lines.flat() ?? [];
    expect(
      Math.abs(extentOf(svg, 'rod').right - extentOf(svg, 'rod').left - 1.7018 * scale),
    ).toBeLessThan(2 * MICRON);
    const foot = Math.max(...rod.map(([, y]) => y));
    const low = rod.filter(([, y]) => y > foot - 1 && y < foot).map(([x]) => x);
    expect(Math.abs(Math.max(...low) - Math.min(...low) - 1.4224 * scale)).toBeLessThan(2 * MICRON);
  });

  // 1 1/2 turns of 10-32 are 1.190625 mm (ASME B1.1, as the published tables have it).
  test('the travel of a screw: turns by pitch', () => {
    const given: Given = {
      sizes: { turns: { text: '1-1/2 turns', value: 1.5, dimension: 'turns', travel: '0.047 in' } },
      pitchMm: 0.79375,
    };
    const stop = drawnFrom('screw-on-lever', given)?.svg ?? '';
    const still = drawnFrom('screw-on-lever', {
      ...given,
      sizes: { turns: { text: 'contact', value: 0, dimension: 'turns' } },
    });
    const moved = extentOf(stop, 'tip').right - extentOf(still?.svg ?? '', 'tip').right;
    expect(Math.abs(moved - 1.190625 * (statedScale(stop) ?? 0))).toBeLessThan(MICRON);
    const needle = drawnFrom('needle-turns', given)?.svg ?? '';
    const seated = drawnFrom('needle-turns', {
      ...given,
      sizes: { turns: { text: 'seated', value: 0, dimension: 'turns' } },
    });
    const lift = extentOf(seated?.svg ?? '', 'needle').bottom - extentOf(needle, 'needle').bottom;
    expect(Math.abs(lift - 1.190625 * (statedScale(needle) ?? 0))).toBeLessThan(MICRON);
  });

  test('the drop of a jet by the flats of its nut, and the travel of a rod', () => {
    // Ten flats are 1 2/3 turns.
    const nut =
      drawnFrom('nut-flats', {
        sizes: { turns: { text: '10 flats down', value: 10 / 6, dimension: 'turns' } },
        pitchMm: 0.977,
      })?.svg ?? '';
    const drop = extentOf(nut, 'jet').top - extentOf(nut, 'bridge').top;
    expect(Math.abs(drop - (10 / 6) * 0.977 * (statedScale(nut) ?? 0))).toBeLessThan(MICRON);
    const lever =
      drawnFrom('lever-edge', {
        sizes: { set: { text: '17/64 in', value: 6.746875 } },
        choices: { what: 'travel' },
      })?.svg ?? '';
    const middle = (part: string) => {
      const { top, bottom } = extentOf(lever, part);
      return (top + bottom) / 2;
    };
    const travel = middle('pin-end') - middle('pin-start');
    expect(Math.abs(travel - 6.746875 * (statedScale(lever) ?? 0))).toBeLessThan(2 * MICRON);
  });
});

describe('what is not drawn', () => {
  test('a rod that does not pass its jet, a length against a straight-edge', () => {
    const size = (value: number) => ({ text: `${value} mm`, value });
    const sizes = { jet: size(1.5), thick: size(1.6), thin: size(1.4) };
    expect(drawnFrom('rod-in-jet', { sizes })).toBeNull();
    expect(
      drawnFrom('lever-edge', { sizes: { set: size(6) }, choices: { what: 'edge' } }),
    ).toBeNull();
  });

  test('lift and drop of an unknown thread: they are said to be out of scale', () => {
    const sizes = { turns: { text: '1 turn out', value: 1, dimension: 'turns' } };
    const svg = drawnFrom('needle-turns', { sizes })?.svg ?? '';
    expect(statedScale(svg)).toBeNull();
    expect(letteringOf(svg).map(({ text }) => text)).toContain(
      'Not to scale. Turns seen from the head.',
    );
  });
});

test('a drawing of a demo size keeps to 68 mm by 62 mm', () => {
  for (const gap of ['13/64 ± 1/64 in', '29/32 +1/32/-1/64 in', 'No. 29 drill']) {
    for (const cover of ['inverted', 'upright']) {
      const choices = { cover, gasket: 'fitted', to: 'near' };
      const drawing = drawnFrom('float-height', {
        sizes: { gap: { text: gap, value: 5.16 } },
        choices,
      });
      expect(drawing?.widthMm).toBeLessThan(68);
      expect(drawing?.heightMm).toBeLessThan(62);
    }
  }
});
