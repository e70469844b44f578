import type { Kind, Stage } from '../kinds/model.ts';
import { type Proof, stageRank, workingOperations } from '../order/index.ts';
import { operationIn } from '../sheet/index.ts';
import type { Operation, Sheet } from '../sheet/model.ts';
import { defineCheck } from './define.ts';
import { orderProof, startingPart } from './order-proof.ts';

const stageWords: Readonly<Record<Stage, string>> = {
  strip: 'stripping',
  bench: 'bench work',
  'before-start': 'work before the first start',
  running: 'work with the engine running',
  road: 'work on the road',
  any: 'no work',
};

/** Work that stands another way round than most papers have it, and can be done all the same. */
export default defineCheck({
  id: 'order-unusual',
  severity: 'note',
  group: 'order',
  summary: 'Work stands in another order than is usual, and nothing speaks against it.',
  explain:
    'Right manuals differ in what is only custom: which of two settings comes first that do not touch ' +
    'one another, what is done on the bench and what on the running engine. It is worth a look, and no ' +
    'more: nothing found in the work speaks against it. An edition that says `usual-order: false` is not ' +
    'told.',
  messages: {
    pair: {
      message: '`{late}` stands before `{early}`, and usually follows it: {because}',
      fix: null,
    },
    stage: {
      message: '`{operation}` is usually {stage}, and stands after `{later}`: {because}',
      fix: null,
    },
  },
  run(sheet, context, report) {
    if (context.usualOrder === false) return;
    const found = orderProof(sheet);
    if (found === null) return;
    const told = new Set(found.moves.map(({ operation }) => operation));
    for (const { before, after, rule } of found.unusual) {
      if (told.has(before) || told.has(after)) continue;
      told.add(after);
      report({
        message: 'pair',
        span: after.heading.span,
        values: {
          late: after.heading.value,
          early: before.heading.value,
          because: rule.because,
        },
        related: [{ span: before.heading.span, label: 'this usually comes first' }],
        suggest: () => [
          { at: after.span, move: 'below', beside: before.span },
          { at: before.span, move: 'above', beside: after.span },
        ],
        subject: after.known?.name ?? null,
        alsoCalled: before.known ? [before.known.name] : [],
      });
    }
    for (const { operation, later, because } of stagesBroken(sheet, found)) {
      if (told.has(operation) || told.has(later)) continue;
      report({
        message: 'stage',
        span: operation.heading.span,
        values: {
          operation: operation.heading.value,
          stage: stageWords[stageOf(operation, found.kind)],
          later: later.heading.value,
          because,
        },
        related: [{ span: later.heading.span, label: 'work of a later stage' }],
        suggest: () => [{ at: operation.span, move: 'above', beside: later.span }],
        subject: operation.known?.name ?? null,
        alsoCalled: later.known ? [later.known.name] : [],
      });
    }
  },
  examples: [
    {
      name: 'a float drop before the level, which is checked again after it',
      sheet: {
        settings: 'float-drop: { value: 1 in, from: m48 p. 31 }',
        body: '## Float drop\n\n1. Hold the cover upright. :state[cover upright]\n2. Measure :value[float-drop].\n\n## Float level\n\n1. Turn it over and lift the gasket. :state[cover inverted] :state[gasket off]\n2. Measure :value[float-level].\n3. Hold it upright and see the drop once more: :value[float-drop]. :state[cover upright]\n4. Refit them. :state[cover on] :state[gasket on]\n',
      },
      expect: [
        {
          at: 'Float drop',
          message:
            '`Float drop` stands before `Float level`, and usually follows it: the arm is bent for the level, and the drop follows',
          fix: null,
        },
      ],
    },
    {
      name: 'a dashpot that is set running',
      sheet: {
        settings: 'dashpot: { value: 1/16 in, from: m48 p. 40 }',
        body: '## First start\n\n1. Start the engine. :state[unit on-engine] :state[engine running] :state[gear neutral] :state[wheels chocked]\n\n## Dashpot\n\n1. Let the throttle come to its stop. :state[throttle on-idle-stop]\n2. Measure :value[dashpot].\n',
      },
      expect: [
        {
          at: 'Dashpot',
          message:
            '`Dashpot` is usually bench work, and stands after `First start`: in a vise a unit can be turned and reached from every side',
          fix: null,
        },
      ],
    },
    {
      name: 'the usual order',
      sheet: {
        settings: 'dashpot: { value: 1/16 in, from: m48 p. 40 }',
        body: '## Dashpot\n\n1. Let the throttle come to its stop. :state[throttle on-idle-stop]\n2. Measure :value[dashpot].\n\n## First start\n\n1. Start the engine. :state[unit on-engine] :state[engine running] :state[gear neutral] :state[wheels chocked]\n',
      },
      expect: [],
    },
    {
      name: 'a return with the engine off that says so',
      sheet: {
        settings: 'dashpot: { value: 1/16 in, from: m48 p. 40 }',
        body: '## First start\n\n1. Start the engine. :state[unit on-engine] :state[engine running] :state[gear neutral] :state[wheels chocked]\n\n## Dashpot\n\n1. Stop the engine. :state[engine stopped]\n2. Measure :value[dashpot]. :state[throttle on-idle-stop]\n',
      },
      expect: [],
    },
  ],
});

/** Operations that stand, for the first time, after work of a later stage; the latest of that. */
function stagesBroken(
  sheet: Sheet,
  { kind, walk }: Proof,
): readonly {
  readonly operation: Operation;
  readonly later: Operation;
  readonly because: string;
}[] {
  const starting = startingPart(kind);
  // A first step that says that the engine is off: the work goes back, and knows it.
  const stopped = new Set(
    walk.steps
      .filter(({ step }) => step.index === 0)
      .filter(({ step }) =>
        step.changes.some(
          ({ term }) => term.part === starting?.name && term.condition === starting.starts,
        ),
      )
      .map(({ step }) => step.operation),
  );
  const broken: { operation: Operation; later: Operation; because: string }[] = [];
  const seen = new Set<string>();
  let latest: Operation | null = null;
  for (const operation of workingOperations(sheet, kind)) {
    const name = operation.known?.name ?? '';
    const rank = stageRank(stageOf(operation, kind));
    if (latest === null || rank >= stageRank(stageOf(latest, kind))) latest = operation;
    else if (!seen.has(name) && !stopped.has(operation)) {
      const because = kind.stages.get(stageOf(operation, kind));
      if (because !== undefined) broken.push({ operation, later: latest, because });
    }
    seen.add(name);
  }
  return broken;
}

function stageOf(operation: Operation, kind: Kind): Stage {
  return operationIn(kind, operation)?.stage ?? 'any';
}
