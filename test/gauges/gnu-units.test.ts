import { execFileSync } from 'node:child_process';
import { beforeAll, describe, expect, test } from 'vitest';
import { formulaInches } from '../../src/gauges/book.ts';
import { gaugeBook, thread } from '../../src/gauges/index.ts';
import type { Gauge } from '../../src/quantity/model.ts';

const book = gaugeBook();

/** `4/0` is -3 and `0` is 0 in GNU units' counting of wires. */
function count(name: string): number {
  const zeros = /^(\d)\/0$/.exec(name)?.[1];
  return zeros ? 1 - Number(zeros) : Number(name);
}

interface Asked {
  readonly what: string;
  readonly ask: string;
  readonly inch: number;
  /** How far GNU units may be off: it computes in floating point and interpolates. */
  readonly within: number;
}

const inch = (gauge: Gauge) => gauge.mm.div('25.4').valueOf();
const asked: Asked[] = [
  ...book.all('number-drill').map((g) => ({
    what: g.label,
    ask: `drillgauge(${g.name})`,
    inch: inch(g),
    within: 1e-9,
  })),
  ...book.all('letter-drill').map((g) => ({
    what: g.label,
    ask: `drill${g.name}`,
    inch: inch(g),
    within: 1e-9,
  })),
  ...book.all('awg').map((g) => ({
    what: g.label,
    ask: `wiregauge(${count(g.name)})`,
    inch: Number(formulaInches('awg', g.name)),
    within: 0.000_000_051,
  })),
  ...book.all('swg').map((g) => ({
    what: g.label,
    ask: `brwiregauge(${count(g.name)})`,
    inch: inch(g),
    within: 1e-9,
  })),
  ...[0, 1, 2, 3, 4, 5, 6, 8, 10, 12].map((n) => ({
    what: `major diameter of No. ${n} UNF`,
    ask: `screwgauge(${n})`,
    inch: (thread(`No. ${n} UNF`)?.majorMm.div('25.4') ?? 0).valueOf(),
    within: 1e-9,
  })),
];

let installed = true;
try {
  execFileSync('units', ['--version'], { stdio: 'ignore' });
} catch {
  installed = false;
  console.warn('SKIPPED: the program `units` is not installed, so gauges are not held against it');
}

describe.skipIf(!installed)('against GNU units', () => {
  let answers: string[] = [];
  beforeAll(() => {
    const input = asked.map(({ ask }) => `${ask}\nin\n`).join('');
    const options = { input, encoding: 'utf8', env: { ...process.env, LC_ALL: 'C' } } as const;
    // `-f ''` is the program's own file alone: a user's own definitions must not answer.
    answers = execFileSync('units', ['-t', '-d', '12', '-f', ''], options).trim().split('\n');
  });

  test('one answer for each question', () => expect(answers.length).toBe(asked.length));

  test.each(asked.map((each, index) => ({ ...each, index })))('$what', (each) => {
    expect(Math.abs(Number(answers[each.index]) - each.inch)).toBeLessThan(each.within);
  });
});
