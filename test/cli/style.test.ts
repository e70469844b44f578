import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { cleanSheet, folderWith } from '../project/folder.ts';
import { gaugeleaf } from './console.ts';

const project = (templates: Readonly<Record<string, string>>) =>
  folderWith({
    'edition.yaml': 'gaugeleaf-edition: 1\ntitle: Settings\n',
    'sheets/clean.md': cleanSheet('clean'),
    ...templates,
  });
const misspelt = { 'templates/card.hbs': '<h1>{{face.tilte}}</h1>\n' };
const told = `templates/card.hbs
  1:12  error  template-invalid
        there is no \`tilte\` in \`face\`
        fix: perhaps \`title\` was meant
`;

describe('a misspelt name in a club’s template', () => {
  it('is found by check', async () => {
    const { status, out } = await gaugeleaf(['check'], { cwd: project(misspelt) });
    expect(status).toBe(1);
    expect(out).toContain(told);
    expect(out).toContain('1 error in 1 of 2 files');
  });

  it.each([['card', 'clean'], ['card', 'clean', '--proof'], ['booklet']])(
    'stops %s %s before there is a browser, a proof too',
    async (...args) => {
      const cwd = project(misspelt);
      const browser = ['--browser', join(cwd, 'none')];
      const { status, out, err } = await gaugeleaf([...args, ...browser], { cwd });
      expect({ status, out }).toEqual({ status: 1, out: '' });
      expect(err).toContain(told);
      expect(err).toContain('Nothing was printed: the club’s templates are to be mended first.');
      expect(existsSync(join(cwd, 'print'))).toBe(false);
    },
  );
});

it('what merely does nothing stops neither check nor the press', async () => {
  const cwd = project({ 'templates/partials/covre.hbs': '' });
  const checked = await gaugeleaf(['check'], { cwd });
  expect(checked.status).toBe(0);
  expect(checked.out).toContain('warning  template-unused');
  const { status, err } = await gaugeleaf(['card', 'clean', '--browser', join(cwd, 'none')], {
    cwd,
  });
  expect(status).toBe(2);
  expect(err).not.toContain('template-unused');
});

it('is told of by explain', async () => {
  const { status, out } = await gaugeleaf(['explain', 'template-invalid'], {
    cwd: import.meta.dirname,
  });
  expect(status).toBe(0);
  expect(out).toContain('docs/templates.md');
});
