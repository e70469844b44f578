import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { allChecks, type CheckContext } from '../../src/checks/index.ts';
import { gaugeBook } from '../../src/gauges/index.ts';
import { builtInKinds } from '../../src/kinds/index.ts';

const folder = join(import.meta.dirname, '..', '..', 'sheets');

/** Names of the demo's sheets, and their texts. */
export const demoSheets: readonly (readonly [string, string])[] = readdirSync(folder)
  .filter((name) => name.endsWith('.md'))
  .map((name) => [name, readFileSync(join(folder, name), 'utf8')]);

export const demoContext: CheckContext = {
  gauges: gaugeBook(),
  kinds: builtInKinds(),
  wireGauge: 'imperial',
  picture: null,
};

export const orderChecks = allChecks.filter(({ group }) => group === 'order');

/** The sheet with each two neighboring sections changed about, and what was changed. */
export function* swaps(text: string): Generator<readonly [string, string]> {
  const sections = text.trimEnd().split(/^(?=## )/m);
  for (let at = 1; at + 1 < sections.length; at++) {
    const changed = sections.map((section) => `${section.trimEnd()}\n\n`);
    const [one = '', two = ''] = changed.slice(at, at + 2);
    changed.splice(at, 2, two, one);
    yield [`${title(one)} ⇄ ${title(two)}`, `${changed.join('').trimEnd()}\n`];
  }
}

/** The sheet without each of the steps that carry a state. */
export function* removals(text: string): Generator<readonly [string, string]> {
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
