import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { CheckContext } from '../../src/checks/define.ts';
import { gaugeBook } from '../../src/gauges/index.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import { readSheet } from '../../src/sheet/index.ts';
import { casesToTry, isQuick } from '../suite/part.ts';
import { hasMore, orderFaults, plantings } from './planted-mistakes.ts';

const folder = join(import.meta.dirname, '..', '..', 'sheets');
const context: CheckContext = {
  gauges: gaugeBook(),
  kinds: builtInKinds(),
  wireGauge: 'imperial',
  picture: null,
};

/**
 * What is wrong is judged with the marks: a planting is a mistake where the marked sheet gains a
 * fault by it. The reading has to find it on the same sheet with every mark passed over.
 */
function measure(kindName: string) {
  const figures = { sheets: 0, mistakes: 0, found: 0, harmless: 0, alarms: 0 };
  const missed: string[] = [];
  for (const name of readdirSync(folder).filter((each) => each.endsWith('.md'))) {
    const text = readFileSync(join(folder, name), 'utf8');
    const sheet = readSheet(text, `sheets/${name}`, context);
    const kind = context.kinds.get(kindName);
    if (!kind || sheet.unit.kind?.value !== kindName) continue;
    figures.sheets++;
    const marked = orderFaults(sheet, kind, false);
    const stripped = orderFaults(sheet, kind, true);
    expect([...marked.all], `${name}, with its marks`).toEqual([]);
    expect([...stripped.errors], `${name}, with its marks passed over`).toEqual([]);
    const read = (changed: string) => readSheet(changed, `sheets/${name}`, context);
    for (const { what, sheet: changed } of casesToTry(plantings(sheet, kind, read), 4)) {
      const isWrong = hasMore(orderFaults(changed, kind, false).all, marked.all);
      const isFound = hasMore(orderFaults(changed, kind, true).all, stripped.all);
      if (isWrong) {
        figures.mistakes++;
        if (isFound) figures.found++;
        else missed.push(`${name}: ${what}`);
      } else {
        figures.harmless++;
        if (isFound) figures.alarms++;
      }
    }
  }
  return { figures, missed };
}

test('without its marks, nearly every mistake of order in the demo is still found', () => {
  const { figures, missed } = measure('carburetor');
  const { sheets, mistakes, found, harmless, alarms } = figures;
  console.log(
    `${sheets} sheets without marks: ${found} of ${mistakes} planted mistakes of order found ` +
      `(${((100 * found) / mistakes).toFixed(1)} %), ${alarms} of ${harmless} harmless changes told`,
  );
  if (process.env.SHOW_MISSED) console.log(missed.join('\n'));
  expect(mistakes).toBeGreaterThan(isQuick ? 20 : 100);
  // What only marks can tell (a part put back that was never off, first contact from clear) counts too.
  expect(found / mistakes).toBeGreaterThanOrEqual(isQuick ? 0.6 : 0.7);
}, 240_000);
