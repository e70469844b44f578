import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gaugeBook } from '../../src/gauges/index.ts';
import { sizeFacts } from '../../src/gauges/size-facts.ts';
import { readStatement } from '../../src/quantity/index.ts';
import { runs } from '../suite/part.ts';
import { DOUBTFUL_FORMS, PERIOD_FORMS } from './period-forms.ts';

const gauges = gaugeBook();

const number = fc.oneof(
  fc.integer({ min: 0, max: 700 }).map(String),
  fc
    .tuple(fc.integer({ min: 0, max: 999 }), fc.integer({ min: 1, max: 4 }))
    .map(([n, places]) => `0.${String(n).padStart(places, '0')}`),
  fc
    .tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 64 }))
    .map(([n, d]) => `${n}/${d}`),
  fc
    .tuple(fc.integer({ min: 1, max: 3 }), fc.constantFrom('1/2', '1/4', '7/16'))
    .map((m) => m.join('-')),
  fc.constantFrom('1,250', '.203', '.014/.016', '550/600', 'five', 'half a', '1½'),
);
const head = fc.constantFrom('', '', '', 'No. ', '#', 'about ', 'min. ', 'between ', 'a ', 'SWG ');
const tail = fc.constantFrom(
  '',
  ' in',
  '"',
  ' mm',
  ' thou',
  ' turns out',
  ' rpm',
  ' r.p.m.',
  ' psi',
  ' inHg',
  '°',
  '° BTDC',
  ' drill',
  ' SWG',
  ' AWG',
  ' jet',
  ' gauge wire',
  ' music wire',
  ' seconds per pint',
  ' pints',
  ' gal/hr',
  ' fl oz',
  ' ft-lb',
  ' cc per 10 strokes',
  ' mfd',
  ' inn',
  ' tunrs',
  ' drlil',
  ' max',
  ' min',
  ' ± 1/64 in',
  ' +0.01 in',
  ' to 40 thou',
  ' mm drill',
  ' s per 100 ml',
  ' g/cm²',
  ' notches lean',
);
const input = fc.oneof(
  fc.tuple(head, number, tail).map((parts) => parts.join('')),
  fc.constantFrom(...PERIOD_FORMS.map((form) => form.written)),
  fc.constantFrom(...DOUBTFUL_FORMS.map((form) => form.written)),
);

/** Texts that a sentence tells somebody to write, where it offers them one after the other. */
function writtenIn(fix: string | null): string[] {
  const offered = /^write (.+?)(?:, (?:if|as) .+|;.+)?$/.exec(fix ?? '')?.[1];
  if (offered === undefined || /^(?:the|both|at|it)\b/.test(offered)) return [];
  // One word is what was misspelt, not a size.
  return offered.split(/ or |, /).filter((each) => /[\d½¼¾]/.test(each));
}

function reads(text: string): boolean {
  return readStatement(text, { gauges }).ok;
}

describe('what `size` suggests is text that `size` reads', () => {
  it('of what it does not read, every candidate and every fix', () => {
    let suggested = 0;
    const bad = new Set<string>();
    fc.assert(
      fc.property(input, (text) => {
        const answer = sizeFacts(text, null);
        if (answer.ok) return;
        for (const each of [...answer.problem.candidates, ...writtenIn(answer.problem.fix)]) {
          suggested += 1;
          if (!reads(each)) bad.add(`${text}: ${each}`);
        }
      }),
      { numRuns: runs(6000), seed: 19 },
    );
    expect([...bad]).toEqual([]);
    expect(suggested).toBeGreaterThan(runs(1000));
  });

  it('of what it reads, every name, neighbor and other measure', () => {
    let suggested = 0;
    const bad = new Set<string>();
    fc.assert(
      fc.property(input, (text) => {
        const answer = sizeFacts(text, null);
        if (!answer.ok) return;
        const { facts } = answer;
        const named = [...facts.names, ...facts.twins, ...facts.namesakes, ...facts.inside].map(
          (g) => g.label,
        );
        const beside = [
          facts.neighbors?.below,
          facts.neighbors?.above,
          facts.pair?.go,
          facts.pair?.noGo,
        ];
        const printed = [facts.printed.inch, facts.printed.mm];
        const all = [
          ...named,
          ...beside.flatMap((gauge) => (gauge ? [gauge.label] : [])),
          ...printed.flatMap((each) => (each === null ? [] : [each])),
          ...facts.others,
          // No size is below nothing; `0 ± 1/64 in` is told where sheets are checked.
        ].filter((each) => !each.includes('-0'));
        for (const each of all) {
          suggested += 1;
          if (!reads(each)) bad.add(`${text}: ${each}`);
        }
      }),
      { numRuns: runs(3000), seed: 23 },
    );
    expect([...bad]).toEqual([]);
    expect(suggested).toBeGreaterThan(runs(3000));
  });
});
