import { describe, expect, test } from 'vitest';
import { allChecks } from '../../src/checks/index.ts';
import { examine } from '../../src/checks/list.ts';
import { gaugeBook } from '../../src/gauges/index.ts';
import { freeNeighbors, planDraft } from '../../src/import/draft-plan.ts';
import { draftSheet } from '../../src/import/draft-sheet.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import type { Kind } from '../../src/kinds/model.ts';

const kinds = builtInKinds();
const orderChecks = new Set(allChecks.filter(({ group }) => group === 'order').map(({ id }) => id));

function draftOf(kind: Kind, features: readonly string[]): string {
  return draftSheet({
    kind,
    maker: 'Orlo',
    model: 'X',
    features,
    id: 'orlo-x',
    date: '2026-10-03',
  });
}

function orderFindings(text: string): readonly string[] {
  const context = { gauges: gaugeBook(), kinds, wireGauge: null, picture: null };
  return examine(text, 'sheets/orlo-x.md', context)
    .findings.filter(({ check }) => orderChecks.has(check))
    .map(({ check, message }) => `${check}: ${message}`);
}

/** Every feature alone, and as many together as their exclusions let. */
function featureSets(kind: Kind): readonly (readonly string[])[] {
  const all = [...kind.features.keys()];
  const fits = (set: readonly string[], name: string): boolean =>
    set.every(
      (each) =>
        !kind.features.get(each)?.excludes.includes(name) &&
        !kind.features.get(name)?.excludes.includes(each),
    );
  const most = (names: readonly string[]): readonly string[] => {
    const set: string[] = [];
    for (const name of names) if (fits(set, name)) set.push(name);
    return set;
  };
  return [
    [],
    ...all.map((name) => [name]),
    ...all.map((name) => most([name, ...all])),
    most([...all].reverse()),
  ];
}

/**
 * Kinds of which a draft without all their settings leaves parts open: their model steps put a part back in the
 * same step that prints a setting, and go with it.
 */
const open = new Set(['fuel-pump', 'magneto', 'generator']);

describe.each(
  [...kinds.values()]
    .filter(({ name }) => !open.has(name))
    .map((kind) => [kind.name, kind] as const),
)('%s', (_, kind) => {
  test.each(featureSets(kind).map((set) => [set.join(', ') || 'no features', set] as const))(
    'a draft for %s is in an order that is right',
    (_name, features) => {
      expect(orderFindings(draftOf(kind, features))).toEqual([]);
    },
  );
});

test('neighbors that may change places, changed, are right too', () => {
  const kind = kinds.get('carburetor');
  if (!kind) throw new Error('no carburetor');
  const features = ['single-barrel', 'downdraft', 'pump', 'dashpot'];
  const plan = planDraft(kind, features);
  const pairs = freeNeighbors(plan);
  expect(pairs).toContainEqual(['Pump stroke', 'Dashpot']);
  const sections = draftOf(kind, features).split(/^(?=## )/m);
  let changed = 0;
  for (const [first, second] of pairs) {
    const at = sections.findIndex((section) => section.startsWith(`## ${first}\n`));
    const swapped = [...sections];
    [swapped[at], swapped[at + 1]] = [`${sections[at + 1]?.trimEnd()}\n\n`, `${sections[at]}`];
    expect(sections[at + 1]).toMatch(new RegExp(`^## ${second}\n`));
    const found = orderFindings(swapped.join('')).filter((each) => !each.startsWith('state-'));
    expect([first, second, found]).toEqual([first, second, []]);
    changed++;
  }
  expect(changed).toBeGreaterThan(3);
});
