import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { dimensions, draftKind } from '../../src/import/index.ts';
import { commonHazards, readKind, tryKind } from '../../src/kinds/index.ts';

const own = (more: string): string => `gaugeleaf-kind: 1
kind: rig
title: Rig
builds-on: [running-engine]
settings:
  reading: { label: Reading, explain: What is read., dimensions: [pressure] }
operations:
  reading:
    stage: running
    hazards: [carbon-monoxide]
    needs: { engine: { is: running, because: it is read running } }
${more}`;

describe('a kind that builds on a common one', () => {
  test('has its hazards, parts and headings, and nothing of it is idle', () => {
    const { kind, problems } = readKind(own(''), 'kinds/rig.yaml');
    expect(problems).toEqual([]);
    expect(kind?.hazards.get('carbon-monoxide')?.signal).toBe('danger');
    expect(
      kind?.operationNamed('editor’s note')?.stage ?? kind?.operationNamed('notes')?.stage,
    ).toBe('any');
    expect(kind?.stateNamed('wheels chocked')).toEqual({ part: 'vehicle', condition: 'secured' });
    expect(tryKind(own(''))).toEqual([]);
  });

  test('says more of what is there, and its own words count', () => {
    const text = own(`parts:
  engine: { label: motor, aliases: [machine], conditions: { running: { aliases: [humming] } } }
`);
    const { kind, problems } = readKind(text, 'kinds/rig.yaml');
    expect(problems).toEqual([]);
    expect(kind?.parts.get('engine')?.label).toBe('motor');
    expect(kind?.stateNamed('machine humming')).toEqual({ part: 'engine', condition: 'running' });
    expect(kind?.stateNamed('engine stopped')).toEqual({ part: 'engine', condition: 'stopped' });
  });

  test('is told at its own place what it has wrong', () => {
    const text = own('').replace('[carbon-monoxide]', '[carbon-monoxyde]');
    const [problem] = readKind(text, 'kinds/rig.yaml').problems;
    expect(problem?.message).toBe('this kind has no hazard `carbon-monoxyde`');
    expect(text.slice(problem?.span.start, problem?.span.end)).toBe('carbon-monoxyde');
  });

  test('is told of a common kind that there is none of', () => {
    const text = own('').replace('[running-engine]', '[standing-engine]');
    const told = readKind(text, 'kinds/rig.yaml').problems;
    const first = told.find(({ message }) => message.includes('standing-engine'));
    expect(first?.message).toBe('the program has no common kind `standing-engine`');
    expect(first?.fix).toBe('write `running-engine`, or take it out');
    expect(text.slice(first?.span.start, first?.span.end)).toBe('standing-engine');
  });
});

test('a kind that was begun by asking checks clean, whatever was answered', () => {
  const text = draftKind({
    name: 'rig',
    title: 'Rig',
    schema: 'x.json',
    plan: {
      settings: [
        { label: 'Cut-in', dimension: 'voltage', usual: ['5 V', '30 V'] },
        { label: 'Seat', dimension: 'condition', usual: null },
      ],
      operations: [
        {
          label: 'Cut-in',
          stage: 'running',
          makes: ['Cut-in'],
          needs: [
            { part: 'engine', condition: 'hot' },
            { part: 'top lid', condition: 'off' },
            { part: 'lock nut', condition: 'tight' },
            { part: 'line', condition: 'joined' },
          ],
          hazards: [...commonHazards()],
        },
      ],
    },
  });
  expect(readKind(text, 'kinds/rig.yaml').problems).toEqual([]);
  expect(tryKind(text)).toEqual([]);
});

test('what may be answered as a dimension is what the schema has, and the page tells all of it', () => {
  const file = (path: string): string =>
    readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
  expect(dimensions).toEqual(JSON.parse(file('schemas/kind.schema.json')).$defs.dimension.enum);
  for (const each of dimensions) expect(file('docs/kinds.md')).toContain(`\`${each}\``);
});

test('what words say of a part counts where the kind takes them for plain', () => {
  const kindText = (plain: string): string =>
    own(`parts:
  tap:
    label: tap
    starts: open
    home: [open]
    home-at-start: false
    ${plain}
    reads: { shut: shut, open: open }
    conditions: { open: {}, shut: {} }
`);
  expect(readKind(kindText('words-count: true'), 'x').kind?.parts.get('tap')?.wordsCount).toBe(
    true,
  );
  expect(readKind(kindText('only-if-named: true'), 'x').kind?.parts.get('tap')?.wordsCount).toBe(
    false,
  );
});
