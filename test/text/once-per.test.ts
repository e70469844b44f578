import { expect, test } from 'vitest';
import { oncePer } from '../../src/text/once-per.ts';

test('makes once of each object, nothing and null among it', () => {
  let made = 0;
  const of = oncePer((key: { readonly at: number | null }) => {
    made += 1;
    return key.at;
  });
  const [one, two] = [{ at: 1 }, { at: null }];
  expect([of(one), of(one), of(two), of(two)]).toEqual([1, 1, null, null]);
  expect(made).toBe(2);
  // Another object that says the same is another.
  expect(of({ at: 1 })).toBe(1);
  expect(made).toBe(3);
});

test('keeps what depends on two objects by both', () => {
  const both = oncePer((a: { a: number }) => oncePer((b: { b: number }) => a.a * b.b));
  const a = { a: 2 };
  expect([both(a)({ b: 3 }), both(a)({ b: 5 }), both({ a: 7 })({ b: 3 })]).toEqual([6, 10, 21]);
});
