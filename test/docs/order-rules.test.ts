import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { builtInKinds } from '../../src/kinds/index.ts';
import { rulesPage } from '../../src/kinds/rules-page.ts';

const path = new URL('../../docs/order-rules.md', import.meta.url);

test('docs/order-rules.md lists every rule of the order with its reason', () => {
  const page = rulesPage(builtInKinds().values());
  if (process.env.RENEW_GOLDEN) writeFileSync(path, page);
  expect(readFileSync(path, 'utf8')).toBe(page);
  for (const row of page.split('\n').filter((line) => line.startsWith('| ')))
    expect(row).toMatch(/^\| [^|]+ \| (strength|---|hard|likely|custom) \| [^|]{3,} \|$/);
});

test('docs/order-rules.md says on what words a rule hangs, and which need is one of the beginning', () => {
  const page = readFileSync(path, 'utf8');
  for (const kind of builtInKinds().values()) {
    for (const { disturbsSaid, needs } of kind.operations.values()) {
      for (const words of [...disturbsSaid.values(), ...needs.map(({ ifWords }) => ifWords)])
        for (const word of words) expect(page).toContain(`“${word}”`);
    }
  }
  expect(page).toContain(
    '| moves Float level, where the steps say “bend”, “bent”, “bending” | hard | bending the stop tab may move the arm that carries the level |',
  );
  expect(page).toContain(
    '| needs the throttle shut as it begins | hard | the stroke is counted from the shut plate |',
  );
  expect(page).toContain(
    '| needs the cap off, where the steps say “paper”, “cigarette”, “cellophane” | likely | the paper is laid between the contacts under the cap |',
  );
});
