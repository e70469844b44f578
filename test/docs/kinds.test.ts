import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { builtInKinds } from '../../src/kinds/index.ts';
import { kindReference } from '../../src/kinds/reference/index.ts';
import { kindPage } from '../../src/report/kind/page.ts';

test.each([...builtInKinds().values()].map((kind) => [kind.name, kind] as const))(
  'docs/%s.md has all that the kind knows',
  (name, kind) => {
    const path = new URL(`../../docs/${name}.md`, import.meta.url);
    const page = kindPage(kindReference(kind));
    if (process.env.RENEW_GOLDEN) writeFileSync(path, page);
    expect(readFileSync(path, 'utf8')).toBe(page);
    for (const section of [kind.settings, kind.operations, kind.parts, kind.hazards, kind.features])
      for (const entry of section.keys()) expect(page).toContain(`| \`${entry}\` |`);
    for (const setting of kind.settings.keys()) expect(page).toContain(`: \`${setting}\`\n`);
    for (const row of page.split('\n').filter((line) => line.startsWith('| ')))
      expect(row).toMatch(/^\| (\S+|name) \| .+ \|$/);
  },
);
