import { readFileSync } from 'node:fs';
import { Ajv, type SchemaObject } from 'ajv';
import addFormats from 'ajv-formats';
import { describe, expect, it } from 'vitest';
import type { Check } from '../../src/checks/define.ts';
import { placeFindings, toAnnotations, toSarif } from '../../src/report/index.ts';
import { toJson } from '../../src/report/json.ts';
import { LineIndex } from '../../src/text/span.ts';
import { finding, findings, reports, text } from './specimens.ts';

const check = (id: string, severity: Check['severity']): Check => ({
  id,
  severity,
  group: 'sizes',
  summary: `The summary of ${id}`,
  explain: `The explanation of ${id}`,
  messages: {},
  run: () => {},
  examples: [],
});
const checks = [
  check('chopped', 'warning'),
  check('sizes-disagree', 'error'),
  check('loosely-rounded', 'warning'),
  check('usual-range', 'note'),
];

describe('findings as JSON', () => {
  it('has the promised shape, and leaves accepted findings out of the counts', () => {
    const whole = JSON.parse(toJson(reports));
    expect(Object.keys(whole)).toEqual(['findings', 'counts', 'version']);
    expect(whole.counts).toEqual({ error: 1, warning: 1, note: 1 });
    expect(whole.findings).toHaveLength(4);
    expect(whole.findings[0]).toMatchObject({
      name: 'sizes-disagree',
      severity: 'error',
      file: 'sheets/orlo.md',
      line: 5,
      column: 12,
      message: 'No. 29 drill is 0.1360 in, but `also` says 0.163 in (0.027 in more)',
    });
    expect(whole.findings[0]).not.toHaveProperty('accepted');
    expect(whole.findings[2].accepted).toBe('the maker rounds so');
  });

  it('is whole with nothing found', () => {
    expect(toJson([])).toBe(
      '{"findings":[],"counts":{"error":0,"warning":0,"note":0},"version":1}\n',
    );
  });
});

describe('findings as SARIF', () => {
  const source = readFileSync(
    new URL('./reference/sarif-2.1.0-rtm.5.schema.json', import.meta.url),
    'utf8',
  );
  // The schema is draft-04; it uses nothing of it that draft-07 reads otherwise, save these two
  // keys (asserted below).
  const schema = JSON.parse(source) as SchemaObject;
  delete schema.$schema;
  delete schema.id;
  // One of its patterns has a lone bracket, which the Unicode mode of regular expressions refuses.
  const ajv = new Ajv({ strict: false, allErrors: true, unicodeRegExp: false });
  addFormats.default(ajv);
  const validate = ajv.compile(schema);

  it('is valid against the schema of SARIF 2.1.0', () => {
    expect(source).not.toMatch(/exclusiveM/);
    const refused = [{ file: 'sheets/a b.md', message: 'is a folder', fix: null }];
    for (const log of [
      toSarif(reports, { checks, version: '0.1.0' }),
      toSarif([], { checks, version: '0.1.0' }),
      toSarif(reports, { checks, version: '0.1.0', refused }),
    ]) {
      validate(JSON.parse(log));
      expect(validate.errors).toBeNull();
    }
  });

  it('the schema can fail', () => {
    const log = JSON.parse(toSarif(reports, { checks, version: '0.1.0' }));
    log.runs[0].results[0].level = 'fatal';
    log.runs[0].results[1].locations[0].physicalLocation.region.startLine = 0;
    expect(validate(log)).toBe(false);
    expect(validate.errors?.length).toBeGreaterThanOrEqual(2);
  });

  it('carries rules, UTF-16 regions, cures and suppressions', () => {
    const { runs } = JSON.parse(toSarif(reports, { checks, version: '0.1.0' }));
    const [run] = runs;
    expect(run.columnKind).toBe('utf16CodeUnits');
    expect(run.tool.driver.rules.map((rule: { id: string }) => rule.id)).toEqual([
      'chopped',
      'sizes-disagree',
      'loosely-rounded',
      'usual-range',
    ]);
    expect(run.results[0].ruleIndex).toBe(1);
    expect(run.results[1].locations[0].physicalLocation.region).toEqual({
      startLine: 6,
      // The emoji before it counts as two units.
      startColumn: text.split('\n')[5]?.indexOf('about') === 13 ? 14 : -1,
      endLine: 6,
      endColumn: 27,
    });
    expect(run.results[1].fixes[0].artifactChanges[0].replacements[0].insertedContent.text).toBe(
      ':value[idle]',
    );
    expect(run.results[0].suppressions).toEqual([]);
    expect(run.results[2].suppressions).toEqual([
      { kind: 'inSource', status: 'accepted', justification: 'the maker rounds so' },
    ]);
  });
});

describe('findings as workflow annotations', () => {
  it('escapes what the runner would read as its own', () => {
    const lines = toAnnotations(reports).split('\n');
    expect(lines[0]).toBe(
      '::error file=sheets/orlo.md,line=5,col=12,endLine=5,endColumn=20,title=sizes-disagree::' +
        'No. 29 drill is 0.1360 in, but `also` says 0.163 in (0.027 in more)' +
        '%0Afix: 0.136 in, if two digits were swapped; otherwise correct the drill',
    );
    expect(lines[1]).toContain('::a message with 100%25 of the odd: characters, all of them');
    expect(lines[2]).toContain('::notice file=');
    expect(lines).toHaveLength(4);
  });

  it('lets no sheet start a command of its own', () => {
    const hostile = finding({ message: 'x\n::warning::pwned', fix: null });
    const out = toAnnotations([
      {
        file: 'sheets/a,line=9:b%.md',
        findings: placeFindings(
          [{ ...hostile, file: 'sheets/a,line=9:b%.md' }],
          new LineIndex(text),
        ),
      },
    ]);
    expect(out.split('\n').filter((line) => line.startsWith('::'))).toHaveLength(1);
    expect(out).toContain('file=sheets/a%2Cline=9%3Ab%25.md,line=5');
  });

  it('leaves accepted findings out', () => {
    expect(toAnnotations(reports)).not.toContain('loosely-rounded');
    expect(findings.some((each) => each.check === 'loosely-rounded')).toBe(true);
  });
});
