import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { type FileKeys, keysPage, type Schema } from './keys-page.ts';
import { root } from './marked-blocks.ts';

const files: readonly (readonly [heading: string, schema: string])[] = [
  ['Sheet', 'sheet'],
  ['Edition', 'edition'],
  ['Shared sources', 'sources'],
  ['Bench record', 'record'],
  ['Second reading', 'reading'],
  ['Mapping of a list', 'mapping'],
  ['Kind of unit', 'kind'],
];

test('docs/keys.md is what the schemas say (else RENEW_GOLDEN=1 npx vitest run test/docs)', () => {
  const path = join(root, 'docs', 'keys.md');
  const page = keysPage(
    files.map(([heading, name]): FileKeys => {
      const schema: Schema = JSON.parse(
        readFileSync(join(root, 'schemas', `${name}.schema.json`), 'utf8'),
      );
      return [heading, schema];
    }),
  );
  if (process.env.RENEW_GOLDEN === '1') writeFileSync(path, page);
  expect(readFileSync(path, 'utf8')).toBe(page);
});

test('a reference is followed, a list looked into, and a bar does not end the cell', () => {
  const page = keysPage([
    [
      'File',
      {
        $defs: { name: { description: 'A name.', examples: ['a|b'] } },
        required: ['one'],
        properties: {
          one: { $ref: '#/$defs/name' },
          many: { items: { properties: { two: { description: 'Two.', enum: [1, 2] } } } },
        },
      },
    ],
  ]);
  expect(page).toContain('| **`one`** | A name. | `a\\|b` |');
  expect(page).toContain('Below `many`:\n');
  expect(page).toContain('| `two` | Two. | `1`, `2` |');
});
