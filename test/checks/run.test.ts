import { describe, expect, test } from 'vitest';
import { type Check, defineCheck, type Report } from '../../src/checks/define.ts';
import { allChecks, examineParsed } from '../../src/checks/index.ts';
import { examine } from '../../src/checks/list.ts';
import { runChecks } from '../../src/checks/run.ts';
import { exampleContext, exampleFile, wholeSheet } from './examples.ts';

const context = exampleContext();

function examined(front = '', body?: string) {
  const sheet = wholeSheet({ front, ...(body === undefined ? {} : { body }) });
  return examine(sheet, exampleFile, context);
}

function made(id: string, reports: readonly Report<'seen' | 'two'>[], more: Partial<Check> = {}) {
  return defineCheck({
    id,
    severity: 'warning',
    group: 'reading',
    summary: 'Made for this test.',
    explain: 'Accept it.',
    messages: { seen: { message: 'seen {what}', fix: null }, two: { message: 'two', fix: 'one' } },
    run: (_sheet, _context, report) => {
      for (const one of reports) report(one);
    },
    examples: [],
    ...more,
  });
}

const span = (start: number, end: number) => ({ start, end });
const { sheet } = examined();

describe('running checks', () => {
  test('sorts by start, then end, then id', () => {
    const second = made('b', [
      { message: 'two', span: span(5, 9) },
      { message: 'two', span: span(2, 3) },
    ]);
    const first = made('a', [
      { message: 'two', span: span(5, 9) },
      { message: 'two', span: span(5, 6) },
    ]);
    const order = runChecks([second, first], sheet, context).map((finding) => [
      finding.span.start,
      finding.span.end,
      finding.check,
    ]);
    expect(order).toEqual([
      [2, 3, 'b'],
      [5, 6, 'a'],
      [5, 9, 'a'],
      [5, 9, 'b'],
    ]);
  });

  test('fills placeholders, and leaves what a value brings along as it is', () => {
    const check = made('a', [
      { message: 'seen', span: span(0, 1), values: { what: '{#float-level} {other} $& $1' } },
    ]);
    expect(runChecks([check], sheet, context)[0]?.message).toBe(
      'seen {#float-level} {other} $& $1',
    );
  });

  test('fails for an unfilled placeholder and an undeclared message', () => {
    const unfilled = made('a', [{ message: 'seen', span: span(0, 1) }]);
    expect(() => runChecks([unfilled], sheet, context)).toThrow('check a leaves {what} unfilled');
    const undeclared = made('a', [{ message: 'two', span: span(0, 1) }], { messages: {} });
    expect(() => runChecks([undeclared], sheet, context)).toThrow('does not declare: two');
  });

  test('gives a check that runs last what the others found', () => {
    const seen: string[] = [];
    const last = made('z', [], {
      last: true,
      run: (_sheet, _context, _report, { findings, ids }) => {
        seen.push(...findings.map((finding) => finding.check), ...ids);
      },
    });
    runChecks([last, made('a', [{ message: 'two', span: span(0, 1) }])], sheet, context);
    expect(seen).toEqual(['a', 'z', 'a']);
  });

  test('is the same for a sheet that was read before', () => {
    const { sheet: read, findings } = examined('sources: {}');
    expect(findings.length).toBeGreaterThan(0);
    expect(examineParsed(read, context)).toEqual(findings);
  });

  test('keeps to front matter that cannot be read, and calls nothing missing', () => {
    const { findings } = examined('settings: { float-level: { value: [ }');
    expect(new Set(findings.map((finding) => finding.check))).toEqual(
      new Set(['front-matter-unreadable']),
    );
  });
});

describe('acceptance', () => {
  const unused = 'settings:\n  float-drop: { value: 1 in, from: m48 }\n';
  const accepted = (accept: string, front = unused) =>
    examined(`${front}${accept}`)
      .findings.filter((finding) => finding.check === 'setting-unused')
      .map((finding) => finding.accepted);

  test.each([
    [
      'by the name of the setting',
      'accept: [{ finding: setting-unused, at: float-drop, reason: R }]',
    ],
    ['by an alias of it', 'accept: [{ finding: setting-unused, at: Float travel, reason: R }]'],
    ['on the whole sheet', 'accept: [{ finding: setting-unused, reason: R }]'],
  ])('holds %s', (_, accept) => {
    expect(accepted(accept)).toEqual(['R']);
  });

  test.each([
    ['at another setting', 'accept: [{ finding: setting-unused, at: float-level, reason: R }]'],
    ['of another finding', 'accept: [{ finding: setting-missing, at: float-drop, reason: R }]'],
    ['with an empty reason', 'accept: [{ finding: setting-unused, at: float-drop, reason: " " }]'],
  ])('does not hold %s', (_, accept) => {
    expect(accepted(accept)).toEqual([null]);
  });

  test('never holds for an error', () => {
    const { findings } = examined(
      'accept: [{ finding: value-undefined, at: float-drop, reason: R }]',
      '## Float drop\n\n1. Set :value[float-drop].\n',
    );
    const found = findings.filter((finding) => finding.check === 'value-undefined');
    expect(found.map((finding) => finding.accepted)).toEqual([null]);
    expect(findings.map((finding) => finding.check)).toContain('acceptance-barred');
  });

  test('holds for any of the choices that are missing', () => {
    const unit = 'unit: { kind: carburetor, maker: Orlo, model: F27, features: [downdraft, pump] }';
    const settings = 'settings: { float-level: { value: 1/4 in, from: m48 } }';
    const { findings } = examined(
      `${unit}\n${settings}\naccept: [{ finding: setting-missing, at: pump-delivery, reason: R }]`,
    );
    const missing = findings.filter((finding) => finding.check === 'setting-missing');
    expect(missing.map((finding) => [finding.subject, finding.accepted])).toEqual([
      ['idle-mixture', null],
      ['pump-stroke', 'R'],
    ]);
  });
});

describe('the cost', () => {
  test('is a small part of the reading', () => {
    const text = wholeSheet({});
    const reading = examine(text, exampleFile, context).sheet;
    for (let i = 0; i < 50; i++) runChecks(allChecks, reading, context);
    const start = performance.now();
    for (let i = 0; i < 200; i++) runChecks(allChecks, reading, context);
    // Five times what it takes alone, for a machine that is busy with other things.
    expect((performance.now() - start) / 200).toBeLessThan(5);
  });
});
