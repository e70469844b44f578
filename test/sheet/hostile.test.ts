import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sheetBounds } from '../../src/sheet/bounds.ts';
import type { Sheet } from '../../src/sheet/model.ts';
import type { Span } from '../../src/text/span.ts';
import { runs } from '../suite/part.ts';
import { good, problems, read } from './fixtures.ts';

/** Every span anywhere in a value, the sheet's text, lines and tree left out. */
function spansIn(value: unknown, found: Span[] = [], seen = new Set<unknown>()): Span[] {
  if (typeof value !== 'object' || value === null || seen.has(value)) return found;
  seen.add(value);
  if (value instanceof Map || Array.isArray(value)) {
    for (const item of value.values()) spansIn(item, found, seen);
    return found;
  }
  const { start, end } = value as { start?: unknown; end?: unknown };
  if (typeof start === 'number' && typeof end === 'number') found.push({ start, end });
  // A reading's offsets count in the size's own text, and it holds much else.
  for (const [key, item] of Object.entries(value)) {
    if (key !== 'reading') spansIn(item, found, seen);
  }
  return found;
}

/** Processor time since `started`: a busy machine must not make a test fail. */
function spentMs(started: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(started);
  return (user + system) / 1000;
}

function sound(sheet: Sheet): void {
  const { tree: _tree, text, lines: _lines, ...rest } = sheet;
  // Compared by hand: an assertion for each of thousands of spans would take most of the time.
  for (const { start, end } of spansIn(rest)) {
    if (start < 0 || end < start || end > text.length) {
      throw new Error(`${start} to ${end} is no part of a text of ${text.length}`);
    }
  }
  for (const prose of sheet.prose)
    expect(prose.text.length).toBe(prose.span.end - prose.span.start);
}

describe('whatever the text, a sheet comes back and every span lies inside it', () => {
  test('arbitrary strings', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (text) => sound(read(text))),
      {
        numRuns: runs(300),
      },
    );
  });

  test('texts of what Markdown and YAML are made of', () => {
    const piece = fc.constantFrom(
      ...[
        '---\n',
        '\n',
        '\r\n',
        '## ',
        '{#a}',
        ':value[',
        ']',
        ':::warning',
        '{hazard=',
        '}',
        '> ',
      ],
      ...['- ', '1. ', '|', '|-|\n', '![', '](', '[^a]', '&plusmn;', '\\', '*', '`', '<b>', '~'],
      ...['a: ', '  b: ', '"', "'", '#29', '&x ', '*x', '!y', '[', '{', ', ', '\t', '\0', '\uFEFF'],
      ...['www.a.example', 'a@b.example', '😀', '\uD83D', '13/64 in', 'settings:\n', 'unit:\n'],
    );
    const text = fc.array(piece, { maxLength: 60 }).map((pieces) => pieces.join(''));
    const front = fc.boolean();
    fc.assert(
      fc.property(text, front, (sample, inFront) =>
        sound(read(inFront ? `---\n${sample}` : sample)),
      ),
      { numRuns: runs(400) },
    );
  });

  test('a good sheet with some of it cut out, doubled or replaced', () => {
    const place = fc.nat(good.length);
    const insert = fc.oneof(
      fc.constant(''),
      fc.string({ unit: 'binary', maxLength: 4 }),
      fc.constantFrom('"', '#', ':', '[', '\n', '\t', '---\n'),
    );
    fc.assert(
      fc.property(place, fc.nat(40), insert, (at, length, text) => {
        sound(read(good.slice(0, at) + text + good.slice(at + length)));
      }),
      { numRuns: runs(120) },
    );
  });
});

describe('encoding', () => {
  test.each([
    ['a zero byte', 'a\0b', '\0'],
    ['an unreadable character', 'a\uFFFDb', '\uFFFD'],
    ['half a surrogate pair', 'a\uD83Db', '\uD83D'],
    ['the other half', 'a\uDE00b', '\uDE00'],
    ['UTF-8 read as an old encoding', '13/64 \u00C2\u00B1 1/64 in', '\u00C2\u00B1'],
    ['a dash read so', '0.018\u00E2\u20AC\u201C0.022 in', '\u00E2\u20AC\u201C'],
  ])('%s is a problem at its place', (_, text, found) => {
    expect(problems(read(text))).toEqual([`encoding ${JSON.stringify(found)}`]);
  });

  test('many of one kind are told once, with their number', () => {
    const [problem, ...more] = read('\0'.repeat(1000)).problems;
    expect(problem?.message).toContain('the first of 1000');
    expect(more).toEqual([]);
  });

  test('letters with accents, signs and emoji are none', () => {
    expect(problems(read('Âge, ÉTÉ, 12°, ± ½, 😀, “x”, 日本'))).toEqual([]);
  });
});

describe('bounds', () => {
  const fill = (unit: string, length: number) =>
    unit.repeat(Math.ceil(length / unit.length)).slice(0, length);

  test.each([
    [
      'a table of a hundred thousand lines',
      `| a | b |\n|---|---|\n${'| 1 | 2 |\n'.repeat(100_000)}`,
    ],
    ['ten thousand quotes in one another', '>'.repeat(10_000)],
    ['ten thousand lists in one another', '- '.repeat(10_000)],
    ['numbered lists in one another', '1. '.repeat(10_000)],
    ['brackets', '['.repeat(100_000)],
    ['closing brackets', ']'.repeat(100_000)],
    ['half links', '[a]('.repeat(20_000)],
    ['stars', '*a '.repeat(30_000)],
    ['stars and underlines', '*_'.repeat(50_000)],
    ['containers in one another', ':::warning\n'.repeat(5000)],
    ['underlined headings', 'a\n---\n'.repeat(2000)],
    ['definitions', '[a]: b\n'.repeat(4000)],
    ['nested lists of many items', '- a\n  - b\n    - c\n'.repeat(2000)],
    ['a megabyte of words', 'word '.repeat(200_000)],
    ['backslashes', '\\'.repeat(100_000)],
    ['wide tables', `${'|a'.repeat(3000)}\n${'|-'.repeat(3000)}\n${'|b'.repeat(20_000)}\n`],
  ])('%s: refused in plain words, the front matter read', (_, work) => {
    const started = process.cpuUsage();
    const front = good.slice(0, good.indexOf('\n---\n', 4) + 5);
    const sheet = read(front + work);
    expect(spentMs(started)).toBeLessThan(3000);
    expect(sheet.problems.map(({ kind }) => kind)).toEqual(['limits']);
    expect(sheet.tree).toBeNull();
    expect(sheet.settings.size).toBe(3);
    sound(sheet);
  });

  test.each([
    ['list items', fill('1. Take it off\n', 15 * 1400)],
    ['nested lists', '- '.repeat(8).concat('a\n').repeat(180)],
    ['quotes with lazy lines', fill('>>>>>>>>a\nb\nc\n', 14 * 1600)],
    ['stars and underlines', '*_'.repeat(900).concat('\n\n').repeat(8)],
    ['closing brackets', ']'.repeat(1900).concat('\n\n').repeat(7)],
    ['containers', ':::warning\n'.repeat(190)],
    ['a wide table', '|a'.repeat(400).concat('\n', '|-'.repeat(400), '\n').repeat(14)],
    ['plain words', fill('Take off the cover. ', 120_000)],
  ])('%s within bounds: read in time', (_, work) => {
    const started = process.cpuUsage();
    const sheet = read(work);
    const ms = spentMs(started);
    expect(sheet.tree).not.toBeNull();
    expect(ms).toBeLessThan(4000);
  });

  test.each([
    ['brackets', `a: ${'['.repeat(50_000)}`],
    [
      'an alias bomb',
      [
        'a: &a [x, x]',
        ...Array.from(
          { length: 20 },
          (_, i) => `b${i}: &b${i} [${i ? `*b${i - 1}, *b${i - 1}, *b${i - 1}` : '*a, *a, *a'}]`,
        ),
      ].join('\n'),
    ],
    ['more than fits', `a: ${'x'.repeat(70_000)}`],
    ['an alias of itself', 'a: &a [*a]'],
  ])('front matter of %s is refused, the work read', (_, yaml) => {
    const started = process.cpuUsage();
    const sheet = read(`---\n${yaml}\n---\n\n## Float level\n`);
    expect(spentMs(started)).toBeLessThan(3000);
    expect(sheet.problems.map(({ kind }) => kind)).toContain('limits');
    expect(sheet.operations).toHaveLength(1);
  });

  test('lie far above the longest sheet of the demo', () => {
    expect(good.length * 4).toBeLessThan(sheetBounds.size);
  });
});

describe('headings of nothing but an address', () => {
  test.each([
    ['## a@b.example\n', 'a@b.example'],
    ['## a@b.example ##\n', 'a@b.example'],
    ['## Ask a@b.example\n', 'Ask a@b.example'],
    ['## www.b.example first\n', 'www.b.example first'],
    ['a@b.example\n- \n', 'a@b.example'],
  ])('%j: the place is the words', (text, words) => {
    const heading = read(text).operations[0]?.heading;
    expect(heading?.source).toBe(words);
    expect(heading?.value).toBe(words);
  });
});
