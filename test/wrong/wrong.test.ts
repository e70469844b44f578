import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { allChecks } from '../../src/checks/index.ts';
import { decodeText } from '../../src/project/decode.ts';
import { gaugeleaf } from '../cli/console.ts';

/** Laid out as a club's own project, so that the sheets can be looked at as an editor would. */
const folder = import.meta.dirname;
const sheets = join(folder, 'sheets');

type Mistake = readonly [id: string, line: number, words: string, beside?: string];

/**
 * What is wrong, on which line, and the words the finding points at. One sheet a finding, named
 * after it. A fourth entry is a finding that the mistake cannot be had without.
 */
const mistakes: readonly Mistake[] = [
  ['file-unreadable', 27, '± 1/64 in'],
  ['front-matter-unreadable', 5, 'Quorley J63: single-barrel'],
  ['front-matter-absent', 1, '# Quorley J63 single-barrel'],
  ['front-matter-invalid', 17, 'prof'],
  ['base-unresolved', 5, 'quorley-5a'],
  ['variant-idle', 14, 'dashpot'],
  ['sheet-misnamed', 4, 'quorley-j63'],
  ['kind-unknown', 7, 'carburettor'],
  ['feature-unknown', 11, 'unlaoder'],
  ['features-exclusive', 11, 'two-barrel'],
  ['feature-unsaid', 11, 'unloader'],
  ['feature-dropped', 34, 'pump-stroke'],
  ['condition-beside-figure', 24, '7/32 in'],
  ['condition-unknown', 23, 'paralell'],
  ['limits-too-wide', 27, '7/32 ± 1/4 in'],
  ['count-disagrees', 82, 'all three barrels'],
  ['mark-broken', 84, ': value[float-level]'],
  ['setting-repeated', 47, 'Float Level'],
  ['sheets-joined', 106, '---'],
  ['thread-unknown', 12, '10-23 UNF'],
  ['unit-size-unknown', 13, 'throtle-bore'],
  ['value-misplaced', 94, ':value[fast-idle-gap]'],
  ['years-reversed', 14, '{ marque'],
  ['setting-unknown', 40, 'unlaoder'],
  ['key-misspelt', 51, 'cam-stpe'],
  ['setting-missing', 11, 'bowl-vent'],
  ['condition-unsaid', 26, 'float-level'],
  ['operation-unknown', 107, 'Quick idle set'],
  ['operation-missing', 11, 'pump'],
  ['heading-repeated', 116, 'Notes'],
  ['value-undefined', 111, ':value[float-drop]'],
  ['blank-to-fill', 35, 'fill in'],
  ['setting-unused', 47, 'fast-idle-gap'],
  // The mark that is not read leaves its words alone against the last mark.
  ['directive-unknown', 76, ':stat[gasket off]', 'state-unmet'],
  ['html-in-text', 90, '<b>'],
  ['picture-unprintable', 78, '![The bowl from below'],
  ['picture-untold', 78, '![](pictures/bowl.svg)'],
  ['state-unknown', 99, ':state[throtle shut]'],
  ['operation-early', 102, 'Fast idle gap'],
  ['order-unusual', 117, 'Dashpot'],
  ['state-unmet', 95, '2. Hook the link'],
  ['state-impossible', 100, ':state[throttle shut]'],
  ['setting-disturbed', 114, '1. Hold the throttle wide open'],
  ['part-left-open', 75, ':state[dust-cover off]'],
  ['part-refitted', 96, ':state[dust-cover on]'],
  ['work-rule-unknown', 58, 'unlaoder'],
  ['work-rule-unreasoned', 58, 'fast-idle-gap'],
  ['work-rule-circular', 58, 'fast-idle-gap'],
  ['size-unreadable', 35, '9/3x2 in'],
  ['size-without-system', 23, 'No. 52'],
  ['gauge-nonexistent', 23, 'No. 152 drill'],
  ['limits-inverted', 48, '0.034–0.030 in'],
  ['dimension-wrong', 35, '9 turns out'],
  ['sizes-disagree', 42, '0.1945 in'],
  ['size-chopped', 28, '0.218 in'],
  ['size-loosely-rounded', 24, '0.06 in'],
  ['limits-widened', 49, '0.76–0.87 mm'],
  ['size-unusual', 35, '9.32 in'],
  ['fraction-unruled', 35, '7/24 in'],
  ['gauge-outside-limits', 49, '0.023 in wire'],
  ['gauge-off-nominal', 29, '15/64 drill'],
  ['gauge-system-ambiguous', 48, '21 SWG'],
  ['gauge-none-fits', 48, '0.0266–0.0274 in'],
  ['leaf-in-bore', 50, '0.032 in leaf'],
  ['places-differ', 56, '1-3/4 turns out'],
  ['table-misplaced', 40, '1.02 ± 0.05 cm3'],
  ['curve-station-repeated', 44, '3/16 in'],
  ['curve-stations-disordered', 44, '3/8 in'],
  ['curve-course-broken', 44, '0.28 ± 0.05 cm3'],
  ['curve-row-odd', 44, '1.45 ± 0.05 cm3'],
  ['curve-disagrees', 40, '14.0 ± 0.5 cm3'],
  ['total-disagrees', 49, '91 ± 2° BTDC'],
  ['relation-unworkable', 30, '94 ± 3°'],
  ['figures-reversed', 14, '1-1/4 in'],
  ['worked-disagrees', 55, '0.0649 in'],
  ['worked-missing', 37, '14 ± 1° distributor'],
  ['prose-disagrees', 100, '5/16 in'],
  ['number-typed', 90, '7/32 in'],
  ['number-unplaced', 95, '12 in-lb'],
  ['setting-unsourced', 53, 'idle-mixture'],
  ['source-unknown', 56, 'mw'],
  ['source-untitled', 19, 'wm'],
  ['source-unfindable', 20, 'lf'],
  ['source-unused', 21, 'kit'],
  ['dissent-unruled', 46, 'No. 26 drill'],
  ['older-ruled', 47, 'No. 26 drill'],
  ['ruling-unsupported', 44, 'wm p. 12'],
  ['page-unsaid', 39, 'wm'],
  ['figure-read-once', 17, 'released'],
  ['read-by-same', 18, 'A. Tresco'],
  ['measured-outlier', 26, '0.318 in'],
  ['measured-contradicts', 41, '9/32 in'],
  ['measured-spread', 41, '0.281 ± 0.005 in'],
  ['measured-units-differ', 24, '4'],
  ['measured-unknown', 26, 'pump-storke'],
  ['measured-unlike', 26, '0.281 to 0.283 in'],
  ['measured-value-off', 41, '0.291 in'],
  ['measured-too-few', 20, '2 }'],
  ['caution-missing', 63, 'Strip and inspect'],
  ['caution-late', 77, ':::warning{hazard=asbestos}'],
  ['message-broken', 75, ':::'],
  ['hazard-unknown', 82, 'compresed-air'],
  ['hazard-unnamed', 82, ':::warning'],
  ['signal-too-mild', 65, 'caution'],
  ['acceptance-unknown', 58, 'setting-unusde'],
  // Only what is there to be accepted can be accepted badly.
  ['acceptance-unreasoned', 58, 'setting-unused', 'setting-unused'],
  ['acceptance-barred', 58, 'source-unknown', 'source-unknown'],
  ['acceptance-unused', 58, 'setting-unused'],
];

interface Found {
  readonly name: string;
  readonly severity: 'error' | 'warning' | 'note';
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly message: string;
}

const around = { cwd: folder };
// The sheets and not the project: one unit in all of them is not what is to be found.
const json = gaugeleaf(['check', 'sheets', '--format', 'json', '--all'], around).then(
  ({ out }): { findings: Found[]; counts: Record<Found['severity'], number> } => JSON.parse(out),
);

const lineOf = (name: string, line: number): string =>
  decodeText(readFileSync(join(sheets, `${name}.md`))).text.split('\n')[line - 1] ?? '';

describe('the folder of wrong sheets', () => {
  it('has a sheet for every finding there is, and no other', () => {
    const ids = allChecks.map(({ id }) => id).sort();
    expect(mistakes.map(([id]) => id).sort()).toEqual(ids);
    const files = readdirSync(sheets).filter((name) => name.endsWith('.md'));
    expect(files.sort()).toEqual(ids.map((id) => `${id}.md`).sort());
  });

  it.each(mistakes.map((each) => [each[0], each] as const))('%s', async (id, mistake) => {
    const [, line, words, beside] = mistake;
    const { findings } = await json;
    // Found where it is, and nothing else.
    const here = findings.filter(({ file }) => file === `sheets/${id}.md`);
    const expected = beside === undefined ? [id] : [id, beside];
    expect(here.map(({ name }) => name).sort()).toEqual(expected.sort());
    const found = here.find(({ name }) => name === id);
    expect(found?.line).toBe(line);
    expect(
      lineOf(id, line)
        .slice((found?.column ?? 0) - 1)
        .slice(0, words.length),
    ).toBe(words);
  });

  it('blames no file but those sheets', async () => {
    const { findings } = await json;
    const known = new Set(mistakes.map(([id]) => `sheets/${id}.md`));
    expect(findings.filter(({ file }) => !known.has(file))).toEqual([]);
  });

  it('stops the press, named from outside, and sums up what is wrong', async () => {
    const { counts } = await json;
    const { status, out, err } = await gaugeleaf(['check', 'test/wrong/sheets'], {
      cwd: join(folder, '../..'),
    });
    expect(status).toBe(1);
    expect(err).toBe('');
    const all = mistakes.length;
    const sum = `${counts.error} errors, ${counts.warning} warnings, ${counts.note} notes`;
    expect(out.split('\n')).toContain(
      `${sum} in ${all} of ${all} sheets; 1 can be mended with check --fix`,
    );
    expect(counts.error + counts.warning + counts.note).toBe(
      all + mistakes.filter(([, , , beside]) => beside !== undefined).length,
    );
    for (const [id] of mistakes) expect(out).toContain(`test/wrong/sheets/${id}.md\n`);
  });
});
