import { describe, expect, test } from 'vitest';
import { builtInKinds } from '../../src/kinds/index.ts';
import type { Kind } from '../../src/kinds/model.ts';
import { levelName } from '../../src/kinds/name-book.ts';

const kind = builtInKinds().get('carburetor');
if (kind === undefined) throw new Error('there is no kind carburetor');
const named = (text: string) => {
  const state = kind.stateNamed(text);
  return state === null ? null : `${state.part} ${state.condition}`;
};

describe('a mark', () => {
  test.each([
    ['cam named-step', 'cam named-step'],
    ['cam on second step', 'cam named-step'],
    ['cam: on the second step', 'cam named-step'],
    ['cam second step', 'cam named-step'],
    ['the throttle at idle', 'throttle on-idle-stop'],
    ['throttle on its stop', 'throttle on-idle-stop'],
    ['throttle against stop', 'throttle on-idle-stop'],
    ['unit on bench', 'unit on-bench'],
    ['unit in a vise', 'unit on-bench'],
    ['gasket on', 'cover-gasket on'],
    ['gasket off', 'cover-gasket off'],
    ['Cover, upside down', 'cover inverted'],
  ])('`%s` is %s', (text, state) => {
    expect(named(text.replace(/^the /, ''))).toBe(state);
  });

  test.each(['gasket', 'gasket on the', 'cam on', 'throttle fourth step', 'on', ''])(
    '`%s` is none',
    (text) => {
      expect(named(text)).toBeNull();
    },
  );
});

describe('a part', () => {
  test.each([
    ['Cover gasket', 'cover-gasket'],
    ['COVER_GASKET', 'cover-gasket'],
    ['fast idle cam', 'cam'],
    ['gasket paper', null],
    ['', null],
  ])('%j is %j', (text, part) => {
    expect(kind.partNamed(text)?.name ?? null).toBe(part);
  });

  test('is found where a text only begins with it, by its longest name', () => {
    expect(kind.partBegun('Cover gasket, askew')?.name).toBe('cover-gasket');
    expect(kind.partBegun('cover askew')?.name).toBe('cover');
    expect(kind.partBegun('coverlet')).toBeNull();
  });
});

const plain = (text: string) => levelName(text).replaceAll('-', ' ');

describe('every way to write a mark', () => {
  /** All names with all conditions, the first of each writing: what `stateNamed` parts a mark for. */
  function naive(kind: Kind): ReadonlyMap<string, string> {
    const book = new Map<string, string>();
    for (const aliased of [false, true]) {
      for (const part of kind.parts.values()) {
        for (const name of aliased ? part.aliases : [part.name, part.label]) {
          for (const condition of part.conditions.values()) {
            for (const word of [condition.name, ...condition.aliases]) {
              const key = plain(`${name} ${word}`);
              if (!book.has(key)) book.set(key, `${part.name} ${condition.name}`);
            }
          }
        }
      }
    }
    return book;
  }

  test.each([...builtInKinds().values()])('is found in $name, names before aliases', (kind) => {
    const book = naive(kind);
    expect(kind.stateNames()).toEqual([...book.keys()]);
    for (const [mark, state] of book) {
      const found = kind.stateNamed(mark);
      expect(`${found?.part} ${found?.condition}`, mark).toBe(state);
    }
  });

  test.each([...builtInKinds().values()])(
    'is found in $name with small words, unless two are one without them',
    (kind) => {
      const isSmall = (word: string) => /^(?:the|its|an?|on|at|in|upon|against|to)$/.test(word);
      const without = (mark: string) =>
        mark
          .split(' ')
          .filter((word, at, all) => at === 0 || at === all.length - 1 || !isSmall(word))
          .join(' ');
      const book = naive(kind);
      const loose = new Map<string, Set<string>>();
      for (const [mark, state] of book) {
        const key = without(mark);
        loose.set(key, (loose.get(key) ?? new Set()).add(state));
      }
      for (const mark of book.keys()) {
        const spoken = mark.replace(' ', ' on the ');
        const states = [...(loose.get(without(spoken)) ?? [])];
        const meant = book.get(spoken) ?? (states.length === 1 ? states[0] : null);
        const found = kind.stateNamed(spoken);
        expect(found && `${found.part} ${found.condition}`, spoken).toBe(meant);
      }
    },
  );
});
