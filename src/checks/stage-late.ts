import type { Kind, Stage } from '../kinds/model.ts';
import type { Operation } from '../sheet/model.ts';
import { defineCheck } from './define.ts';
import { editsFor } from './move-section.ts';
import { markFor, orderProof, startingPart } from './order-proof.ts';

const stageWords: Readonly<Record<Stage, string>> = {
  strip: 'stripping',
  bench: 'bench work',
  'before-start': 'work before the first start',
  running: 'work with the engine running',
  road: 'work on the road',
  any: 'no work',
};

/** Work of an earlier stage that stands after work of a later one. */
export default defineCheck({
  id: 'stage-late',
  severity: 'error',
  group: 'order',
  summary: 'Work of an earlier stage stands after work of a later one.',
  explain:
    'Strip, bench, before the first start, running hot, road: whoever finds bench work among the ' +
    'running work does it on a hot engine, or has finished without it. A return with the engine off ' +
    'is right if its first step says so.',
  messages: {
    stopped: {
      message: '`{operation}` is {stage}, and stands after `{later}`, which is {laterStage}',
      fix: 'move `## {moved}` {side} `## {beside}`; or, if the work goes back to it, say so in its first step: `{mark}`',
    },
    late: {
      message: '`{operation}` is {stage}, and stands after `{later}`, which is {laterStage}',
      fix: 'move `## {moved}` {side} `## {beside}`',
    },
  },
  run(sheet, _context, report) {
    const found = orderProof(sheet);
    if (found === null) return;
    const { kind, moves } = found;
    const starting = startingPart(kind);
    const isStopped = starting !== null && starting.starts !== null;
    for (const move of moves) {
      if (move.reversals.some(({ byStage }) => !byStage)) continue;
      const pair = move.reversals[0];
      if (pair === undefined) continue;
      report({
        message: isStopped ? 'stopped' : 'late',
        span: pair.before.heading.span,
        values: {
          operation: pair.before.heading.value,
          stage: stageWords[stageOf(pair.before, kind)],
          later: pair.after.heading.value,
          laterStage: stageWords[stageOf(pair.after, kind)],
          moved: move.operation.heading.value,
          side: move.side,
          beside: move.beside.heading.value,
          mark: markFor(kind, starting?.name ?? '', starting?.starts ?? ''),
        },
        related: [{ span: pair.after.heading.span, label: 'work of a later stage' }],
        subject: pair.before.known?.name ?? null,
        alsoCalled: pair.after.known ? [pair.after.known.name] : [],
        edits: isStopped ? [] : editsFor(sheet, kind, moves),
      });
    }
  },
  examples: [
    {
      name: 'bench work after the first start',
      sheet: {
        body: '## First start\n\n1. Start the engine. :state[unit on-engine] :state[engine running] :state[gear neutral] :state[wheels chocked]\n\n## Dashpot\n\n1. Press the plunger home.\n',
      },
      expect: [
        {
          at: 'Dashpot',
          message:
            '`Dashpot` is bench work, and stands after `First start`, which is work with the engine running',
          fix: 'move `## Dashpot` above `## First start`; or, if the work goes back to it, say so in its first step: `:state[engine stopped]`',
        },
      ],
    },
    {
      name: 'a kind that nothing starts',
      sheet: {
        front:
          'unit: { kind: fuel-pump, maker: Orlo, model: P29 }\nsettings: { pump-pressure: { value: 4 psi, from: m48 p. 50 } }',
        body: '## Bowl seal\n\n1. Fit it.\n\n## Diaphragm\n\n1. See that it gives :value[pump-pressure].\n',
      },
      expect: [
        {
          at: 'Diaphragm',
          message:
            '`Diaphragm` is bench work, and stands after `Bowl seal`, which is work before the first start',
          fix: 'move `## Diaphragm` above `## Bowl seal`',
          fixed:
            '## Diaphragm\n\n1. See that it gives :value[pump-pressure].\n\n## Bowl seal\n\n1. Fit it.',
        },
      ],
    },
    {
      name: 'a return with the engine off that says so',
      sheet: {
        body: '## First start\n\n1. Start the engine. :state[unit on-engine] :state[engine running] :state[gear neutral] :state[wheels chocked]\n\n## Dashpot\n\n1. Stop the engine. :state[engine stopped]\n2. Press the plunger home.\n',
      },
      expect: [],
    },
  ],
});

function stageOf({ known }: Operation, kind: Kind): Stage {
  return kind.operations.get(known?.name ?? '')?.stage ?? 'any';
}
