import { describe, expect, test } from 'vitest';
import { gaugeBook, kitOf, readKitEntry } from '../../../src/gauges/index.ts';
import { builtInKinds } from '../../../src/kinds/index.ts';
import { bookletModel } from '../../../src/press/booklet/model.ts';
import { gaugesToGather } from '../../../src/press/matter/gauges-to-gather.ts';
import { readSheet } from '../../../src/sheet/index.ts';

const kinds = builtInKinds();

function unit(settings: string, bore = '36 mm') {
  const text = `---\ngaugeleaf: 1\nunit: { kind: carburetor, throttle-bore: ${bore} }\nsettings:\n${settings
    .split('\n')
    .map((line) => `  ${line}`)
    .join('\n')}\n---\n`;
  const sheet = readSheet(text, 'sheets/x.md', { kinds, gauges: gaugeBook(), wireGauge: null });
  return { sheet, kind: kinds.get('carburetor') ?? null };
}

function kit(...lines: readonly string[]) {
  return kitOf(lines.map((line) => readKitEntry(line)));
}

/** `0.020 in leaf: 0 Bowl vent gap; 1 Dashpot`, a line a gauge. */
function told(gathering: ReturnType<typeof gaugesToGather>): readonly string[] {
  return gathering.groups.flatMap(({ gauges }) =>
    gauges.map(
      ({ label, usedBy }) =>
        `${label}: ${usedBy.map(({ sheet, settings }) => `${sheet} ${settings}`).join('; ')}`,
    ),
  );
}

describe('the gauges to gather', () => {
  test('one gauge serves all gaps that it lies within, on several sheets', () => {
    const found = gaugesToGather([
      unit('bowl-vent: { value: 0.018–0.022 in }\ndashpot: { value: 0.020–0.026 in }'),
      unit('vacuum-piston-gap: { value: 0.0205–0.024 in }'),
    ]);
    expect(told(found)).toEqual(['0.022 in leaf: 0 Bowl vent gap, Dashpot; 1 Vacuum piston gap']);
    expect(found.minimum).toBe(
      '3 settings name no gauge: beside those that the sheets name, one more gauge serves for all of them.',
    );
  });

  test('a gauge that a sheet names stays, and serves others without being counted', () => {
    const found = gaugesToGather([
      unit('bowl-vent: { value: 0.018–0.022 in, gauge: 0.021 in leaf }'),
      unit('dashpot: { value: 0.0205–0.024 in }'),
    ]);
    expect(told(found)).toEqual(['0.021 in leaf: 0 Bowl vent gap; 1 Dashpot']);
    expect(found.minimum).toBe(
      'One setting names no gauge, and those that the others name serve there too.',
    );
  });

  test('a leaf does not serve in a bore, however well its size lies', () => {
    const found = gaugesToGather([
      unit('bowl-vent: { value: 0.018–0.022 in }\nfast-idle-gap: { value: 0.018–0.022 in }'),
    ]);
    // One wire does for both; the leaf of the same size would do for one only.
    expect(told(found)).toEqual(['0.020 in wire: 0 Bowl vent gap, Fast idle gap']);
  });

  test('two gaps that share no gauge need two, and it says that no fewer do', () => {
    const found = gaugesToGather([
      unit('bowl-vent: { value: 0.018–0.022 in }\ndashpot: { value: 0.058–0.064 in }'),
    ]);
    expect(told(found)).toHaveLength(2);
    expect(found.minimum).toBe(
      '2 settings name no gauge: beside those that the sheets name, 2 more gauges serve for all of them, and no choice of fewer does.',
    );
  });

  test('leaves are gathered for a gap that only a stack can measure, a rule for a wide one', () => {
    const found = gaugesToGather([
      unit('bowl-vent: { value: 0.0270 in }\nfloat-drop: { value: 1-1/8 ± 1/16 in }'),
    ]);
    expect(told(found)).toEqual([
      '0.013 in leaf: 0 Bowl vent gap',
      '0.014 in leaf: 0 Bowl vent gap',
      'steel rule: 0 Float drop',
    ]);
    expect(found.minimum).toBeNull();
  });

  test('a club’s own kit counts in place of the ordinary one, and what it lacks is told', () => {
    const found = gaugesToGather(
      [unit('fast-idle-gap: { value: 0.0270–0.0279 in }\ndashpot: { value: 0.020–0.030 in }')],
      kit('0.026 in wire', '0.028 in wire'),
    );
    expect(told(found)).toEqual(['0.026 in wire: 0 Dashpot']);
    expect(found.unmet).toEqual([
      {
        sheet: 0,
        words:
          'Fast idle gap: no gauge of the kit fits: nearest are 0.026 in wire (0.0015 in less) and 0.028 in wire (0.0006 in more); to prove it, make go 0.027045 in and no-go 0.027855 in, known to 0.000045 in',
      },
    ]);
  });

  test('a gauge that nobody can read stands as it is written', () => {
    const found = gaugesToGather([unit('bowl-vent: { value: 0.020 in, gauge: the blue wire }')]);
    expect(told(found)).toEqual(['the blue wire: 0 Bowl vent gap']);
    expect(found.groups[0]?.gauges[0]).toMatchObject({ inch: null, mm: null });
  });

  test('a row of the booklet names a gauge that its list has', () => {
    const entry = {
      ...unit(
        'main-jet: { value: No. 65 drill }\nfast-idle-gap: { value: 34 to 36 thou }\nbowl-vent: { value: 0.018–0.022 in }',
      ),
      findings: [],
    };
    const model = bookletModel(
      [entry],
      { title: 'x' },
      { paper: 'a5', draft: false, picture: null },
    );
    const rows = model.chapters[0]?.settings ?? [];
    // A 0.035 in wire would be nearer to the middle; the No. 65 drill is on the list for the jet.
    expect(
      rows.map(({ name, gauge, worked }) => [name, gauge, ...worked.map(({ text }) => text)]),
    ).toEqual([
      ['main-jet', null],
      [
        'fast-idle-gap',
        'No. 65 drill, held along the bore',
        'to prove it, make go 0.0341 in and no-go 0.0359 in, known to 0.0001 in',
      ],
      ['bowl-vent', '0.020 in leaf'],
    ]);
    expect(model.gauges.flatMap(({ gauges }) => gauges.map(({ label }) => label))).toEqual([
      'No. 65 drill',
      '0.020 in leaf',
    ]);
    expect(model.gauges[0]?.gauges[0]?.usedBy).toEqual([
      { number: 1, anchor: 'unit-1', settings: 'Main jet, Fast idle gap' },
    ]);
    expect(model.fewest).toMatch(/^2 settings name no gauge/);
  });
});
