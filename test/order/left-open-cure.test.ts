import { expect, test } from 'vitest';
import { examine } from '../../src/checks/list.ts';
import { readKind } from '../../src/kinds/index.ts';
import type { Kind } from '../../src/kinds/model.ts';
import { exampleContext, wholeSheet } from '../checks/examples.ts';

/** A pump of a club, what it wants of its outlet at the gauge, and when the outlet is home. */
function pump(needs: string): Kind {
  const { kind, problems } = readKind(
    `gaugeleaf-kind: 1
kind: fuel-pump
title: Fuel pump
features:
  bowl: { label: Bowl, explain: A bowl. }
settings:
  static-pressure:
    label: Static pressure
    explain: Pressure against a closed outlet.
    dimensions: [pressure]
    ${needs}
operations:
  installation: { label: Installation, explain: Bolt it on., stage: bench }
  static-pressure: { stage: running, settings: [static-pressure] }
  shut-down: { label: Shutting down, explain: Join it., stage: running }
parts:
  outlet:
    label: outlet line
    starts: joined
    home: [joined]
    conditions: { joined: {}, gauge: {} }
  engine: { label: engine, starts: stopped, conditions: { stopped: {}, running: {} } }
states:
  engine running: { do: Start the engine, starts-up: true }
stages: { bench: it is still, running: it turns }
`,
    'kinds/fuel-pump.yaml',
  );
  if (kind === null) throw new Error(problems.map(({ message }) => message).join('; '));
  return kind;
}

const steps = [
  'Screw the gauge to the outlet. :state[outlet gauge]',
  'Start the engine, and read: :value[static-pressure]. :state[engine running]',
  'Stop it. :state[engine stopped]',
];

function leftOpen(kind: Kind, work: readonly string[]) {
  const numbered = work.map((step, i) => `${i + 1}. ${step}`).join('\n');
  const text = wholeSheet({
    front:
      'unit: { kind: fuel-pump, maker: Orlo, model: F27, features: [bowl] }\nsettings:\n  static-pressure: { value: 4 psi, from: m48 }',
    body: `# Orlo\n\n## Installation\n\n1. Bolt it on.\n\n## Static pressure\n\n${numbered}\n\n## Shutting down\n\n1. Join it. :state[outlet joined]\n`,
  });
  const context = { ...exampleContext(), kinds: new Map([['fuel-pump', kind]]) };
  return examine(text, 'orlo-f27.md', context).findings.filter(
    ({ check }) => check === 'part-left-open',
  );
}

test('what is opened behind the place where it goes back is put back behind where it is opened', () => {
  const [first, ...others] = leftOpen(pump(''), steps);
  expect(others).toEqual([]);
  expect(first?.fix).toMatch(
    /^add `:state\[outlet joined\]` behind that, before step 2 of `## Static pressure`;/,
  );
  const mended = [steps[0] ?? '', ':state[outlet joined]', ...steps.slice(1)];
  expect(leftOpen(pump(''), mended)).toEqual([]);
});

test('a part that the work under way surely needs as it is need not be home when that starts', () => {
  const asked = pump('needs: { outlet: { is: gauge, because: the gauge closes it } }');
  expect(leftOpen(asked, steps)).toEqual([]);
});
