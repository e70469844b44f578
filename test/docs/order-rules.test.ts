import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { builtInKinds } from '../../src/kinds/index.ts';
import { rulesPage } from '../../src/kinds/rules-page.ts';

const path = new URL('../../docs/order-rules.md', import.meta.url);

test('docs/order-rules.md lists every rule of the order with its reason', () => {
  const page = rulesPage(builtInKinds().values());
  if (process.env['RENEW_GOLDEN']) writeFileSync(path, page);
  expect(readFileSync(path, 'utf8')).toBe(page);
  for (const row of page.split('\n').filter((line) => line.startsWith('| ')))
    expect(row).toMatch(/^\| [^|]+ \| (strength|---|hard|likely|custom) \| [^|]{3,} \|$/);
});
