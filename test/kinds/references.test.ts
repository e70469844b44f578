import { describe, expect, test } from 'vitest';
import { references } from '../../src/generated/kind-references.ts';
import { kinds } from '../../src/generated/kinds.ts';
import type { KindData } from '../../src/kinds/data.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import { referenceFaults } from '../../src/kinds/references.ts';

/** The least kind, with something under each `*` that a reference goes through. */
function kindWith(path: readonly string[], value: unknown): KindData {
  const root = { settings: {}, operations: {} };
  let here: object = root;
  for (const [i, key] of path.entries()) {
    const name = key === '*' ? 'one' : key;
    const below = i === path.length - 1 ? value : (Reflect.get(here, name) ?? {});
    Reflect.set(here, name, below);
    here = Object(below);
  }
  return root as unknown as KindData;
}

const place = (path: readonly string[]) => path.map((key) => (key === '*' ? 'one' : key)).join('.');

describe('wherever the schema says that a name refers to an entry of the kind', () => {
  test.each(references.map(({ path, to }) => [path.join('.'), path, to] as const))(
    '%s is proved',
    (_, path, to) => {
      const noun = to === 'size' ? 'size of the unit' : to;
      const message = `this kind has no ${noun} \`nothing-such\``;
      const found = (value: unknown) =>
        referenceFaults(kindWith(path, value)).map((fault) => ({
          at: fault.path.join('.'),
          onKey: fault.onKey,
          message: fault.message,
        }));
      const at = place(path);
      expect(found('nothing-such')).toContainEqual({ at, onKey: false, message });
      expect(found([['nothing-such']])).toContainEqual({ at: `${at}.0.0`, onKey: false, message });
      expect(found({ 'nothing-such': 1 })).toContainEqual({
        at: `${at}.nothing-such`,
        onKey: true,
        message,
      });
    },
  );

  test.each([...builtInKinds().keys()])('%s names nothing that it has not', (name) => {
    const data = kinds[name]?.();
    expect(data && referenceFaults(data)).toEqual([]);
  });
});
