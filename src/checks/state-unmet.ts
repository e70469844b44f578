import type { Kind } from '../kinds/model.ts';
import type { OrderFault } from '../order/index.ts';
import { defineCheck, type Report } from './define.ts';
import { conditionWords, markFor, orderProof, partLabel } from './order-proof.ts';

type Words =
  | 'measured'
  | 'done'
  | 'into'
  | 'unsaid'
  | 'unsaidInto'
  | 'unsaidSeveral'
  | 'read'
  | 'readInto';

type Unmet = Extract<OrderFault, { kind: 'unmet' }>;

/** A measurement, or a start, without the state that it needs. */
export default defineCheck({
  id: 'state-unmet',
  severity: 'error',
  group: 'order',
  summary: 'Something is measured, or started, without the state of the unit that it needs.',
  explain:
    'A setting that is measured with the throttle held open, the gasket on or the engine cold is ' +
    'another setting than the sheet means, though its figure is right. A note asks for a mark where ' +
    'only words tell the state; accept it where the words are clear to any reader.',
  messages: {
    measured: {
      message: '`{operation}` is measured here with the {part} {was}; it needs the {part} {need}',
      fix: 'before this step, have the {part} {need} and mark the step that does it: `{mark}`',
    },
    done: {
      message: '`{operation}` ends with the {part} {was}; it needs the {part} {need}',
      fix: 'before its last step, have the {part} {need} and mark the step that does it: `{mark}`',
    },
    into: {
      message:
        'the {cause} is {causeIs} from here on, with the {part} {was}; it needs the {part} {need}',
      fix: 'before this step, have the {part} {need} and mark the step that does it: `{mark}`',
    },
    unsaid: {
      message: '`{operation}` needs the {part} {need}, and no step so far says so',
      fix: 'mark the step that does it: `{mark}`; add one before this step if there is none',
    },
    unsaidInto: {
      message:
        'the {cause} is {causeIs} from here on; that needs the {part} {need}, and no step so far says so',
      fix: 'mark the step that does it: `{mark}`; add one before this step if there is none',
    },
    unsaidSeveral: {
      message: '{who} needs {needs}, and no step so far says so',
      fix: 'mark the steps that do it: {marks}; add one before this step if there is none',
    },
    read: {
      message:
        '`{operation}` needs the {part} {need}, and the words “{words}” are read as {part} {was}',
      fix: 'mark the step that brings it there: `{mark}`; add one if there is none',
    },
    readInto: {
      message:
        'the {cause} is {causeIs} from here on; that needs the {part} {need}, and the words “{words}” are read as {part} {was}',
      fix: 'mark the step that brings it there: `{mark}`; add one if there is none',
    },
  },
  run(sheet, _context, report) {
    const found = orderProof(sheet);
    if (found === null) return;
    const { kind, faults } = found;
    const unmet = faults.filter((fault): fault is Unmet => fault.kind === 'unmet');
    const told = new Set<Unmet>();
    for (const fault of unmet) {
      if (told.has(fault)) continue;
      const several = unmet.filter(
        (each) => isUnsaid(each) && isUnsaid(fault) && isOneMoment(each, fault),
      );
      if (several.length > 1) {
        for (const each of several) told.add(each);
        report(unsaidTogether(several, fault, kind));
        continue;
      }
      const { need, at, operation, was, cause, doubtful } = fault;
      const part = partLabel(kind, need.part);
      const read = was?.by === 'reading' ? was.span : null;
      const values: Record<string, string> = {
        operation: operation.heading.value,
        part,
        was: was ? conditionWords([was.condition]) : '',
        need: conditionWords(need.anyOf),
        mark: markFor(kind, need.part, need.anyOf[0] ?? ''),
        cause: cause === 'operation' ? '' : partLabel(kind, cause.part),
        causeIs: cause === 'operation' ? '' : conditionWords([cause.condition]),
        words: read ? sheet.text.slice(read.start, read.end).replace(/\s+/g, ' ') : '',
      };
      const byCause = cause !== 'operation';
      let message: Words;
      if (read) message = byCause ? 'readInto' : 'read';
      else if (doubtful || was === null) message = byCause ? 'unsaidInto' : 'unsaid';
      else if (byCause) message = 'into';
      else
        message = kind.operations.get(operation.known?.name ?? '')?.settings.length
          ? 'measured'
          : 'done';
      const reported: Report<Words> = {
        message,
        span: at.span,
        values,
        subject: need.part,
        alsoCalled: operation.known ? [operation.known.name] : [],
        related: was?.span
          ? [{ span: was.span, label: `the ${part} ${conditionWords([was.condition])}` }]
          : [],
      };
      report(doubtful ? { ...reported, severity: 'note' } : reported);
    }
  },
  examples: [
    {
      name: 'the throttle still held open by its fast idle screw',
      sheet: {
        body: '## Pump stroke\n\n1. Rest the fast idle screw on its step. :state[throttle on-fast-idle]\n2. Measure the travel: :value[pump-stroke].\n',
      },
      expect: [
        {
          at: '2. Measure the travel: :value[pump-stroke].',
          message:
            '`Pump stroke` is measured here with the throttle on fast idle; it needs the throttle shut',
          fix: 'before this step, have the throttle shut and mark the step that does it: `:state[throttle shut]`',
        },
      ],
    },
    {
      name: 'the gasket still on where the setting says that it is off',
      sheet: {
        body: '## Float level\n\n1. Turn the cover over. :state[cover inverted]\n2. Fit the new gasket on it. :state[cover off] :state[gasket off]\n3. Lay the gasket on. :state[gasket on] :state[cover inverted]\n4. Pass the gauge under the free end: :value[float-level].\n',
      },
      expect: [
        {
          at: '4. Pass the gauge under the free end: :value[float-level].',
          message:
            '`Float level` is measured here with the cover gasket on; it needs the cover gasket off',
          fix: 'before this step, have the cover gasket off and mark the step that does it: `:state[cover-gasket off]`',
        },
      ],
    },
    {
      name: 'the idle speed of a cold engine',
      sheet: {
        body: '## First start\n\n1. Chock the wheels. :state[wheels chocked] :state[gear neutral]\n2. Start the engine. :state[unit on-engine] :state[engine running]\n\n## Idle speed\n\n1. Bring it to :value[idle-speed].\n2. Run it until hot. :state[engine hot]\n',
        settings: 'idle-speed: { value: 475 rpm, from: m48 p. 41 }',
      },
      expect: [
        {
          at: '1. Bring it to :value[idle-speed].',
          message: '`Idle speed` is measured here with the engine cold; it needs the engine hot',
          fix: 'before this step, have the engine hot and mark the step that does it: `:state[engine hot]`',
        },
      ],
    },
    {
      name: 'the cover is never put on again',
      sheet: {
        body: '## Float level\n\n1. Lift the cover off. :state[cover off]\n2. Set :value[float-level]. :state[cover inverted] :state[gasket off]\n\n## Assembly\n\n1. Lay the gasket on. :state[gasket on]\n2. Work the throttle.\n',
      },
      expect: [
        {
          at: '2. Work the throttle.',
          message: '`Assembly` ends with the bowl cover inverted; it needs the bowl cover on',
          fix: 'before its last step, have the bowl cover on and mark the step that does it: `:state[cover on]`',
        },
      ],
    },
    {
      name: 'started in gear',
      sheet: {
        body: '## First start\n\n1. Chock the wheels. :state[wheels chocked] :state[unit on-engine]\n2. Leave it in gear. :state[gear drive]\n3. Start the engine. :state[engine running]\n',
      },
      expect: [
        {
          at: '3. Start the engine. :state[engine running]',
          message:
            'the engine is running from here on, with the gear drive; it needs the gear neutral',
          fix: 'before this step, have the gear neutral and mark the step that does it: `:state[gear neutral]`',
        },
      ],
    },
    {
      name: 'nothing said of the throttle',
      sheet: {
        body: '## Pump stroke\n\n1. Measure the travel: :value[pump-stroke].\n',
      },
      expect: [
        {
          at: '1. Measure the travel: :value[pump-stroke].',
          severity: 'note',
          message: '`Pump stroke` needs the throttle shut, and no step so far says so',
          fix: 'mark the step that does it: `:state[throttle shut]`; add one before this step if there is none',
        },
      ],
    },
    {
      name: 'nothing said of the gear',
      sheet: {
        body: '## First start\n\n1. Bolt it down. :state[unit on-engine]\n2. Chock the wheels. :state[wheels chocked]\n3. Start the engine. :state[engine running]\n',
      },
      expect: [
        {
          at: '3. Start the engine. :state[engine running]',
          severity: 'note',
          message:
            'the engine is running from here on; that needs the gear neutral, and no step so far says so',
          fix: 'mark the step that does it: `:state[gear neutral]`; add one before this step if there is none',
        },
      ],
    },
    {
      name: 'an idle speed, and not a word of the engine',
      sheet: {
        body: '## Idle speed\n\n1. Bring it to :value[idle-speed].\n',
        settings: 'idle-speed: { value: 475 rpm, from: m48 p. 41 }',
      },
      expect: [
        {
          at: '1. Bring it to :value[idle-speed].',
          severity: 'note',
          message:
            '`Idle speed` needs the engine running, the engine hot, the gear neutral and the vehicle secured, and no step so far says so',
          fix: 'mark the steps that do it: `:state[engine running]` `:state[engine hot]` `:state[gear neutral]` `:state[vehicle secured]`; add one before this step if there is none',
        },
      ],
    },
    {
      name: 'words that say something else',
      sheet: {
        body: '## Pump stroke\n\n1. Hold the throttle wide open.\n2. Measure the travel: :value[pump-stroke].\n',
      },
      expect: [
        {
          at: '2. Measure the travel: :value[pump-stroke].',
          severity: 'note',
          message:
            '`Pump stroke` needs the throttle shut, and the words “throttle wide open” are read as throttle wide open',
          fix: 'mark the step that brings it there: `:state[throttle shut]`; add one if there is none',
        },
      ],
    },
    {
      name: 'words that say something else at the start',
      sheet: {
        body: '## First start\n\n1. Chock the wheels. :state[wheels chocked] :state[unit on-engine]\n2. Put it in drive.\n3. Start the engine. :state[engine running]\n',
      },
      expect: [
        {
          at: '3. Start the engine. :state[engine running]',
          severity: 'note',
          message:
            'the engine is running from here on; that needs the gear neutral, and the words “in drive” are read as gear drive',
          fix: 'mark the step that brings it there: `:state[gear neutral]`; add one if there is none',
        },
      ],
    },
    {
      name: 'marked in the same step',
      sheet: {
        body: '## Pump stroke\n\n1. With the throttle shut, measure the travel: :value[pump-stroke]. :state[throttle shut]\n',
      },
      expect: [],
    },
    {
      name: 'an inverted cover is off, as the work on the float needs it',
      sheet: {
        body: '## Float alignment\n\n1. Turn the cover over. :state[cover inverted]\n2. Straighten the float until it hangs free.\n',
      },
      expect: [],
    },
  ],
});

/** A need of which no step says anything, either way. */
function isUnsaid({ was, doubtful }: Unmet): boolean {
  return was === null || (doubtful && was.by !== 'reading');
}

function isOneMoment(one: Unmet, two: Unmet): boolean {
  return (
    one.doubtful === two.doubtful &&
    one.at === two.at &&
    one.operation === two.operation &&
    (one.cause === 'operation') === (two.cause === 'operation')
  );
}

/** One finding for everything that a step needs and nothing before it says. */
function unsaidTogether(faults: readonly Unmet[], first: Unmet, kind: Kind): Report<Words> {
  const { cause, operation, at, doubtful } = first;
  const needs = faults.map(
    ({ need }) => `the ${partLabel(kind, need.part)} ${conditionWords(need.anyOf)}`,
  );
  const who =
    cause === 'operation'
      ? `\`${operation.heading.value}\``
      : `the ${partLabel(kind, cause.part)} ${conditionWords([cause.condition])} from here on`;
  const reported: Report<Words> = {
    message: 'unsaidSeveral',
    span: at.span,
    values: {
      who,
      needs: `${needs.slice(0, -1).join(', ')} and ${needs[needs.length - 1]}`,
      marks: faults
        .map(({ need }) => `\`${markFor(kind, need.part, need.anyOf[0] ?? '')}\``)
        .join(' '),
    },
    subject: first.need.part,
    alsoCalled: [
      ...faults.map(({ need }) => need.part),
      ...(operation.known ? [operation.known.name] : []),
    ],
  };
  return doubtful ? { ...reported, severity: 'note' } : reported;
}
