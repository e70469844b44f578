import { scalar } from '../text/index.ts';
import {
  commonNeed,
  type KindPlan,
  type PlannedNeed,
  type PlannedOperation,
  type PlannedSetting,
  pairOf,
  plainName,
} from './kind-plan.ts';

/** Where nobody could be asked: a unit that is opened, measured and closed, to be written over. */
const example: KindPlan = {
  settings: [
    { label: 'First setting', dimension: 'length', usual: null },
    { label: 'First reading', dimension: 'pressure', usual: null },
  ],
  operations: [
    {
      label: 'First setting',
      stage: 'bench',
      makes: ['First setting'],
      needs: [{ part: 'cover', condition: 'off' }],
      hazards: [],
    },
    {
      label: 'First reading',
      stage: 'running',
      makes: ['First reading'],
      needs: [
        { part: 'cover', condition: 'on' },
        { part: 'engine', condition: 'running' },
      ],
      hazards: [],
    },
  ],
};

/** A new kind of unit, from what was told of it or from an example; `check` finds nothing in it. */
export function draftKind(order: {
  readonly name: string;
  readonly title: string;
  /** The way from the file to its schema, for editors. */
  readonly schema: string;
  readonly plan?: KindPlan | null;
}): string {
  const { settings, operations } = withMakers(order.plan ?? example);
  const [first] = settings;
  const needs = operations.flatMap((each) => each.needs);
  return `# yaml-language-server: $schema=${order.schema}
#
# Where it comes from: say here which papers the kind was made from.
gaugeleaf-kind: 1
kind: ${order.name}
title: ${scalar(order.title)}
# Hazards, headings without work, and the parts engine, gear and vehicle (docs/kinds.md).
builds-on: [running-engine]

# What every sheet of this kind carries; of each list one at least.
always:
  settings:
    - [${plainName(first?.label ?? '')}]

settings:
${settings.map(settingText).join('')}
# In working order. \`needs\` and \`disturbs\` are hard; what is only custom stands under \`usual:\`.
operations:
${operations.map(operationText).join('')}${partsText(needs)}`;
}

/** A setting that no operation makes has one of its own. */
function withMakers({ settings, operations }: KindPlan): KindPlan {
  const made = new Set(operations.flatMap(({ makes }) => makes));
  const lacking = settings.filter(({ label }) => !made.has(label));
  const own = lacking.map(
    ({ label }): PlannedOperation => ({
      label,
      stage: 'bench',
      makes: [label],
      needs: [],
      hazards: [],
    }),
  );
  return { settings, operations: [...operations, ...own] };
}

function settingText({ label, dimension, usual }: PlannedSetting): string {
  const range = usual ? `    usual: { ${dimension}: [${usual.map(scalar).join(', ')}] }\n` : '';
  return `  ${plainName(label)}:
    label: ${scalar(label)}
    explain: What it is, and what is noticed when it is out.
    dimensions: [${dimension}]
${dimension === 'condition' ? '    conditions: [level]\n' : ''}${range}`;
}

function operationText({ label, stage, makes, needs, hazards }: PlannedOperation): string {
  const asked = needs.map((need) => {
    const { part, condition } = commonNeed(need) ?? { ...need, part: plainName(need.part) };
    return `      ${part}: { is: '${condition}', because: say here why }\n`;
  });
  const marks = needs.map((need) => `      - "${stepFor(need)}"\n`);
  const measured = makes.map((each) => `      - "Measure it: {${plainName(each)}}."\n`);
  const steps = [...marks, ...measured];
  return `  ${plainName(label)}:
    label: ${scalar(label)}
    explain: What is done here, and why.
    stage: ${stage}
    settings: [${makes.map(plainName).join(', ')}]
${hazards.length > 0 ? `    hazards: [${hazards.join(', ')}]\n` : ''}${asked.length > 0 ? `    needs:\n${asked.join('')}` : ''}${steps.length > 0 ? `    steps:\n${steps.join('')}` : ''}`;
}

function stepFor(need: PlannedNeed): string {
  const common = commonNeed(need);
  return `See that the ${need.part.toLowerCase()} is ${need.condition}. :state[${common?.part ?? plainName(need.part)} ${need.condition}]`;
}

function partsText(needs: readonly PlannedNeed[]): string {
  const own = new Map<string, string>();
  for (const need of needs) {
    const pair = pairOf(need.condition);
    if (commonNeed(need) !== null || pair === null) continue;
    const [home, away, bringsHome, takesAway] = pair;
    own.set(
      plainName(need.part),
      `  ${plainName(need.part)}:
    label: ${scalar(need.part.toLowerCase())}
    starts: '${home}'
    home: ['${home}']
    reads: { ${takesAway}: '${away}', ${bringsHome}: '${home}' }
    conditions: { '${home}': {}, '${away}': {} }
`,
    );
  }
  if (own.size === 0) return '';
  return `\n# Where each part starts, and where it belongs when the engine is started and at the end.\nparts:\n${[...own.values()].join('')}`;
}
