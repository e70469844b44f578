import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { idMaker } from '../../../src/press/site/ids.ts';

describe('ids of a page', () => {
  test('are plain names, and a second of one name is numbered', () => {
    const id = idMaker();
    expect(id('setting', 'float-level')).toBe('setting-float-level');
    expect(id('work', 'Régime à chaud, 2ᵉ')).toBe('work-regime-a-chaud-2e');
    expect(id('setting', 'Float Level')).toBe('setting-float-level-2');
    expect(id('setting', 'float level')).toBe('setting-float-level-3');
    expect(id('setting', '浮子')).toBe('setting-unnamed');
    expect(id('work', 'Größe')).toBe('work-grosse');
  });

  test('are never shared, whatever the names, and are the same each time', () => {
    const names = fc.array(
      fc.tuple(fc.constantFrom('setting', 'work'), fc.string({ unit: 'grapheme' })),
    );
    fc.assert(
      fc.property(names, (all) => {
        const [first, second] = [idMaker(), idMaker()];
        const ids = all.map(([prefix, name]) => first(prefix, name));
        expect(new Set(ids).size).toBe(ids.length);
        for (const id of ids) expect(id).toMatch(/^(setting|work)-[a-z0-9-]+$/);
        expect(all.map(([prefix, name]) => second(prefix, name))).toEqual(ids);
      }),
    );
  });
});
