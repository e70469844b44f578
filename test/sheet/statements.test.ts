import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Setting } from '../../src/sheet/model.ts';
import { runs } from '../suite/part.ts';
import { read, under } from './fixtures.ts';

function setting(lines: string): Setting {
  const sheet = read(
    `---\nunit: { kind: carburetor }\nsources: { m48: {}, b17: {}, kit: {}, bench: {} }\nsettings:\n  unloader:\n${lines}\n---\n`,
  );
  const found = sheet.settings.get('unloader');
  if (found === undefined) throw new Error('the sheet has no such setting');
  // What is read keeps its place in the sheet.
  for (const size of [found.value, ...found.also]) {
    if (size !== null) expect(under(sheet, size.span)).toBe(size.text);
  }
  return found;
}

const cited = ({ from }: Setting) =>
  from.map(({ source, page }) => `${source.value}${page === null ? '' : ` ${page}`}`);
const dissents = ({ but }: Setting) =>
  but.map(({ value, from, ruling }) => [value?.text, from?.source.value, ruling?.value ?? null]);

describe('the statements of a setting', () => {
  const all = `    statements:
      - { value: No. 30 drill, from: b17 p. 2, ruling: for the later plate }
      - { value: No. 29 drill, from: m48 p. 33 }
      - { value: 0.136 in, from: kit }
      - { value: 0.1360 in, from: bench, note: three units }`;

  test('are sorted under the one that is followed, each as it is written', () => {
    const found = setting(`${all}\n    follows: m48`);
    expect(found.value?.text).toBe('No. 29 drill');
    expect(found.also.map(({ text }) => text)).toEqual(['0.136 in', '0.1360 in']);
    expect(cited(found)).toEqual(['m48 p. 33', 'kit', 'bench']);
    expect(dissents(found)).toEqual([['No. 30 drill', 'b17', 'for the later plate']]);
    expect(found.statements).toHaveLength(4);
    expect(found.statements[3]?.note?.value).toBe('three units');
  });

  test('are sorted under the first where none is named', () => {
    const found = setting(all);
    expect(found.value?.text).toBe('No. 30 drill');
    expect(dissents(found).map(([text]) => text)).toEqual([
      'No. 29 drill',
      '0.136 in',
      '0.1360 in',
    ]);
  });

  test('stand beside a figure of the sheet’s own, which they support or not', () => {
    const found = setting(`    value: 0.136 in\n${all}`);
    expect(found.value?.text).toBe('0.136 in');
    expect(cited(found)).toEqual(['m48 p. 33', 'kit', 'bench']);
    expect(found.also.map(({ text }) => text)).toEqual(['No. 29 drill', '0.1360 in']);
    expect(dissents(found)).toHaveLength(1);
  });

  test('are told apart by the page where one source states two', () => {
    const two = `    statements:
      - { value: No. 29 drill, from: m48 p. 33 }
      - { value: No. 30 drill, from: m48 p. 118 }`;
    expect(setting(`${two}\n    follows: m48 p. 118`).value?.text).toBe('No. 30 drill');
    expect(setting(`${two}\n    follows: m48`).value?.text).toBe('No. 29 drill');
  });

  test('that differ have the ruling on all where they have none of their own', () => {
    const found = setting(`${all}\n    follows: bench\n    ruling: measured twice`);
    expect(dissents(found)).toEqual([['No. 30 drill', 'b17', 'for the later plate']]);
    const other = setting(
      '    value: No. 29 drill\n    but: [{ value: No. 30 drill, from: b17 }]\n    ruling: measured twice',
    );
    expect(dissents(other)).toEqual([['No. 30 drill', 'b17', 'measured twice']]);
  });

  test('differ by their limits too, and where they are no size of the same thing', () => {
    const found = setting(`    statements:
      - { value: 13/64 ± 1/64 in, from: m48 }
      - { value: 13/64 ± 1/32 in, from: b17 }
      - { value: 1 turn out, from: kit }
      - { value: what is this, from: bench }`);
    expect(dissents(found).map(([text]) => text)).toEqual(['13/64 ± 1/32 in', '1 turn out']);
    // What cannot be read is told as such, and ruled by nobody.
    expect(found.also.map(({ text }) => text)).toEqual(['what is this']);
  });

  test('property: no order of them changes what the followed one is, nor who differs from it', () => {
    // Sizes of one group are one size by ASME B94.11M: No. 29 is 0.1360 in, No. 30 0.1285 in, 9/64 in 0.140625.
    const groups = [
      ['No. 29 drill', '0.136 in', '0.1360 in', '#29 drill'],
      ['No. 30 drill', '0.1285 in', '#30 drill'],
      ['9/64 in', '0.140625 in', '0.1406 in'],
    ] as const;
    const one = fc
      .nat(2)
      .chain((group) =>
        fc.constantFrom(...(groups[group] ?? [])).map((value) => ({ group, value })),
      );
    fc.assert(
      fc.property(fc.array(one, { minLength: 1, maxLength: 6 }), fc.nat(), (list, pick) => {
        const at = pick % list.length;
        const lines = list.map(({ value }, i) => `      - { value: '${value}', from: s${i} }`);
        const turned = [...lines].reverse();
        for (const order of [lines, turned]) {
          const found = setting(`    statements:\n${order.join('\n')}\n    follows: s${at}`);
          expect(found.value?.text).toBe(list[at]?.value);
          const apart = list.flatMap(({ group }, i) =>
            group === list[at]?.group ? [] : [`s${i}`],
          );
          expect(found.but.map(({ from }) => from?.source.value).sort()).toEqual(apart.sort());
          expect(found.from).toHaveLength(list.length - apart.length);
        }
      }),
      { numRuns: runs(60) },
    );
  });
});
