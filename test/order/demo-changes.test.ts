import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { allChecks, type CheckContext } from '../../src/checks/index.ts';
import { runChecks } from '../../src/checks/run.ts';
import { gaugeBook } from '../../src/gauges/index.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import { readSheet } from '../../src/sheet/index.ts';
import { canBeDone } from './naive-oracle.ts';

const folder = join(import.meta.dirname, '..', '..', 'sheets');
const context: CheckContext = {
  gauges: gaugeBook(),
  kinds: builtInKinds(),
  wireGauge: 'imperial',
  picture: null,
};
const orderChecks = allChecks.filter(({ group }) => group === 'order');
const tally = { swaps: 0, wrongSwaps: 0, removals: 0, wrongRemovals: 0 };

function orderFindings(text: string): readonly string[] {
  const sheet = readSheet(text, 'sheets/demo.md', context);
  return runChecks(orderChecks, sheet, context).map(
    ({ check, severity, message, span }) =>
      `${sheet.lines.place(span.start).line} ${severity} ${check}: ${message}`,
  );
}

function kindIn(text: string): string {
  return /^ {2}kind: ([a-z-]+)$/m.exec(text)?.[1] ?? '';
}

/** The sheet with each two neighboring sections changed about, and what was changed. */
function* swaps(text: string): Generator<readonly [string, string]> {
  const sections = text.trimEnd().split(/^(?=## )/m);
  for (let at = 1; at + 1 < sections.length; at++) {
    const changed = sections.map((section) => `${section.trimEnd()}\n\n`);
    const [one = '', two = ''] = changed.slice(at, at + 2);
    changed.splice(at, 2, two, one);
    yield [`${title(one)} ⇄ ${title(two)}`, changed.join('')];
  }
}

/** The sheet without each of the steps that carry a state. */
function* removals(text: string): Generator<readonly [string, string]> {
  const start = text.indexOf('\n---\n') + 5;
  for (const found of text.slice(start).matchAll(/^\d+\. .*\n(?: {2,}.*\n)*/gm)) {
    if (!found[0].includes(':state[')) continue;
    const at = start + found.index;
    yield [found[0].trim(), text.slice(0, at) + text.slice(at + found[0].length)];
  }
}

function title(section: string): string {
  return section.split('\n')[0] ?? '';
}

describe.each(readdirSync(folder).filter((name) => name.endsWith('.md')))('%s', (name) => {
  const text = readFileSync(join(folder, name), 'utf8');
  const kind = kindIn(text);

  test('as it is, can be done', () => {
    expect([canBeDone(text, kind), orderFindings(text)]).toEqual([true, []]);
  });

  test('with two neighboring operations changed about', { timeout: 120_000 }, () => {
    for (const [what, changed] of swaps(text)) {
      const isRight = canBeDone(changed, kind);
      tally.swaps++;
      if (!isRight) tally.wrongSwaps++;
      const found = orderFindings(changed);
      expect({ what, isRight: found.length === 0, found }).toEqual({ what, isRight, found });
    }
  });

  test('without one of the steps that carry a state', { timeout: 120_000 }, () => {
    for (const [what, changed] of removals(text)) {
      const isRight = canBeDone(changed, kind);
      tally.removals++;
      if (!isRight) tally.wrongRemovals++;
      const found = orderFindings(changed);
      expect({ what, isRight: found.length === 0, found }).toEqual({ what, isRight, found });
    }
  });
});

afterAll(() => {
  const { swaps: s, wrongSwaps, removals: r, wrongRemovals } = tally;
  console.log(
    `check and the naive simulation agree: ${s} swaps (${wrongSwaps} wrong), ${r} removals (${wrongRemovals} wrong)`,
  );
});
