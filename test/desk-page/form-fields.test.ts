import { expect, test } from 'vitest';
import { completions } from '../../src/desk/completions.ts';
import { formEdit } from '../../src/desk-page/form-edit.ts';
import { formModel } from '../../src/desk-page/form-fields.ts';
import type { FormEdit, FormGroup } from '../../src/desk-page/form-model.ts';
import { applyEdits } from '../../src/report/index.ts';
import { opened } from '../desk/opened.ts';

// What somebody looked for in the form and did not find.
const sheet = (settings: string) => `---
gaugeleaf: 1
sheet: brindle-d48
title: Brindle D48
unit: { kind: ignition-distributor, maker: Brindle, model: D48, features: [dual-points, vacuum-advance] }
revision: 1
date: 2026-10-03
status: draft
sources:
  s1: { title: A leaflet }
settings:
  dwell: { value: 33°, from: s1 }
  advance-part:
    value: 11°
${settings}---
`;

function model(text: string) {
  const made = formModel(opened(text).document);
  if (made === null) throw new Error('no form');
  return made;
}

const group = (text: string, id: string): FormGroup => {
  const found = model(text).settings.find((each) => each.id === `setting-${id}`);
  if (found === undefined) throw new Error(`no ${id}`);
  return found;
};

function entered(text: string, edit: FormEdit): string {
  const { front, frontMatter } = opened(text).document.sheet;
  if (front === null || frontMatter === null) throw new Error('no front matter');
  return applyEdits(text, formEdit(text, front, frontMatter, edit) ?? []);
}

test('of what, at what: the words that may stand there are told', () => {
  const of = group(sheet('    from: s1\n'), 'advance-part').fields.find(
    ({ label }) => label === 'Of',
  );
  expect(of).toMatchObject({ asked: true, hint: 'distributor or crank', offer: null });
});

test('what a formula asks for, how it is also written, gauge and another paper are offered', () => {
  const { fields } = group(sheet('    from: s1\n'), 'advance-part');
  const offers = new Set(fields.flatMap(({ offer }) => offer ?? []));
  for (const each of ['crank', 'crank speed', 'how it is also written', 'its gauge'])
    expect(offers).toContain(each);
  expect(offers).toContain('what another paper says');
  expect(offers).toContain('one more source that says the same');
  expect(model(sheet('')).nextSource).toBe('s2');
});

test('what another paper says is put below the setting, one paper after the other', () => {
  const at = (index: number, key: string) => ['settings', 'advance-part', 'but', index, key];
  const once = entered(sheet('    from: s1\n'), { path: at(0, 'value'), value: '12°' });
  const from = entered(once, { path: at(0, 'from'), value: 's2 p. 4' });
  const twice = entered(from, { path: at(1, 'value'), value: '13°' });
  expect(twice).toContain(
    '    from: s1\n    but:\n      - { value: 12°, from: s2 p. 4 }\n      - { value: 13° }\n---',
  );
  const inline = entered(sheet(''), {
    path: ['settings', 'dwell', 'but', 0, 'value'],
    value: '34°',
  });
  expect(inline).toContain('dwell: { value: 33°, from: s1, but: [{ value: 34° }] }');
});

test('what the features speak of comes first among further settings', () => {
  expect(model(sheet('')).more[0]).toEqual({
    name: 'dwell-each',
    label: 'Dwell of each set (goes with Dual points)',
  });
});

test('within a setting its own keys come first, and none that only another kind has use for', () => {
  const { document, offset } = opened(sheet('    |\n    from: s1\n'));
  const labels = completions(document, offset).map(({ label }) => label);
  expect(labels.slice(0, 2)).toEqual(['of', 'speed']);
  expect(labels.slice(2, 4).sort()).toEqual(['crank', 'crank-speed']);
  for (const strange of ['gasket', 'throttle', 'choke', 'cover', 'link'])
    expect(labels).not.toContain(strange);
  for (const common of ['also', 'gauge', 'note', 'but']) expect(labels).toContain(common);
});
