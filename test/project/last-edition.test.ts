import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { lastEdition } from '../../src/project/last-edition.ts';
import { openProject } from '../../src/project/project.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const project = openProject(root, root);
const { edition } = project.edition();
if (edition === null) throw new Error('the demo has no edition');
const named = (previous: string | null) => lastEdition(project, { ...edition, previous }, []);

test('an edition that names none has no last one', () => {
  expect(named(null)).toBeNull();
});

test('a data file of an export is held against the sheets at hand', () => {
  const last = named('editions/first.json');
  expect(last?.before.edition).toBe('first');
  // No sheet is at hand here, so all ten of the first edition are gone.
  const kinds = last?.changes.sheets.flatMap(({ changes }) => changes.map(({ kind }) => kind));
  expect(kinds).toEqual(Array.from({ length: 10 }, () => 'sheet-dropped'));
});

test.each([
  ['editions/none.json', '`previous: editions/none.json` of edition.yaml is not there'],
  ['../first.json', '`previous: ../first.json` of edition.yaml lies outside the project'],
  ['package.json', 'package.json is no data file that this version of gaugeleaf wrote'],
])('%s is refused in plain words', (previous, message) => {
  expect(() => named(previous)).toThrow(message);
});
