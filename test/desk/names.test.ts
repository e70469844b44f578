import { describe, expect, test } from 'vitest';
import { documentOf, openDocument } from '../../src/desk/document.ts';
import { hover, stateAfter } from '../../src/desk/hover.ts';
import type { DeskDocument, DeskProject } from '../../src/desk/model.ts';
import { definition, references } from '../../src/desk/names.ts';
import { folding, outline } from '../../src/desk/outline.ts';
import { rename, renameStart } from '../../src/desk/rename.ts';
import { kitOf } from '../../src/gauges/kit.ts';
import { readKitEntry } from '../../src/gauges/kit-entry.ts';
import { applyEdits } from '../../src/report/edits.ts';
import { exampleContext } from '../checks/examples.ts';
import { demo, opened } from './opened.ts';

const at = (document: DeskDocument, words: string, nth = 0) => {
  let from = -1;
  for (let i = 0; i <= nth; i++) from = document.text.indexOf(words, from + 1);
  if (from === -1) throw new Error(`no ${words}`);
  return from + 1;
};

const { document } = opened(demo('orlo-t71-wexcombe-six'));

describe('definition and references', () => {
  test('a mark leads to its setting', () => {
    const place = definition(document, at(document, ':value[float-level]') + 8);
    expect(place?.file).toBe(document.file);
    expect(document.text.slice(place?.span.start, place?.span.end)).toBe('float-level');
    expect(place?.span.start).toBe(at(document, '\n  float-level:') + 2);
  });

  test('a setting has its key and each of its marks', () => {
    const places = references(document, at(document, '\n  float-level:') + 4);
    expect(places.map(({ span }) => document.text.slice(span.start, span.end))).toEqual(
      places.map(() => 'float-level'),
    );
    expect(places.length).toBeGreaterThan(1);
  });
});

describe('rename', () => {
  const text = (id: string, source: string) =>
    `---\ngaugeleaf: 1\nsheet: ${id}\nsources:\n  ${source}: { title: Works Manual }\nsettings:\n  heater-flap:\n    value: 1/4 in\n    from: [${source} p. 3, "${source} p. 4"]\n---\n\n## Flap\n\n1. Set :value[heater-flap].\n`;
  const context = exampleContext();
  const other = openDocument(text('two', 'm48'), 'sheets/two.md', { context });
  const otherPaper = openDocument(
    text('three', 'm48').replace('Works Manual', 'Parts List'),
    'sheets/three.md',
    { context },
  );
  const project: DeskProject = { context, others: () => [other, otherPaper] };
  const one = openDocument(text('one', 'm48'), 'sheets/one.md', project);

  test('a source throughout the project, where it is the same paper', () => {
    const renamed = rename(one, at(one, 'm48'), 'works');
    if (!renamed.ok) throw new Error(renamed.message);
    expect(renamed.edits.map(({ file }) => file)).toEqual(['sheets/one.md', 'sheets/two.md']);
    expect(applyEdits(one.text, renamed.edits[0]?.edits ?? [])).toBe(text('one', 'works'));
    expect(applyEdits(other.text, renamed.edits[1]?.edits ?? [])).toBe(text('two', 'works'));
  });

  test('a setting of the sheet alone, marks and all', () => {
    const renamed = rename(one, at(one, 'heater-flap', 1), 'warm-flap');
    if (!renamed.ok) throw new Error(renamed.message);
    const [edits] = renamed.edits;
    expect(applyEdits(one.text, edits?.edits ?? [])).toBe(
      text('one', 'm48').replaceAll('heater-flap', 'warm-flap'),
    );
  });

  test("not the kind's names, and no name that is taken or is none", () => {
    expect(rename(document, at(document, 'float-level'), 'x')).toEqual({
      ok: false,
      message: "`float-level` is the kind's name for the setting; it is the same on every sheet",
    });
    expect(rename(one, at(one, 'm48'), 'A b').ok).toBe(false);
    expect(renameStart(document, at(document, 'float-level'))).toBeNull();
    expect(renameStart(one, at(one, 'm48', 1))?.name).toBe('m48');
  });
});

describe('hover', () => {
  test('a size in all its forms', () => {
    const found = hover(document, at(document, 'No. 29 drill'));
    expect(found?.title).toBe('No. 29 drill');
    expect(found?.rows).toContainEqual(['inches', '0.136 in exactly']);
  });

  test('a setting: what it is, what is usual, what is noticed', () => {
    const found = hover(document, at(document, ':value[float-level]') + 8);
    expect(found?.title).toBe('Float level');
    expect(found?.rows.map(([label]) => label)).toContain('usual');
  });

  test('a step: the state of every part after it', () => {
    const state = stateAfter(document, at(document, ':state[cover inverted]'));
    expect(state?.parts).toContainEqual(
      expect.objectContaining({ part: 'cover', changed: true, doubtful: false }),
    );
    expect(hover(document, at(document, ':state[cover inverted]'))?.rows.length).toBeGreaterThan(3);
  });

  test('a key says what it is for', () => {
    expect(hover(document, at(document, 'revision:'))?.words[0]).toContain('Counts up');
  });
});

test('the outline and what folds', () => {
  const entries = outline(document);
  expect(entries.map(({ name }) => name).slice(0, 3)).toEqual(['unit', 'sources', 'settings']);
  expect(entries.filter(({ kind }) => kind === 'operation').length).toBeGreaterThan(5);
  const folds = folding(document);
  expect(folds[0]?.startLine).toBe(1);
  expect(document.text.split('\n')[(folds[0]?.endLine ?? 0) - 1]).toBe('---');
});

test('a document takes a sheet and findings that are there already', () => {
  expect(documentOf(document.sheet, [], document.project).findings).toEqual([]);
});

test("what measures a size is told of the club's own gauges, where it lists them", () => {
  const text = demo('orlo-t71-wexcombe-six');
  const kit = kitOf([readKitEntry('13/64 drill')]);
  const own = openDocument(text, 'sheets/a.md', { context: { ...exampleContext(), kit } });
  const atHand = (each: DeskDocument) =>
    hover(each, at(each, 'value: No. 29 drill') + 8)?.rows.find(([label]) => label === 'at hand');
  expect(atHand(own)).toEqual(['at hand', expect.stringContaining('13/64 drill')]);
  expect(atHand(document)).not.toEqual(atHand(own));
});
