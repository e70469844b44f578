import { expect, test } from 'vitest';
import { examine } from '../../src/checks/list.ts';
import { wholeSheet } from '../checks/examples.ts';
import { demoContext } from './demo-sheets.ts';

/** How long the order of a hostile sheet may take with everything else, in milliseconds; far above what it takes. */
const patience = 20_000;

const repeated = (times: number, ...sections: readonly string[]): string =>
  Array.from({ length: times }, (_, i) =>
    sections.map((each) => each.replace('@', String(i))).join('\n'),
  ).join('\n');

test.each([
  [
    'stages turned about hundreds of times',
    repeated(
      400,
      '## First start @ {#first-start}\n\n1. Go.\n',
      '## Dashpot @ {#dashpot}\n\n1. Stay.\n',
    ),
  ],
  [
    'a setting disturbed again and again, and named in words',
    repeated(
      400,
      '## Metering rods @ {#metering-rods}\n\n1. Set :value[metering-rods].\n',
      '## Pump stroke @ {#pump-stroke}\n\n1. Set :value[pump-stroke], minding the metering rods.\n',
      '## Installation @ {#installation}\n\n1. Bolt it.\n',
    ),
  ],
  [
    'every operation the wrong way round',
    [...(demoContext.kinds.get('carburetor')?.operations.keys() ?? [])]
      .reverse()
      .map((name) => `## ${name}\n\n1. Do it.\n`)
      .join('\n'),
  ],
  [
    'thousands of marks in one step',
    `## Strip\n\n1. ${':state[cover off] :state[cover on] '.repeat(2000)}\n`,
  ],
])('%s', (_, body) => {
  const start = performance.now();
  const { findings } = examine(wholeSheet({ body }), 'sheets/hostile.md', demoContext);
  expect(findings.length).toBeGreaterThan(0);
  expect(performance.now() - start).toBeLessThan(patience);
});
