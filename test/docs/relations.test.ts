import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { kinds } from '../../src/generated/kinds.ts';
import { kindFaults } from '../../src/kinds/faults.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import { relations } from '../../src/relations/formulas/list.ts';
import { formulaNames } from '../../src/relations/index.ts';
import { relationsPage } from '../../src/relations/relations-page.ts';
import { root } from './marked-blocks.ts';

test('docs/relations.md is what the formulas say (else RENEW_GOLDEN=1 npx vitest run test/docs)', () => {
  const path = join(root, 'docs', 'relations.md');
  const page = relationsPage(relations, builtInKinds().values());
  if (process.env.RENEW_GOLDEN === '1') writeFileSync(path, page);
  expect(readFileSync(path, 'utf8')).toBe(page);
});

test('the built-in kinds bind formulas and quantities that there are', () => {
  for (const data of Object.values(kinds).map((each) => each()))
    expect(kindFaults(data, formulaNames())).toEqual([]);
});
