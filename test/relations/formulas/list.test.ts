import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { relations } from '../../../src/relations/formulas/list.ts';

const folder = new URL('../../../src/relations/formulas/', import.meta.url);

describe('the list of relations', () => {
  it('has every file of its folder once, under its name', () => {
    const files = readdirSync(folder)
      .filter((file) => file !== 'list.ts')
      .map((file) => file.replace(/\.ts$/, ''));
    expect(relations.map((relation) => relation.id).sort()).toEqual(files.sort());
  });

  it.each(relations)('$id says what it is and how it is solved', (relation) => {
    const names = relation.quantities.map((quantity) => quantity.name);
    expect(new Set(names).size).toBe(names.length);
    for (const text of [relation.title, relation.formula, relation.source, relation.range]) {
      expect(text).not.toBe('');
    }
    expect(relation.assumptions.length).toBeGreaterThan(0);
    for (const assumption of relation.assumptions) expect(assumption).toMatch(/\.$/);
    for (const solution of relation.solutions) {
      expect(names).toContain(solution.for);
      expect(solution.from).not.toContain(solution.for);
      for (const name of solution.from) expect(names).toContain(name);
    }
    for (const name of names) {
      const used = relation.solutions.some(
        (solution) => solution.for === name || solution.from.includes(name),
      );
      expect(used, `${name} takes part in no solution`).toBe(true);
    }
  });
});
