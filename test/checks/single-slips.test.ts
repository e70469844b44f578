import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type CheckContext, examineParsed } from '../../src/checks/index.ts';
import { gaugeBook } from '../../src/gauges/index.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import { readSheet } from '../../src/sheet/index.ts';
import type { Sheet } from '../../src/sheet/model.ts';
import { isQuick } from '../suite/part.ts';
import { wholeSheet } from './examples.ts';
import { slipSheets, unseen } from './slip-sheets.ts';
import { slipsIn, type Told, tell } from './slips.ts';

const context: CheckContext = {
  gauges: gaugeBook(),
  kinds: builtInKinds(),
  wireGauge: 'imperial',
  picture: null,
};

function demo(): Sheet[] {
  const folder = new URL('../../sheets/', import.meta.url);
  return readdirSync(folder)
    .filter((name) => name.endsWith('.md'))
    .sort()
    .map((name) =>
      readSheet(readFileSync(new URL(name, folder), 'utf8'), `sheets/${name}`, context),
    );
}

/** A sheet with every setting's `also` cut to its first entry, so that most are stated just twice. */
function twice(sheet: Sheet): Sheet {
  const text = sheet.text.replace(/(also: \[(?:"[^"]*"|[^,\]"]*)),[^\]]*\]/g, '$1]');
  return readSheet(text, sheet.file, context);
}

/** Every nth slip of some sheets (or all, with ALL_SLIPS=1), with what `check` says of each. */
function trial(sheets: readonly Sheet[], nth: number): Told[] {
  const step = process.env.ALL_SLIPS === '1' ? 1 : isQuick ? 12 * nth : nth;
  let count = 0;
  return sheets.flatMap((sheet) => {
    const before = examineParsed(sheet, context);
    return slipsIn(sheet)
      .filter(() => count++ % step === 0)
      .map((slip) => tell(sheet, before, slip, context));
  });
}

/** How much is found, how often the right figure is named, and how much is said beside it. */
function figures(told: readonly Told[]): { found: number; named: number; further: number } {
  const found = told.filter(({ findings }) => findings.length > 0);
  const named = found.filter((each) => each.named === 1 || each.named === 2);
  const further = found.reduce((sum, { findings }) => sum + findings.length - 1, 0);
  return {
    found: found.length,
    named: named.length / found.length,
    further: further / found.length,
  };
}

function print(title: string, told: readonly Told[]): void {
  const kinds = [...new Set(told.map(({ slip }) => slip.kind))];
  const rows = [...kinds, null].map((kind) => {
    const of = told.filter(({ slip }) => kind === null || slip.kind === kind);
    const { found, named, further } = figures(of);
    return `${(kind ?? 'all').padEnd(18)} ${of.length} planted, ${found} found, right figure first or second ${(100 * named).toFixed(1)} %, further findings ${further.toFixed(3)}`;
  });
  console.log(`${title}\n${rows.join('\n')}`);
  if (process.env.SHOW_SLIPS !== '1') return;
  for (const { slip, findings, named } of told) {
    if (findings.length === 1 && (named === 1 || named === 2)) continue;
    const lines = findings.map(
      ({ check, message, fix }) => `    ${check}: ${message}\n      ${fix}`,
    );
    console.log(
      `${slip.setting}: ${slip.right} as ${slip.wrong} (${slip.kind}) named ${named}\n${lines.join('\n')}`,
    );
  }
}

describe('single slips in settings that are stated twice', () => {
  it('on the demo: the right figure is named, and little is said beside it', {
    timeout: 300_000,
  }, () => {
    const told = trial(demo(), 47);
    print('demo', told);
    const { named, further } = figures(told);
    expect(named).toBeGreaterThan(0.8);
    expect(further).toBeLessThan(0.15);
  });

  it('on the demo with every setting stated no more than twice', { timeout: 300_000 }, () => {
    const told = trial(demo().map(twice), 37);
    print('demo, stated twice', told);
    const { named, further } = figures(told);
    expect(named).toBeGreaterThan(0.8);
    expect(further).toBeLessThan(0.15);
  });

  it('on sheets of other hands', { timeout: 300_000 }, () => {
    const sheets = slipSheets.map((sheet, i) =>
      readSheet(wholeSheet(sheet), `sheets/held-${i}.md`, context),
    );
    const told = trial(sheets, 11);
    print('held out', told);
    const { named, further } = figures(told);
    expect(named).toBeGreaterThan(0.8);
    expect(further).toBeLessThan(0.15);
  });

  it('on a sheet that nobody looked at before', { timeout: 300_000 }, () => {
    const sheets = unseen.map((sheet, i) =>
      readSheet(wholeSheet(sheet), `sheets/unseen-${i}.md`, context),
    );
    const told = trial(sheets, 5);
    print('unseen', told);
    const { named, further } = figures(told);
    expect(named).toBeGreaterThan(0.8);
    expect(further).toBeLessThan(0.15);
  });
});
