import { expect, test } from 'vitest';
import { workedText } from '../../src/relations/worked-text.ts';

const IN_HG = 3386.38864;
const figure = (over: object) => ({
  point: null,
  nominal: null,
  limits: null,
  side: null,
  ...over,
});

test('a figure is told no finer than its quantity is good for', () => {
  const point = { lo: 2.0041, hi: 2.0041 };
  const told = (most?: number) =>
    workedText(figure({ point, nominal: point }), 'percent', 'percent', 0, most).text;
  expect(told()).toBe('2.004%');
  expect(told(1)).toBe('2.0%');
});

test('limits alone are told finer than they lie apart', () => {
  // 17.5 and 19.5 inHg less 1.4287, the fall of the barometer to 1350 ft.
  const limits = { lo: 16.0713 * IN_HG, hi: 18.0713 * IN_HG };
  expect(workedText(figure({ limits }), 'vacuum', 'inHg').text).toBe('16.1–18.0 inHg');
});
