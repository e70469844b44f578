import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lookup, pointerSteps, readYaml } from '../../src/text/yaml-places.ts';
import { runs } from '../suite/part.ts';

const text = `a: 0.150
b: 010
c: 1:30
d: 'No. 29 drill'
e: "x\\ty"
f: [1, two, ~]
g:
  h: { i: true }
k:
`;

/** The characters below what a path leads to. */
function at(path: readonly (string | number)[], part: 'key' | 'value' = 'value'): string | null {
  const span = lookup(readYaml(text).root, path, part);
  return span && text.slice(span.start, span.end);
}

describe('placed YAML', () => {
  test('gives plain values for a schema', () => {
    expect(readYaml(text).value).toEqual({
      a: 0.15,
      b: 10,
      c: '1:30',
      d: 'No. 29 drill',
      e: 'x\ty',
      f: [1, 'two', null],
      g: { h: { i: true } },
      k: null,
    });
  });

  test('keeps the written text of a scalar', () => {
    const { root } = readYaml(text);
    const entries = root?.kind === 'map' ? [...root.entries.values()] : [];
    const texts = entries.flatMap(({ value }) => (value.kind === 'scalar' ? value.text : []));
    expect(texts).toEqual(['0.150', '010', '1:30', 'No. 29 drill', 'x\ty']);
  });

  test('knows the place of values and keys', () => {
    expect(at(['a'])).toBe('0.150');
    expect(at(['d'])).toBe('No. 29 drill');
    expect(at(['e'])).toBe('x\\ty');
    expect(at(['f', 1])).toBe('two');
    expect(at(['g', 'h', 'i'])).toBe('true');
    expect(at(['g', 'h', 'i'], 'key')).toBe('i');
    expect(at(['g'], 'key')).toBe('g');
    expect(at(['k'])).toBe('k');
  });

  test('leads to the last key on the way where one is missing', () => {
    expect(at(['g', 'h', 'nothing'])).toBe('h');
    expect(at(['nothing'])).toBeNull();
  });

  test('shifts every place by where the text starts', () => {
    const { root, problems } = readYaml('a: 1\na: 2\n', 100);
    expect(lookup(root, ['a'])).toEqual({ start: 103, end: 104 });
    expect(problems[0]?.span).toEqual({ start: 105, end: 106 });
    expect(problems[0]?.related?.span).toEqual({ start: 100, end: 101 });
  });

  test('follows an alias, within bounds', () => {
    expect(readYaml('a: &x [1]\nb: *x\n')).toMatchObject({
      value: { a: [1], b: [1] },
      problems: [],
    });
  });

  test('has no key of its own under __proto__', () => {
    const value = readYaml('__proto__: { polluted: 1 }\n').value as object;
    expect(Object.getPrototypeOf(value)).toBe(Object.prototype);
    expect(Object.keys(value)).toEqual(['__proto__']);
  });

  test('reads a pointer’s steps', () => {
    expect(pointerSteps('/a~1b/~0c/0')).toEqual(['a/b', '~c', '0']);
    expect(pointerSteps('')).toEqual([]);
  });
});

describe('faults in a restorer’s words', () => {
  test.each([
    ['value: #29 drill\n', '#29 drill', 'so `value` is empty', "quote it: '#29 drill'"],
    [
      'also:\n  - #29 drill\n',
      '#29 drill',
      'so an entry of `also` is empty',
      "quote it: '#29 drill'",
    ],
    [
      'also: [1 in, #29 drill]\nb: 2\n',
      '#29 drill]',
      'the bracket that closes',
      "quote it: '#29 drill'",
    ],
    [
      'a: "13/64" in\n',
      '"13/64" in',
      'ends at the next "',
      `put all of it in quotes: '"13/64" in'`,
    ],
    ['a: "13/64 in\nb: 2\n', '"13/64 in', 'is not closed on its line', 'close it: "13/64 in"'],
    ['a: "13/64 in\nb: "2"\n', '"13/64 in', 'is not closed on its line', 'close it: "13/64 in"'],
    ['a: @x\n', '@x', 'cannot start with @', "quote it: '@x'"],
    ['a: `x`\n', '`x`', 'cannot start with `', "quote it: '`x`'"],
    ['a: %x\n', '%x', 'cannot start with %', "quote it: '%x'"],
    ['a: *x\n', '*x', 'cannot start with *', "quote it: '*x'"],
    ['a: !x y\n', '!x y', 'cannot start with !', "quote it: '!x y'"],
    ['a: >0.5 mm\n', '>0.5 mm', 'cannot start with >', "quote it: '>0.5 mm'"],
    ['a: - 3\n', '- 3', 'a dash and a space', "quote it: '- 3'"],
    ['a: hot: 2 in\n', 'hot: 2 in', 'a second one', "quote it: 'hot: 2 in'"],
    ['a:\n\tb: 1\n', '\t', 'a tab stands', 'indent with spaces'],
    ['a: 1\n  b: 2\n', 'b:', 'indented as if', 'same column'],
    ['a:\n  b: 2\n c: 3\n', 'c:', 'indented differently', 'same column'],
    ['a:\n  - b: 2\n   c: 3\n', 'c:', 'indented differently', 'same column'],
    ['a: [1, 2\nb: 3\n', '[1, 2', 'not closed', 'close it with ]'],
    ['a: { b: 1\nc: 3\n', '{ b: 1', 'not closed', 'close it with }'],
    ['a:1\nb: 2\n', 'a:1', 'a space after its colon', 'write `a: 1`'],
    ['words\nb: 1\n', 'words', 'no `key: value`', 'a key and a colon'],
    ['a: 1\nb: 2\na: 3\n', 'a', 'written twice', 'take one of them out'],
    ['%YAML 1.1\n---\na: 1\n', '%YAML 1.1', 'changes how YAML is read', 'take the line out'],
    ['a: 1\n---\nb: 2\n', '---', 'second YAML document', 'take the line'],
    ['a: "\\q"\n', '\\q', 'a backslash in double quotes', 'single quotes'],
    ['? [a]\n: b\n', '[a]', 'a key has to be', 'a key before the colon'],
  ])('%j', (yaml, place, message, fix) => {
    const [problem] = readYaml(yaml).problems;
    expect(problem && yaml.slice(problem.span.start, problem.span.end)).toBe(place);
    expect(problem?.message).toContain(message);
    expect(problem?.fix).toContain(fix);
  });

  test.each([
    'a: # to be measured\n',
    "a: it's\n",
    'a: 1 7/16"\n',
    'a: "two\n  lines"\n',
    'a: 5 # x\n',
  ])('none in %j', (yaml) => expect(readYaml(yaml).problems).toEqual([]));

  test('never throws, and every place lies in the text', () => {
    const piece = fc.constantFrom(
      ...[
        'a: ',
        'b:',
        '\n',
        '\n  ',
        '- ',
        '"',
        "'",
        '#',
        '#2',
        '[',
        ']',
        '{',
        '}',
        ', ',
        '&x ',
        '*x',
      ],
      ...['!t ', '%', '@', '|', '>', '\t', '---\n', '? ', ': ', '\\', '\0', '😀', '\r\n', '~', '1'],
    );
    const yaml = fc.array(piece, { maxLength: 25 }).map((pieces) => pieces.join(''));
    fc.assert(
      fc.property(yaml, (sample) => {
        for (const { span } of readYaml(sample).problems) {
          expect(span.start).toBeGreaterThanOrEqual(0);
          expect(span.end).toBeGreaterThanOrEqual(span.start);
          expect(span.end).toBeLessThanOrEqual(sample.length);
        }
      }),
      { numRuns: runs(1500) },
    );
  });
});

describe('limits', () => {
  test.each([
    ['size', 'a: '.concat('x'.repeat(300_000)), 'characters of YAML'],
    ['depth', '['.repeat(30).concat(']'.repeat(30)), 'nested more than 20 deep'],
    ['the stack', '['.repeat(50_000), 'nested too deep'],
    ['nodes', 'a: ['.concat('1,'.repeat(30_000), ']'), 'more than 20000 values'],
    ['aliases', 'a: &a 1\nb: ['.concat('*a,'.repeat(11), ']'), 'more than 10 aliases'],
    ['a ring', 'a: &a [*a]', 'stands inside what it stands for'],
  ])('of %s are told once', (_, yaml, message) => {
    const { problems, sound } = readYaml(yaml);
    const limits = problems.filter(({ kind }) => kind === 'limits');
    expect(limits.map((problem) => problem.message.includes(message))).toEqual([true]);
    expect(sound).toBe(false);
  });
});
