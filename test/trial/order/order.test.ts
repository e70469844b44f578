import { join } from 'node:path';
import { expect, test } from 'vitest';
import { figuresText, tryFolder } from './order-trial.ts';

/*
 * Other folders of the same form: ORDER_TRIAL=path npx vitest run test/trial/order. With ORDER_MISSES=1
 * every case that was not met is listed.
 */
const folder = process.env['ORDER_TRIAL'] ?? join(import.meta.dirname, 'tune');

test('right procedures, and changes of them with fixed verdicts', { timeout: 120_000 }, () => {
  const figures = tryFolder(folder);
  console.log(figuresText(figures));
  if (process.env['ORDER_MISSES']) {
    console.log([...figures.rightErrors, ...figures.rightWarnings].join('\n'));
    console.log(figures.misses.join('\n'));
  }
  const part = ({ count, of }: { count: number; of: number }): number =>
    of === 0 ? 0 : count / of;
  expect(figures.rightErrors).toEqual([]);
  expect(figures.usual.count).toBe(0);
  expect(part(figures.harmless)).toBeLessThanOrEqual(0.03);
  expect(part(figures.caught)).toBeGreaterThanOrEqual(0.95);
});
