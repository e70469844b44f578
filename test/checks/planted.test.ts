import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { CheckContext, Finding } from '../../src/checks/define.ts';
import { allChecks } from '../../src/checks/index.ts';
import { examine } from '../../src/checks/list.ts';
import { gaugeBook } from '../../src/gauges/index.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import { casesToTry } from '../suite/part.ts';
import { cleanSheets } from './clean-sheets.ts';
import { type Planting, plantings } from './plantings.ts';

const folder = new URL('../../sheets/', import.meta.url);
const names = readdirSync(folder)
  .filter((name) => name.endsWith('.md'))
  .map((name) => name.slice(0, -3));
const drawn = readdirSync(new URL('pictures/', folder)).map((name) => `pictures/${name}`);
const context: CheckContext = {
  gauges: gaugeBook(),
  kinds: builtInKinds(),
  wireGauge: null,
  measuredUnits: 2,
  picture: (url) => (drawn.includes(url) ? 'found' : 'missing'),
  family: {
    find: (id) => (names.includes(id) ? { file: `sheets/${id}.md`, text: textOf(id) } : null),
    names: () => names,
  },
};

/** The same where the edition asks for second readings; the demo's own are counted elsewhere. */
const asking: CheckContext = {
  ...context,
  secondReading: 'released',
  readings: {
    digest: String,
    all: [
      {
        file: 'sheets/readings/orlo-t71-wexcombe-six.m48.yaml',
        source: 'm48',
        by: 'T. Aldous',
        date: null,
        read: [
          { page: 'p. 12', setting: 'fuel-pressure', verdict: 'same', sheet: '0', answer: '0' },
        ],
        settled: [],
      },
    ],
  },
};

const orderIds = new Set(allChecks.filter(({ group }) => group === 'order').map(({ id }) => id));

const texts = new Map<string, string>();
function textOf(sheet: string): string {
  const known = texts.get(sheet);
  if (known !== undefined) return known;
  const text = readFileSync(new URL(`${sheet}.md`, folder), 'utf8');
  texts.set(sheet, text);
  return text;
}

function found(text: string, sheet: string): readonly (Finding & { readonly line: number })[] {
  const isDemo = names.includes(sheet);
  const isAsked =
    isDemo && /^status: released$/m.test(text) !== /^status: released$/m.test(textOf(sheet));
  const asked = isAsked || /^compiled-by:/m.test(text) ? asking : context;
  const { sheet: read, findings } = examine(text, `sheets/${sheet}.md`, asked);
  return findings.map((each) => ({ ...each, line: read.lines.place(each.span.start).line }));
}

/** The line, from 1, on which a planting's finding has to stand. */
function lineOf({ from, to, on }: Planting, before: string, after: string): number {
  let at = before.indexOf(from);
  while (after.charAt(at) === before.charAt(at) && at < after.length) at++;
  if (on !== undefined) {
    at = after.indexOf(on);
    expect(at, `\`${on}\` stands on the sheet`).toBeGreaterThanOrEqual(0);
  }
  expect(to).not.toBe(from);
  return after.slice(0, at).split('\n').length;
}

describe('one mistake in a clean sheet', () => {
  test.each(
    casesToTry(plantings, 4).map(
      (one) => [`${one.check}: ${one.to.trim().slice(0, 60)}`, one] as const,
    ),
  )('%s', (_name, one) => {
    const before = textOf(one.sheet);
    expect(before).toContain(one.from);
    const after = before.replace(one.from, () => one.to);
    const findings = found(after, one.sheet);
    const places = findings.map(({ check, line }) => `${line} ${check}`);
    expect(places).toContain(`${lineOf(one, before, after)} ${one.check}`);
    const others = findings.map(({ check }) => check).filter((check) => check !== one.check);
    expect(others.filter((check) => !one.with?.includes(check))).toEqual([]);
  });
});

/** Two at once: only together do they show it. */
describe('an error that the sheet accepts', () => {
  test('is found, and the acceptance with it', () => {
    const sheet = 'orlo-t71-wexcombe-six';
    const text = textOf(sheet)
      .replace('also: [0.1360 in', 'also: [0.1630 in')
      .replace(
        'status: proof\n',
        'status: proof\naccept: [{ finding: sizes-disagree, at: unloader, reason: as printed }]\n',
      );
    const findings = found(text, sheet).map(({ check, accepted }) => ({ check, accepted }));
    expect(findings).toEqual([
      { check: 'acceptance-barred', accepted: null },
      { check: 'sizes-disagree', accepted: null },
    ]);
  });
});

test('every check has a mistake planted for it', () => {
  const planted = new Set([...plantings.map(({ check }) => check), 'acceptance-barred']);
  // Mistakes of order are planted in test/order: every swap and every removal there is.
  const others = allChecks.filter(({ group }) => group !== 'order').map(({ id }) => id);
  expect(others.filter((id) => !planted.has(id))).toEqual([]);
});

describe('sheets in other hands', () => {
  test.each(cleanSheets.map((one) => [one.name, one] as const))('%s', (_name, one) => {
    // They mark no states: what is asked of the order is a note, and no more.
    const isAsked = ({ check, severity }: Finding): boolean =>
      severity === 'note' && orderIds.has(check);
    expect(found(one.text, one.sheet).filter((each) => !isAsked(each))).toEqual([]);
  });

  const orlo = 'orlo-t71-wexcombe-six';
  const work = (text: string): readonly [string, string] => {
    const at = text.indexOf('\n---\n', 4) + 5;
    return [text.slice(0, at), text.slice(at)];
  };
  const front = (change: (yaml: string) => string) => (text: string) => {
    const [yaml, body] = work(text);
    return change(yaml) + body;
  };
  const body = (change: (markdown: string) => string) => (text: string) => {
    const [yaml, markdown] = work(text);
    return yaml + change(markdown);
  };
  const put = (from: string, to: string) => (text: string) => {
    expect(text).toContain(from);
    return text.replace(from, () => to);
  };
  test.each<readonly [string, (text: string) => string]>([
    ['CR LF', (text) => text.replaceAll('\n', '\r\n')],
    ['a byte order mark', (text) => `\uFEFF${text}`],
    [
      'every value in double quotes',
      front((yaml) => yaml.replace(/( value| gauge| travel): (?![>|])(.+)$/gm, '$1: "$2"')),
    ],
    [
      'every value in single quotes',
      front((yaml) => yaml.replace(/( value| gauge| travel): (?![>|])(.+)$/gm, "$1: '$2'")),
    ],
    [
      'remarks behind the values',
      front((yaml) => yaml.replace(/( value: (?![>|]).+)$/gm, '$1   # as printed')),
    ],
    [
      'values below their keys',
      front((yaml) => yaml.replace(/^ {4}value: (?![>|])(.+)$/gm, '    value: >-\n      $1')),
    ],
    [
      'lists in block style',
      front((yaml) =>
        yaml.replace(
          /^( *)also: \[(.*)\]$/gm,
          (_, indent: string, list: string) =>
            `${indent}also:\n${list
              .split(', ')
              .map((one) => `${indent}  - ${one}`)
              .join('\n')}`,
        ),
      ),
    ],
    ['a hyphen for the dash of a range', front((yaml) => yaml.replaceAll('–', '-'))],
    ['no leading zeros', front((yaml) => yaml.replace(/([[ ])0\.(\d)/g, '$1.$2'))],
    ['plus-minus in letters', front((yaml) => yaml.replaceAll(' ± ', ' +/- '))],
    ['inch marks', front((yaml) => yaml.replace(/^( +value: \d+\/\d+ ± \d+\/\d+) in$/gm, '$1"'))],
    [
      'settings called by other names in the work',
      body((text) => text.replace(':value[unloader]', ':value[Choke unloader]')),
    ],
    ['stars and other list marks', body((text) => text.replace(/^(\d+)\. /gm, '$1) '))],
    [
      'setext title',
      body(put('# Orlo T71 two-barrel\n', 'Orlo T71 two-barrel\n==================\n')),
    ],
    [
      'figures that are no settings',
      body(
        put(
          '## Tools\n\n',
          '## Tools\n\nPart T71-104 of 10/3/1948, page 12, fig. 3.2, costs $2.50 and was cast with 27M. A No. 2 screwdriver,\na 3/8 in drive socket and a 1/2 in open-end wrench serve; 2 quarts of solvent at 68 °F last 15 minutes.\n\n',
        ),
      ),
    ],
    [
      'a dissent with its ruling',
      front(
        put(
          '    from: m48 p. 31\n',
          '    from: m48 p. 31\n    but: [{ value: 7/32 in, from: b17 p. 1, ruling: a misprint by the next table }]\n',
        ),
      ),
    ],
    [
      'a doubtful point accepted with its reason',
      (text) =>
        put(
          '0.028 in, 0.711 mm',
          '.02 in, 0.711 mm',
        )(
          put(
            'status: proof\n',
            'status: proof\naccept: [{ finding: size-chopped, at: fast-idle-gap, reason: the manual has no more places }]\n',
          )(text),
        ),
    ],
  ])('%s', (name, change) => {
    const text = change(textOf(orlo));
    expect(text).not.toBe(textOf(orlo));
    const stopping = found(text, orlo).filter(({ accepted }) => accepted === null);
    expect(
      stopping.map(({ line, check, message }) => `${line} ${check}: ${message}`),
      name,
    ).toEqual([]);
  });
});
