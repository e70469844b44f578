import fc from 'fast-check';
import type { Root } from 'mdast';
import remarkFrontmatter from 'remark-frontmatter';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { describe, expect, test } from 'vitest';
import { findFrontMatter } from '../../src/sheet/front-matter.ts';
import { runs } from '../suite/part.ts';
import { good, problems, read, under } from './fixtures.ts';

const byRemark = unified().use(remarkParse).use(remarkFrontmatter).freeze();

/** The front matter that remark-frontmatter finds, or null. */
function remarkFinds(text: string): string | null {
  const first = (byRemark.parse(text) as Root).children[0];
  return first?.type === 'yaml' ? first.value : null;
}

describe('front matter', () => {
  test.each([
    ['---\na: 1\n---\n', 'a: 1'],
    ['---\r\na: 1\r\nb: 2\r\n---\r\n', 'a: 1\r\nb: 2'],
    ['\uFEFF---\na: 1\n---\n', 'a: 1'],
    ['---  \na: 1\n---\t \nx', 'a: 1'],
    ['---\na: 1\n---', 'a: 1'],
    ['---\n---\n', ''],
    ['---\ra: 1\r---\rx', 'a: 1'],
    ['---\na: 1\n ---\n----\n--- x\n---\n', 'a: 1\n ---\n----\n--- x'],
  ])('of %j is %j', (text, content) => {
    const start = text.startsWith('\uFEFF') ? 1 : 0;
    const found = findFrontMatter(text, start).content;
    expect(found && text.slice(found.start, found.end)).toBe(content);
    expect(remarkFinds(text)).toBe(content);
  });

  test.each(['', '# x', '----\na\n----\n', '--- a\nb\n---\n', '---\na: 1\n', ' ---\na: 1\n---\n'])(
    'is not in %j',
    (text) => {
      expect(findFrontMatter(text, 0).content).toBeNull();
      expect(remarkFinds(text)).toBeNull();
    },
  );

  test('is where remark-frontmatter finds it, in any text', () => {
    const piece = fc.constantFrom('---', '\n', '\r\n', ' ', '\t', 'a: 1', '--', '# x', '\r');
    const text = fc.array(piece, { maxLength: 14 }).map((pieces) => `---${pieces.join('')}`);
    fc.assert(
      fc.property(text, (sample) => {
        const found = findFrontMatter(sample, 0).content;
        expect(found && sample.slice(found.start, found.end)).toBe(remarkFinds(sample));
      }),
      { numRuns: runs(400) },
    );
  });

  test('that is never closed is a problem at its fence', () => {
    const sheet = read('---\ngaugeleaf: 1\n\n## Float level\n');
    expect(problems(sheet)).toEqual(['front-matter "---"']);
    expect(sheet.frontMatter).toBeNull();
  });

  test('that starts late is a problem where it starts', () => {
    expect(problems(read('\n\n  ---\ngaugeleaf: 1\n---\n'))).toEqual(['front-matter "---"']);
  });

  test.each([
    ['---\n---\n', 'is empty'],
    ['---\n# nothing\n---\n', 'is empty'],
    ['---\n- a\n---\n', 'is a list, not keys with values'],
    ['---\njust words\n---\n', 'is a single text, not keys with values'],
  ])('%j %s', (text, words) => {
    expect(read(text).problems.map(({ message }) => message)).toEqual([
      `the front matter ${words}`,
    ]);
  });

  test('that is not there is no problem of the reader', () => {
    for (const text of ['', '\n', '# Title\n\n## Float level\n']) {
      const sheet = read(text);
      expect([sheet.frontMatter, problems(sheet)]).toEqual([null, []]);
    }
    expect(read('# Title\n\n## Float level\n').operations).toHaveLength(1);
  });

  test('alone makes a sheet without work', () => {
    const only = `${good.slice(0, good.indexOf('\n---\n', 4))}\n---`;
    const sheet = read(only);
    expect([problems(sheet), sheet.operations, sheet.settings.size]).toEqual([[], [], 3]);
  });
});

describe('places stay true', () => {
  test.each([
    ['with a byte order mark', `\uFEFF${good}`],
    ['with CR LF', good.replaceAll('\n', '\r\n')],
    ['with both', `\uFEFF${good.replaceAll('\n', '\r\n')}`],
    [
      'with blanks behind the fences',
      good.replaceAll('\n---\n', '\n--- \t\n').replace('---\n', '---  \n'),
    ],
  ])('%s', (_, text) => {
    const plain = read(good);
    const sheet = read(text);
    const shape = (of: typeof sheet) => [
      [...of.settings.values()].map(({ name, value, from }) => [
        under(of, name.span),
        under(of, value?.span),
        from.map(({ span }) => under(of, span)),
      ]),
      of.operations.map(({ heading, id }) => [under(of, heading.span), under(of, id?.span)]),
      of.values.map(({ span }) => under(of, span)),
      of.messages.map(({ hazards }) => hazards.map(({ span }) => under(of, span))),
      of.pictures.map(({ span }) => under(of, span)),
      of.prose.map(({ span }) => under(of, span)?.replaceAll('\r\n', '\n')),
      problems(of),
    ];
    expect(shape(sheet)).toEqual(shape(plain));
    for (const { text: prose, span } of sheet.prose) {
      expect(prose.length).toBe(span.end - span.start);
    }
  });

  test('lines and columns are counted from the offsets', () => {
    const sheet = read(good);
    const title = sheet.title?.span.start ?? 0;
    expect(sheet.lines.place(title)).toEqual({ line: 5, column: 8 });
    const value = sheet.values[0]?.span.start ?? 0;
    const before = good.slice(0, value).split('\n');
    expect(sheet.lines.place(value)).toEqual({
      line: before.length,
      column: (before.at(-1)?.length ?? 0) + 1,
    });
  });

  test('and so do the tree’s', () => {
    const sheet = read(`\uFEFF${good}`);
    const heading = sheet.tree?.children.find((node) => node.type === 'heading');
    const { start, end } = heading?.position ?? {};
    expect(sheet.text.slice(start?.offset, end?.offset)).toBe('# Orlo T71');
    expect(start?.line).toBe(sheet.lines.place(start?.offset ?? 0).line);
  });
});

describe('the schema’s word stands', () => {
  const changed = (from: string, to: string) => {
    if (!good.includes(from)) throw new Error(from);
    return problems(read(good.replace(from, to)));
  };
  test('at a wrong value', () => {
    expect(changed('status: proof', 'status: printed')).toEqual(['schema "printed"']);
  });
  test('at an unknown key', () => {
    expect(changed('status: proof', 'status: proof\nstatsu: x')).toEqual(['schema "statsu"']);
  });
  test('at the key of the map that lacks one', () => {
    expect(changed('  maker: Orlo\n', '')).toEqual(['schema "unit"']);
  });
  test('at the first key where the sheet itself lacks one', () => {
    expect(changed('title: Orlo T71 😀 two-barrel\n', '')).toEqual(['schema "gaugeleaf"']);
  });
  test('nowhere while the YAML cannot be read', () => {
    expect(changed('status: proof', 'status: "proof')).toEqual(['front-matter "\\"proof"']);
  });
});
