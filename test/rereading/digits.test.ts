import { describe, expect, it } from 'vitest';
import { askedOf, compareReading, readableSources } from '../../src/rereading/index.ts';
import type { Asked, AskedPart } from '../../src/rereading/model.ts';
import type { Sheet } from '../../src/sheet/model.ts';
import { casesToTry } from '../suite/part.ts';
import { context, demoSheets, readingOf } from './demo.ts';

interface Changed {
  readonly sheet: Sheet;
  readonly asked: Asked;
  readonly part: AskedPart;
  readonly text: string;
}

/** Every digit of every figure that a second reading asks for, changed to each of the nine others. */
function* changes(sheets: readonly Sheet[]): Generator<Changed> {
  for (const sheet of sheets) {
    for (const asked of askedOf(sheet)) {
      for (const part of asked.parts) {
        for (const { index } of part.text.matchAll(/\d/g)) {
          for (let digit = 0; digit < 10; digit++) {
            if (part.text[index] === String(digit)) continue;
            const text = part.text.slice(0, index) + digit + part.text.slice(index + 1);
            yield { sheet, asked, part, text };
          }
        }
      }
    }
  }
}

describe('a second reading of the demo', () => {
  const sheets = demoSheets();

  it('finds nothing where both read the same', () => {
    for (const sheet of sheets) {
      for (const source of readableSources(sheet).keys()) {
        const { compared } = compareReading(readingOf(sheet, source), sheet, context);
        expect(compared.filter(({ verdict }) => verdict !== 'same')).toEqual([]);
        expect(compared.length).toBe(readableSources(sheet).get(source));
      }
    }
  });

  it('finds every changed digit of 2,000', () => {
    const all = [...changes(sheets)];
    // Evenly over the whole demo; the step has no factor in common with the nine of each digit.
    const step = all.length / 2000;
    const sample = Array.from({ length: 2000 }, (_, at) => all[Math.floor(at * step)]);
    const tried = casesToTry(sample.filter((each) => each !== undefined));
    const missed = tried.filter(({ sheet, asked, part, text }) => {
      const reading = readingOf(sheet, asked.source, { asked, part, text });
      const { compared } = compareReading(reading, sheet, { ...context, sheets: null });
      return compared.every(({ verdict }) => verdict !== 'differs');
    });
    console.info(`${tried.length} of ${all.length} changes of a digit, ${missed.length} missed`);
    expect(
      missed.map(({ sheet, part, text }) => [sheet.file, part.path.join(' '), part.text, text]),
    ).toEqual([]);
  });
});
