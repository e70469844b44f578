import { describe, expect, test } from 'vitest';
import { builtInKinds } from '../../../src/kinds/index.ts';
import { sheetBody } from '../../../src/press/matter/body.ts';
import { taskHazards } from '../../../src/press/matter/task-hazards.ts';
import { demoSheets } from '../demo-sheets.ts';
import { sampleText, toPrint } from '../stand.ts';

const plain = (html: string) => html.replace(/<[^>]*>/g, '').replace(/\s+/g, ' ');

/** `step: name`, of an operation with that Markdown at the end of the sample. */
function met(markdown: string) {
  const { sheet } = toPrint(`${sampleText}\n${markdown}\n`);
  const at = sheet.operations.length - 1;
  const hazards = taskHazards(sheet).get(at) ?? [];
  const body = sheetBody(sheet, { prefix: 'x', picture: null, altitude: null }).operations[at];
  return {
    hazards: hazards.map(({ step, name }) => `${step}: ${name}`),
    work: plain(body?.work ?? ''),
    steps: plain(body?.steps ?? ''),
  };
}

describe('the hazards of a task', () => {
  test('stand before the first step that has words of them', () => {
    const { hazards, work } = met(
      '## Cleaning\n\n1. Take out the jets.\n2. Wash the body in solvent.\n3. Blow the passages through.\n',
    );
    expect(hazards).toEqual(['1: solvent', '2: compressed-air']);
    expect(work).toContain('⚠ WARNING Wear goggles and gloves. Wash the body in solvent.');
    expect(work).toContain('⚠ CAUTION Wear goggles; blow away from people.');
  });

  test('stand before the first step where no words tell', () => {
    expect(met('## Cleaning\n\n1. Take out the jets.\n2. Put them by.\n').hazards).toEqual([
      '0: solvent',
      '0: compressed-air',
    ]);
  });

  test('stand behind the sheet’s own message, whose words are said elsewhere', () => {
    const { hazards, work, steps } = met(
      '## Polishing\n\n1. Wash it.\n\n:::warning{hazard=solvent}\nIt bites, and this is told at length.\n:::\n\n2. Wash it again.\n',
    );
    expect(hazards).toEqual(['1: solvent']);
    for (const text of [work, steps]) {
      expect(text).not.toContain('at length');
      expect(text).toContain('Wear goggles and gloves. Wash it again.');
    }
  });

  test('of one signal word are one line', () => {
    const { work } = met('## First start\n\n1. Go on.\n');
    expect(work).toMatch(
      /⚠ DANGER Run it outdoors, or lead the exhaust outside\. ⚠ WARNING [^⚠]*⚠ CAUTION/,
    );
  });

  test('a message that names no hazard stays where it is', () => {
    const { work } = met('## Polishing\n\n:::notice\nMind the paint.\n:::\n\n1. Polish.\n');
    expect(work).toContain('Mind the paint.');
  });
});

describe('over the demo', () => {
  test.each(demoSheets().map(({ sheet }) => [sheet.file, sheet] as const))(
    '%s: full words belong before one task each, and every step that is named is there',
    (_file, sheet) => {
      const all = [...taskHazards(sheet)];
      const firsts = all.flatMap(([, hazards]) => hazards.filter(({ first }) => first));
      const names = new Set(all.flatMap(([, hazards]) => hazards.map(({ name }) => name)));
      expect(firsts.map(({ name }) => name).sort()).toEqual([...names].sort());
      expect(names.size).toBeGreaterThan(5);
      const { operations } = sheetBody(sheet, { prefix: 'x', picture: null, altitude: null });
      for (const [index, hazards] of all) {
        for (const { step, imperative } of hazards) {
          expect(sheet.operations[index]?.steps[step]).toBeDefined();
          expect(plain(operations[index]?.work ?? '')).toContain(imperative);
        }
      }
    },
  );

  test('the engine is started behind the words on its exhaust', () => {
    for (const { sheet } of demoSheets()) {
      const hazards = [...taskHazards(sheet)].flatMap(([index, list]) =>
        list
          .filter(({ name, first }) => name === 'carbon-monoxide' && first)
          .map(({ step }) => ({ index, step })),
      );
      const [at] = hazards;
      const step = sheet.operations[at?.index ?? -1]?.steps[at?.step ?? -1];
      expect(sheet.text.slice(step?.span.start, step?.span.end), sheet.file).toMatch(/[Ss]tart/);
    }
  });
});

test('every hazard of the kinds has an imperative of its own', () => {
  for (const kind of builtInKinds().values()) {
    for (const { message, name } of kind.hazards.values()) {
      expect(message.imperative.length, name).toBeLessThanOrEqual(60);
      expect(message.imperative, name).toMatch(/^[A-Z].*\.$/);
      expect(message.avoid.startsWith(message.imperative), name).toBe(false);
    }
  }
});
