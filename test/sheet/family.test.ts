import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { stringify } from 'yaml';
import { sheetSnapshot } from '../../src/compare/index.ts';
import { gaugeBook } from '../../src/gauges/index.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import { originOf, readSheet, regionIn, type SheetText } from '../../src/sheet/index.ts';
import type { Sheet } from '../../src/sheet/model.ts';
import { isQuick } from '../suite/part.ts';

const kinds = builtInKinds();
const gauges = gaugeBook();

function read(texts: ReadonlyMap<string, string>, id: string): Sheet {
  const files = new Map<string, SheetText>(
    [...texts].map(([name, text]) => [name, { file: `sheets/${name}.md`, text }]),
  );
  return readSheet(texts.get(id) ?? '', `sheets/${id}.md`, {
    kinds,
    gauges,
    wireGauge: null,
    family: { find: (name) => files.get(name) ?? null, names: () => [...files.keys()] },
  });
}

/** A sheet as plain data, from which its text is written: the brute force works on this. */
interface Plain {
  readonly front: Readonly<Record<string, unknown>>;
  readonly unit: Readonly<Record<string, string>>;
  readonly settings: Readonly<Record<string, 'none' | Readonly<Record<string, string>>>>;
  readonly work: Readonly<Record<string, 'none'>>;
  readonly opening: string | null;
  /** Heading and what stands below it; null for a heading alone. */
  readonly operations: readonly (readonly [string, string | null])[];
}

function written({ front, unit, settings, work, opening, operations }: Plain): string {
  const yaml = stringify({
    ...front,
    ...(Object.keys(unit).length > 0 ? { unit } : {}),
    ...(Object.keys(settings).length > 0 ? { settings } : {}),
    ...(Object.keys(work).length > 0 ? { work } : {}),
  });
  const body = operations.map(
    ([head, text]) => `## ${head}\n${text === null ? '' : `\n${text}\n`}`,
  );
  return `---\n${yaml}---\n\n${opening === null ? '' : `${opening}\n\n`}${body.join('\n')}`;
}

/** Which operations make which setting, by the kind's own vocabulary: one of its own name each. */
const names = ['float-level', 'float-drop', 'pump-stroke', 'unloader', 'dashpot', 'idle-mixture'];
const heads: Readonly<Record<string, string>> = {
  'float-level': 'Float level',
  'float-drop': 'Float drop',
  'pump-stroke': 'Pump stroke',
  unloader: 'Unloader',
  dashpot: 'Dashpot',
  'idle-mixture': 'Idle mixture',
  cleaning: 'Cleaning',
};

/**
 * The variant written out by hand, so to speak: plain data laid over plain data by the rules of the
 * format, with nothing of the program's own merging.
 */
function expanded(variant: Plain, base: Plain): Plain {
  const settings: Record<string, Readonly<Record<string, string>>> = {};
  for (const name of [
    ...new Set([...Object.keys(base.settings), ...Object.keys(variant.settings)]),
  ]) {
    const own = variant.settings[name];
    const old = base.settings[name];
    if (own === 'none') continue;
    const under = old === 'none' || old === undefined ? {} : old;
    if (own === undefined) settings[name] = under;
    else if ('value' in own) {
      // How it is measured stays; the figure and all that belongs to it is the variant's.
      const { at, gasket, cover, link } = under;
      const kept = Object.entries({ at, gasket, cover, link }).filter(([, word]) => word);
      settings[name] = { ...(Object.fromEntries(kept) as Record<string, string>), ...own };
    } else settings[name] = { ...under, ...own };
  }
  const isGone = (name: string) =>
    variant.work[name] === 'none' || (variant.settings[name] === 'none' && names.includes(name));
  const nameOf = (head: string) => Object.keys(heads).find((name) => heads[name] === head) ?? head;
  const own = new Map(variant.operations);
  const operations = base.operations.flatMap(([head, text]): [string, string | null][] => {
    const over = own.get(head);
    if (typeof over === 'string') return [[head, over]];
    return over === undefined && isGone(nameOf(head)) ? [] : [[head, text]];
  });
  const known = new Set(base.operations.map(([head]) => head));
  let before: string | null = null;
  const first: [string, string | null][] = [];
  for (const [head, text] of variant.operations) {
    const isThere = operations.some(([other]) => other === head);
    if (!known.has(head) || !isThere) {
      if (before === null) {
        first.push([head, text]);
        continue;
      }
      const at = operations.findIndex(([other]) => other === before);
      operations.splice(at + 1, 0, [head, text]);
    } else if (first.length > 0) {
      operations.splice(
        operations.findIndex(([other]) => other === head),
        0,
        ...first.splice(0),
      );
    }
    before = head;
  }
  operations.push(...first);
  return {
    front: { ...base.front, ...variant.front },
    unit: { ...base.unit, ...variant.unit },
    settings,
    work: {},
    opening: openingOf(variant.opening, base.opening),
    operations,
  };
}

/** A title alone takes the place of the title, other words that of all. */
function openingOf(variant: string | null, base: string | null): string | null {
  if (variant === null || base === null) return variant ?? base;
  const isTitle = variant.startsWith('# ') && !variant.includes('\n');
  return isTitle ? [variant, base.replace(/^# .*\n*/, '')].join('\n\n').trim() : variant;
}

const own = (id: string) => ({
  gaugeleaf: 1,
  sheet: id,
  title: `Sheet ${id}`,
  revision: 1,
  date: '2026-10-03',
  status: 'proof',
});

const value = fc.constantFrom(
  '13/64 in',
  '7/32 ± 1/64 in',
  '0.203 in',
  '5.16 mm',
  '1-1/4 turns out',
);
const word = fc.constantFrom('free end of the float', 'center', 'upper edge');
const setting = fc.record(
  {
    value,
    also: fc.constantFrom('1/4 in', '6 mm'),
    at: word,
    gasket: fc.constantFrom('removed', 'in place'),
    from: fc.constantFrom('m48 p. 31', 'b17'),
    note: fc.constantFrom('see below', 'hot'),
  },
  { requiredKeys: ['value'] },
);
const partial = fc.record(
  {
    value,
    at: word,
    note: fc.constantFrom('see below', 'hot'),
    from: fc.constantFrom('m48', 'b17 p. 2'),
  },
  { requiredKeys: [] },
);
const body = fc.constantFrom(
  '1. Do it.',
  'Read this.\n\n1. Turn it.\n2. Check :value[float-level].',
  '```\n## no heading\n```',
);

const base: fc.Arbitrary<Plain> = fc.record({
  front: fc.constant({
    ...own('base'),
    sources: { m48: { title: 'Manual' }, b17: { title: 'Bulletin' } },
  }),
  unit: fc.constant({
    kind: 'carburetor',
    maker: 'Orlo',
    model: 'F27',
    'throttle-bore': '1-1/4 in',
  }),
  settings: fc.dictionary(fc.constantFrom(...names), setting, { minKeys: 1 }),
  work: fc.constant({}),
  opening: fc.constantFrom('# Base\n\nWhat it is.', 'Only words.', '# Base'),
  operations: fc
    .subarray(Object.values(heads), { minLength: 1 })
    .chain((some) => fc.tuple(...some.map((head) => fc.tuple(fc.constant(head), body)))),
});

/** A variant of a base: overrides, drops and additions at random, in the order of the base. */
function variantOf(plain: Plain, id: string, of: string): fc.Arbitrary<Plain> {
  const there = Object.keys(plain.settings);
  const order = Object.values(heads);
  return fc
    .record({
      settings: fc.dictionary(fc.constantFrom(...names), partial),
      none: fc.subarray(there),
      undone: fc.subarray(['cleaning', 'unloader']),
      unit: fc.dictionary(
        fc.constantFrom('model', 'throttle-bore'),
        fc.constantFrom('L83', '1-3/8 in'),
      ),
      opening: fc.option(fc.constantFrom('# Variant\n\nAnother.', 'Bare words.', '# Other')),
      some: fc.subarray(order),
      bodies: fc.array(fc.option(body), { minLength: order.length, maxLength: order.length }),
      title: fc.boolean(),
    })
    .map(({ settings, none, undone, unit, opening, some, bodies }) => {
      const dropped = Object.fromEntries(none.map((name) => [name, 'none' as const]));
      // A setting that the base lacks has to be stated whole.
      const stated = Object.entries(settings).filter(
        ([name, each]) => there.includes(name) || each.value,
      );
      const known = new Set(plain.operations.map(([head]) => head));
      return {
        front: { ...own(id), 'based-on': of },
        unit,
        settings: { ...Object.fromEntries(stated), ...dropped },
        work: Object.fromEntries(undone.map((name) => [name, 'none' as const])),
        opening,
        operations: some.map((head, at): [string, string | null] => [
          head,
          known.has(head) ? (bodies[at] ?? null) : (bodies[at] ?? '1. New.'),
        ]),
      };
    });
}

/** All that a sheet says; not where it stands. */
function saidBy(sheet: Sheet) {
  return sheetSnapshot(sheet);
}

const runs = Number(process.env.FAMILY_RUNS ?? (isQuick ? 24 : 200));

describe('a variant', { timeout: 120_000 }, () => {
  test('is what its base is with the overrides written in, by brute force', () => {
    fc.assert(
      fc.property(
        base.chain((plain) => fc.tuple(fc.constant(plain), variantOf(plain, 'variant', 'base'))),
        ([plain, variant]) => {
          const texts = new Map([
            ['base', written(plain)],
            ['variant', written(variant)],
          ]);
          const whole = expanded(variant, plain);
          const { 'based-on': _, ...front } = whole.front as Record<string, unknown>;
          const sheet = read(texts, 'variant');
          expect(sheet.problems.filter(({ kind: sort }) => sort === 'base')).toEqual([]);
          const full = read(new Map([['variant', written({ ...whole, front })]]), 'variant');
          expect(saidBy(sheet)).toEqual(saidBy(full));
          placesHold(sheet, texts);
        },
      ),
      { numRuns: runs },
    );
  });

  test('of a variant is what both say in turn', () => {
    fc.assert(
      fc.property(
        base.chain((plain) =>
          variantOf(plain, 'middle', 'base').chain((middle) => {
            const whole = expanded(middle, plain);
            return fc.tuple(
              fc.constant(plain),
              fc.constant(middle),
              variantOf(whole, 'last', 'middle'),
            );
          }),
        ),
        ([plain, middle, last]) => {
          const texts = new Map([
            ['base', written(plain)],
            ['middle', written(middle)],
            ['last', written(last)],
          ]);
          const whole = expanded(last, expanded(middle, plain));
          const { 'based-on': _, ...front } = whole.front as Record<string, unknown>;
          const full = read(new Map([['last', written({ ...whole, front })]]), 'last');
          const sheet = read(texts, 'last');
          expect(saidBy(sheet)).toEqual(saidBy(full));
          placesHold(sheet, texts);
        },
      ),
      { numRuns: runs / 2 },
    );
  });
});

/** Every value stands, to the character, where it says that it was taken from. */
function placesHold(sheet: Sheet, texts: ReadonlyMap<string, string>): void {
  const holds = (span: { start: number; end: number }, words: string) => {
    const origin = originOf(sheet, span);
    const text = texts.get(origin.file.replace(/^sheets\/|\.md$/g, '')) ?? '';
    expect(text.slice(origin.span.start, origin.span.end)).toBe(words);
    expect(sheet.text.slice(span.start, span.end)).toBe(words);
  };
  for (const setting of sheet.settings.values()) {
    holds(setting.name.span, setting.name.source);
    if (setting.value) holds(setting.value.span, setting.value.text);
    if (setting.at) holds(setting.at.span, setting.at.source);
    for (const { source } of setting.from) holds(source.span, source.source);
  }
  for (const operation of sheet.operations) {
    holds(operation.heading.span, operation.heading.source);
    for (const { span } of operation.steps) holds(span, sheet.text.slice(span.start, span.end));
  }
  for (const use of sheet.values) holds(use.span, `:value[${use.name}]`);
}

describe('what goes and comes with an operation', () => {
  const full = (id: string, more: string, work: string) =>
    `---\nsheet: ${id}\nunit: { kind: carburetor, maker: Orlo, model: F27 }\n${more}\n---\n\n${work}`;

  test('definitions stay when the operation that holds them is replaced', () => {
    const sheet = read(
      new Map([
        [
          'base',
          full(
            'base',
            'settings: {}',
            '## Float level\n\n![Bowl][bowl]\n\n## Cleaning\n\nDry.\n\n[bowl]: pictures/bowl.svg\n',
          ),
        ],
        ['variant', '---\nsheet: variant\nbased-on: base\n---\n## Cleaning\n\nWet.\n'],
      ]),
      'variant',
    );
    expect(sheet.pictures.map(({ url }) => url)).toEqual(['pictures/bowl.svg']);
    expect(sheet.operations.map(({ heading }) => heading.value)).toEqual([
      'Float level',
      'Cleaning',
    ]);
  });

  test('an operation that the work does twice is replaced turn by turn', () => {
    const sheet = read(
      new Map([
        [
          'base',
          full(
            'base',
            '',
            '## Idle speed\n\nFirst.\n\n## Idle mixture\n\nTurn.\n\n## Idle speed\n\nAgain.\n',
          ),
        ],
        [
          'variant',
          '---\nsheet: variant\nbased-on: base\n---\n## Idle speed\n\n## Idle speed\n\nOnce more.\n',
        ],
      ]),
      'variant',
    );
    const texts = sheet.operations.map(({ span }) =>
      sheet.text.slice(span.start, span.end).trim().replace(/\s+/g, ' '),
    );
    expect(texts).toEqual([
      '## Idle speed First.',
      '## Idle mixture Turn.',
      '## Idle speed Once more.',
    ]);
  });

  test('a message that is not closed, and a file that ends in its front matter', () => {
    const sheet = read(
      new Map([
        [
          'base',
          full(
            'base',
            'settings: { float-level: { value: 13/64 in } }',
            '# Base\n\n:::warning\nHot.\n',
          ),
        ],
        ['variant', '---\nsheet: variant\nbased-on: base\n---'],
      ]),
      'variant',
    );
    const [message] = sheet.messages;
    expect(message && regionIn(sheet, message.span)).toMatchObject({
      file: 'sheets/base.md',
      line: 9,
    });
    expect(sheet.settings.get('float-level')?.value?.text).toBe('13/64 in');
  });

  test('new words before the work keep the safety messages of the base, or bring their own', () => {
    const messagesOf = (opening: string) =>
      read(
        new Map([
          [
            'base',
            full(
              'base',
              '',
              '# Base\n\nOld words.\n\n:::warning{hazard=gasoline-vapor}\nVapor burns.\n:::\n\n## Float level\n\n1. Measure.\n',
            ),
          ],
          ['variant', `---\nsheet: variant\nbased-on: base\n---\n${opening}`],
        ]),
        'variant',
      );
    const hazards = (sheet: Sheet) =>
      sheet.messages.map(({ hazards: [hazard], operation }) => [hazard?.value, operation]);
    const kept = messagesOf('# Variant\n\nNew words.\n');
    expect(hazards(kept)).toEqual([['gasoline-vapor', null]]);
    expect(kept.text.slice(kept.bodyStart)).not.toContain('Old words');
    const own = messagesOf('New words.\n\n:::danger{hazard=carbon-monoxide}\nIt kills.\n:::\n');
    expect(hazards(own)).toEqual([['carbon-monoxide', null]]);
    expect(hazards(messagesOf('# Variant\n'))).toEqual([['gasoline-vapor', null]]);
  });

  test('what a base says only of itself is not taken', () => {
    const sheet = read(
      new Map([
        ['base', full('base', 'title: Base\nrevision: 7\ndate: 2026-10-03\nstatus: released', '')],
        ['variant', '---\nsheet: variant\nbased-on: base\n---\n'],
      ]),
      'variant',
    );
    const { title, revision, date, status, id } = sheet;
    expect([title, revision, date, status, id?.value]).toEqual([null, null, null, null, 'variant']);
  });
});

describe('bounds', () => {
  const based = (id: string, on: string | null) =>
    `---\nsheet: ${id}\n${on === null ? '' : `based-on: ${on}\n`}---\n`;
  const chain = (length: number) =>
    new Map(
      Array.from(
        { length: length + 1 },
        (_, at) => [`s${at}`, based(`s${at}`, at === length ? null : `s${at + 1}`)] as const,
      ),
    );
  const problemsOf = (texts: ReadonlyMap<string, string>) =>
    read(texts, 's0')
      .problems.filter(({ kind: sort }) => sort === 'base')
      .map(({ message }) => message);

  test('five bases in a row are read, six are not', () => {
    expect(problemsOf(chain(5))).toEqual([]);
    expect(problemsOf(chain(6))).toEqual(['more than 5 sheets are based on one another in a row']);
  });

  test('a circle further on is told with all its sheets', () => {
    const texts = new Map([...chain(2), ['s2', based('s2', 's1')] as const]);
    expect(problemsOf(texts)).toEqual([
      'sheets are based on one another: `s0` on `s1` on `s2` on `s1`',
    ]);
  });

  test('a base of a base that is not there is told with who asks for it', () => {
    const texts = new Map([...chain(1), ['s1', based('s1', 'lost')] as const]);
    expect(problemsOf(texts)).toEqual(['there is no sheet `lost`, which `s1` is based on']);
  });

  test('no text makes it throw', () => {
    fc.assert(
      fc.property(fc.string(), fc.string(), (one, two) => {
        const texts = new Map([
          ['base', `---\n${one}\n---\n${two}`],
          ['variant', `---\nbased-on: base\n${two}\n---\n${one}`],
        ]);
        read(texts, 'variant');
      }),
    );
  });
});

describe('the demo’s own sheet as a base', () => {
  const orlo = readFileSync(
    new URL('../../sheets/orlo-t71-wexcombe-six.md', import.meta.url),
    'utf8',
  );

  test('a variant that states one figure takes all else, each with its place in the base', () => {
    const variant = `---\r\ngaugeleaf: 1\r\nsheet: variant\r\nbased-on: orlo\r\nsettings:\r\n  Choke unloader: { value: No. 30 drill, from: b17 p. 2 }\r\n---\r\n`;
    const texts = new Map([
      ['orlo', orlo],
      ['variant', variant],
    ]);
    const sheet = read(texts, 'variant');
    const whole = read(texts, 'orlo');
    expect(sheet.settings.size).toBe(whole.settings.size);
    const unloader = sheet.settings.get('Choke unloader');
    expect(unloader?.id).toBe('unloader');
    expect(unloader?.at?.value).toBe('upper edge of the choke plate');
    expect([unloader?.also, unloader?.but]).toEqual([[], []]);
    expect(regionIn(sheet, unloader?.value?.span ?? { start: 0, end: 0 })).toMatchObject({
      file: 'sheets/variant.md',
      line: 6,
      column: 28,
    });
    const level = sheet.settings.get('float-level')?.value;
    const there = whole.settings.get('float-level')?.value;
    expect(regionIn(sheet, level?.span ?? { start: 0, end: 0 })).toEqual(
      regionIn(whole, there?.span ?? { start: 1, end: 1 }),
    );
    expect(sheet.operations.map(({ heading }) => heading.value)).toEqual(
      whole.operations.map(({ heading }) => heading.value),
    );
    expect(sheet.title).toBeNull();
  });
});
