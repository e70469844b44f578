import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { relations } from '../../../src/relations/formulas/list.ts';
import { type Interval, isUnworkable, type Relation } from '../../../src/relations/model.ts';
import { runs } from '../../suite/part.ts';

const figure = fc.oneof(
  fc.constantFrom(0, -1, 1, 90, 360, -1e12, 1e12, 5e-324, 1e-300),
  fc.double({ min: -10, max: 1000, noNaN: true }),
  fc.double({ min: -1e12, max: 1e12, noNaN: true }),
);
const stretch = fc.tuple(figure, figure, fc.boolean()).map(
  ([a, b, point]): Interval => ({
    lo: Math.min(a, point ? a : b),
    hi: Math.max(a, point ? a : b),
  }),
);

/** Placeholders of a message that name no quantity of the relation. */
function strangers(text: string, { quantities }: Relation): readonly string[] {
  const names = new Set(quantities.map(({ name }) => name));
  return [...text.matchAll(/\{([^}]*)\}/g)]
    .map(([, name = '']) => name)
    .filter((n) => !names.has(n));
}

describe('a formula asked for anything at all', () => {
  test.each(relations.map((relation) => [relation.id, relation] as const))(
    '%s gives finite ends in order, or says why not',
    (_id, relation) => {
      for (const solution of relation.solutions) {
        const given = fc.array(stretch, {
          minLength: solution.from.length,
          maxLength: solution.from.length,
        });
        const property = fc.property(given, (stretches) => {
          const known = solution.from.map((name, i): [string, Interval] => [
            name,
            stretches[i] ?? { lo: 0, hi: 0 },
          ]);
          const worked = solution.solve(new Map(known));
          if (!isUnworkable(worked)) {
            expect(Number.isFinite(worked.lo) && Number.isFinite(worked.hi)).toBe(true);
            expect(worked.lo).toBeLessThanOrEqual(worked.hi);
            return;
          }
          const { message, fix, of } = worked.unworkable;
          expect(message).not.toMatch(/NaN|undefined|Infinity|\.$/);
          expect([...strangers(message, relation), ...strangers(fix, relation)]).toEqual([]);
          expect(relation.quantities.map(({ name }) => name)).toEqual(
            expect.arrayContaining([...of]),
          );
        });
        fc.assert(property, { numRuns: runs(300) });
      }
    },
  );
});
