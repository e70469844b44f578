import { placeToRestore, stepToRestoreBefore } from '../order/index.ts';
import type { WorkStep } from '../order/model.ts';
import { defineCheck } from './define.ts';
import { conditionWords, nextStep, orderProof, partLabel, saying, stepFor } from './order-proof.ts';

/** A part that is taken off, opened or backed out, and never put back. */
export default defineCheck({
  id: 'part-left-open',
  severity: 'error',
  group: 'order',
  summary: 'A part is taken off, opened or backed out, and nothing puts it back in time.',
  explain:
    'A stop screw that is still backed off at the start lets the engine die; a cover that is off ' +
    'lets it burn. Accept what stays open at the end where the work goes on in another paper. A ' +
    'note asks for a mark where only words tell the state.',
  messages: {
    left: {
      message: 'nothing brings the {part} back from {was} before {before}',
      fix: 'add `{number}. {step}` at the end of `## {operation}`',
    },
    late: {
      message: 'nothing brings the {part} back from {was} before {before}',
      fix: 'have a step do it before that, or, where the {part} stays {was} while it runs, write `home-at-start: false` beside `home:` of `{name}` in its kind',
    },
    opened: {
      message: 'nothing brings the {part} back from {was} before {before}',
      fix: 'add `{step}` behind that, before step {number} of `## {operation}`; or, where the {part} stays {was} while it runs, write `home-at-start: false` beside `home:` of `{name}` in its kind',
    },
    read: {
      message:
        '{saying} read as {part} {was}, and nothing is read that brings it back before {before}',
      fix: 'mark the step that does: `:state[{name} {home}]`; add one if there is none',
    },
  },
  run(sheet, _context, report) {
    const found = orderProof(sheet);
    if (found === null) return;
    const { kind, faults, walk } = found;
    for (const fault of faults) {
      if (fault.kind !== 'left-open' || fault.state.span === null) continue;
      const { part, state, home, at } = fault;
      const place = placeToRestore(fault, walk, kind);
      const span = fault.state.span;
      const step = stepFor(kind, part, home[0] ?? '');
      const said = saying(span, sheet);
      // What is opened behind the place where it would be put back is put back there in vain.
      const isLate = place !== null && place.span.end <= span.start;
      const isRunning = kind.parts.get(part)?.conditions.get(state.condition)?.startsUp === true;
      const before = isRunning || !isLate ? null : stepToRestoreBefore(fault, walk);
      const isVain = fault.before === 'start' && (isRunning || isLate);
      const cure = before ? 'opened' : isVain ? 'late' : 'left';
      report({
        message: fault.doubtful ? 'read' : cure,
        span,
        values: {
          part: partLabel(kind, part),
          name: part,
          was: conditionWords(kind, part, [state.condition]),
          home: home[0] ?? '',
          before: fault.before === 'start' ? 'the engine is started' : 'the work ends',
          number: before ? numberOf(before) : place ? nextStep(place) : '1',
          operation: (before?.operation ?? place)?.heading.value ?? '',
          step,
          saying: `${said.what} ${said.isHeading ? 'is' : 'are'}`,
        },
        suggest: () => {
          if (before) return [{ step, where: 'before', at: before.span }];
          return place === null || cure !== 'left'
            ? []
            : [{ step, where: 'end', at: place.heading.span }];
        },
        related: at ? [{ span: at.span, label: 'started here' }] : [],
        subject: part,
        severity: fault.weight,
      });
    }
  },
  examples: [
    {
      name: 'the stop screw still backed off at the start',
      sheet: {
        body: '## Pump stroke\n\n1. Back the stop screw off. :state[stop-screw backed-off] :state[throttle shut]\n2. Measure :value[pump-stroke].\n\n## Installation\n\n1. Draw the nuts down. :state[unit on-engine]\n\n## First start\n\n1. Chock the wheels. :state[wheels chocked] :state[gear neutral]\n2. Start the engine. :state[engine running]\n',
      },
      expect: [
        {
          at: ':state[stop-screw backed-off]',
          message:
            'nothing brings the idle stop screw back from backed off before the engine is started',
          fix: 'add `3. Turn the idle stop screw in to where it holds the throttle for idling. :state[stop-screw set]` at the end of `## Pump stroke`',
        },
      ],
    },
    {
      name: 'a clamp that was slackened to lift the distributor out',
      sheet: {
        front:
          'unit: { kind: ignition-distributor, maker: Brennick, model: B12, features: [single-breaker] }',
        body: '## Strip and inspect\n\n1. Slacken the clamp. :state[clamp loose]\n2. Lift it out. :state[unit on-bench]\n\n## Installation\n\n1. Lower it in. :state[unit on-engine]\n\n## First start\n\n1. Chock the wheels. :state[wheels chocked] :state[gear neutral]\n2. Start the engine. :state[engine running]\n',
      },
      expect: [
        {
          at: ':state[clamp loose]',
          severity: 'warning',
          message: 'nothing brings the clamp back from loose before the engine is started',
          fix: 'add `2. Tighten the clamp. :state[clamp tight]` at the end of `## Installation`',
        },
      ],
    },
    {
      name: 'a test gauge that is on where the engine is started for it',
      sheet: {
        front:
          'work:\n  test-gauge:\n    label: test gauge\n    conditions: [away, joined]\n    starts: away\n    home: [away]\n    because: the pressure is read on the idling engine',
        body: '## Installation\n\n1. Draw the nuts down. :state[unit on-engine]\n\n## First start\n\n1. Chock the wheels. :state[wheels chocked] :state[gear neutral]\n2. Join the gauge. :state[test-gauge joined]\n3. Start the engine. :state[engine running]\n4. Take the gauge off. :state[test-gauge away]\n',
      },
      expect: [
        {
          at: ':state[test-gauge joined]',
          message: 'nothing brings the test gauge back from joined before the engine is started',
          fix: 'add `:state[test-gauge away]` behind that, before step 3 of `## First start`; or, where the test gauge stays joined while it runs, write `home-at-start: false` beside `home:` of `test-gauge` in its kind',
        },
      ],
    },
    {
      name: 'a test gauge that is joined by the step that starts the engine',
      sheet: {
        front:
          'work:\n  test-gauge:\n    label: test gauge\n    conditions: [away, joined]\n    starts: away\n    home: [away]\n    because: the pressure is read on the idling engine',
        body: '## Installation\n\n1. Draw the nuts down. :state[unit on-engine]\n\n## First start\n\n1. Chock the wheels. :state[wheels chocked] :state[gear neutral]\n2. Join the gauge and start the engine. :state[test-gauge joined] :state[engine running]\n3. Take the gauge off. :state[test-gauge away]\n',
      },
      expect: [
        {
          at: ':state[test-gauge joined]',
          message: 'nothing brings the test gauge back from joined before the engine is started',
          fix: 'have a step do it before that, or, where the test gauge stays joined while it runs, write `home-at-start: false` beside `home:` of `test-gauge` in its kind',
        },
      ],
    },
    {
      name: 'a cover that stays off',
      sheet: {
        body: '## Float level\n\n1. Take the cover off and turn it over. :state[cover inverted] :state[gasket off]\n2. Measure :value[float-level].\n3. Lay the gasket on. :state[gasket on]\n',
      },
      expect: [
        {
          at: ':state[cover inverted]',
          severity: 'warning',
          message: 'nothing brings the bowl cover back from inverted before the work ends',
          fix: 'add `4. Put the bowl cover on. :state[cover on]` at the end of `## Float level`',
        },
      ],
    },
    {
      name: 'taken off in words, and nothing read that puts it back',
      sheet: {
        body: '## Strip\n\n1. Take off the dust cover.\n',
      },
      expect: [
        {
          at: 'Take off the dust cover',
          severity: 'note',
          message:
            'the words “Take off the dust cover” are read as dust cover off, and nothing is read that brings it back before the work ends',
          fix: 'mark the step that does: `:state[dust-cover on]`; add one if there is none',
        },
      ],
    },
    {
      name: 'put back',
      sheet: {
        body: '## Strip\n\n1. Take off the dust cover. :state[dust-cover off]\n\n## Assembly\n\n1. Fit the dust cover. :state[dust-cover on]\n',
      },
      expect: [],
    },
  ],
});

/** The number of a step as it is printed. */
function numberOf({ operation, index }: WorkStep): string {
  return String(operation.steps[index]?.number ?? index + 1);
}
