import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { gaugeBook } from '../../src/gauges/index.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import type { Kind } from '../../src/kinds/model.ts';
import { readStates, readSteps } from '../../src/order/reading.ts';
import { walkSheet } from '../../src/order/walk.ts';
import { readSheet } from '../../src/sheet/index.ts';
import type { Sheet } from '../../src/sheet/model.ts';
import { compareReading, noFigures } from './reading-figures.ts';
import { sentences } from './reading-sentences.ts';

const kinds = builtInKinds();
const folder = join(import.meta.dirname, '..', '..', 'sheets');

function kindOf(name: string): Kind {
  const kind = kinds.get(name);
  if (!kind) throw new Error(`no kind ${name}`);
  return kind;
}

const carburetor = kindOf('carburetor');

/** The states that a text leaves, the last of each part, as marks would write them. */
function statesOf(text: string): string[] {
  const left = new Map(readStates(text, carburetor).map(({ term }) => [term.part, term.condition]));
  return [...left].map(([part, condition]) => `${part} ${condition}`).sort();
}

function demo(): readonly Sheet[] {
  const context = { gauges: gaugeBook(), kinds, wireGauge: 'imperial' as const };
  return readdirSync(folder)
    .filter((name) => name.endsWith('.md'))
    .map((name) => readSheet(readFileSync(join(folder, name), 'utf8'), `sheets/${name}`, context));
}

const sheets = demo();

const percent = (part: number, whole: number): string => `${((100 * part) / whole).toFixed(1)} %`;

/** What the reading does not get yet: told here so that it is seen when it does. */
const UNREAD: ReadonlySet<string> = new Set(['The lid can then be raised.']);

describe('sentences', () => {
  for (const [style, rows] of Object.entries(sentences)) {
    test(style, () => {
      for (const [text, ...expected] of rows) {
        const found = statesOf(text);
        if (UNREAD.has(text)) expect(found, text).toEqual([]);
        else expect(found, text).toEqual(expected.sort());
      }
    });
  }

  test('there are many, and few are unread', () => {
    const all = Object.values(sentences).flat();
    const none = all.filter((row) => row.length === 1).length;
    console.log(`${all.length} sentences read as labelled but ${UNREAD.size}; ${none} say nothing`);
    expect(all.length).toBeGreaterThanOrEqual(370);
    expect(none).toBeGreaterThanOrEqual(60);
  });
});

describe('places and neighbors', () => {
  test('a state has the words that say it', () => {
    const text = 'Wipe it, then lift the cover straight up. :state[cover off]';
    const [read] = readStates(text, carburetor);
    expect(read).toMatchObject({ term: { part: 'cover', condition: 'off' }, verb: 'take-off' });
    expect(text.slice(read?.start, read?.end)).toBe('lift the cover straight up');
  });

  test('a mark is not read as words', () => {
    expect(statesOf('Go on. :state[cover off] :state[throttle shut]')).toEqual([]);
  });

  test('`it` at the head of a step is what the step before was about', () => {
    const read = readSteps(
      ['Turn the stop screw until it just touches.', 'Turn it in one turn.'],
      carburetor,
    );
    expect(read.map((step) => step.map(({ term }) => term.condition))).toEqual([
      ['at-contact'],
      ['set'],
    ]);
  });

  test('`it` after another thing is that thing', () => {
    const [, second] = readSteps(
      ['Back the stop screw off, then screw the idle needle in.', 'Turn it out two turns.'],
      carburetor,
    );
    expect(second).toEqual([]);
  });
});

describe('hostile steps', () => {
  const long: readonly (readonly [string, string])[] = [
    ['one condition after another', 'take it if '.repeat(20_000)],
    ['one thing after another', `take off ${'the cover and '.repeat(20_000)}`],
    ['words that no kind has', 'constructor __proto__ toString '.repeat(10_000)],
    ['nothing but stops', '.,;:'.repeat(40_000)],
  ];
  for (const [what, text] of long) {
    test(`${what} is read in time in step with its length`, () => {
      const before = process.cpuUsage();
      readStates(text, carburetor);
      const { user, system } = process.cpuUsage(before);
      expect((user + system) / 1000).toBeLessThan(4000);
    });
  }
});

describe('the demo', () => {
  test('with the marks, no reading makes a fault', () => {
    for (const sheet of sheets) {
      const { faults } = walkSheet(sheet, kindOf(sheet.unit.kind?.value ?? ''));
      expect(faults, sheet.file).toEqual([]);
    }
  });

  test('with the marks passed over, only notes are left, and few', () => {
    const doubtful = sheets
      .filter((sheet) => sheet.unit.kind?.value === 'carburetor')
      .flatMap((sheet) => walkSheet(sheet, carburetor, { ignoreMarks: true }).faults);
    expect(doubtful.filter((fault) => !('doubtful' in fault && fault.doubtful))).toEqual([]);
    console.log(`demo without marks: ${doubtful.length} doubtful faults on nine clean sheets`);
    expect(doubtful.length).toBeLessThanOrEqual(4);
  });

  test('most of what the marks say is read, and what is read is right', () => {
    const figures = noFigures();
    for (const sheet of sheets)
      if (sheet.unit.kind?.value === 'carburetor') compareReading(sheet, carburetor, figures);
    const { steps, marked, recalled, changes, changesRecalled, read, right } = figures;
    console.log(
      `demo without marks, ${steps} steps: recall ${percent(recalled, marked)} (${recalled} of ${marked} marks), ` +
        `${percent(changesRecalled, changes)} of the ${changes} that change something; ` +
        `precision ${percent(right, read)} (${right} of ${read})`,
    );
    expect(figures.wrong).toEqual([]);
    expect(recalled / marked).toBeGreaterThanOrEqual(0.95);
    expect(changesRecalled / changes).toBeGreaterThanOrEqual(0.95);
    expect(right / read).toBeGreaterThanOrEqual(0.98);
  });

  test('a step costs little to read', () => {
    const texts = sheets.flatMap(({ text, operations }) =>
      operations.flatMap(({ steps }) => steps.map(({ span }) => text.slice(span.start, span.end))),
    );
    let leastUs = Number.POSITIVE_INFINITY;
    for (let round = 0; round < 30; round++) {
      // Processor time of this process: a busy machine does not count against it.
      const before = process.cpuUsage();
      readSteps(texts, carburetor);
      const { user, system } = process.cpuUsage(before);
      leastUs = Math.min(leastUs, (user + system) / texts.length);
    }
    console.log(`reading costs ${leastUs.toFixed(1)} µs a step`);
    expect(leastUs).toBeLessThan(60);
  });
});
