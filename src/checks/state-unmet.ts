import type { Kind } from '../kinds/model.ts';
import type { OrderFault } from '../order/model.ts';
import { operationIn } from '../sheet/index.ts';
import type { Sheet } from '../sheet/model.ts';
import type { Span } from '../text/index.ts';
import { type Cure, defineCheck, type Report } from './define.ts';
import { conditionWords, markFor, orderProof, partLabel, saying, stepFor } from './order-proof.ts';

type Words =
  | 'measured'
  | 'done'
  | 'into'
  | 'unsaid'
  | 'unsaidInto'
  | 'unsaidSeveral'
  | 'read'
  | 'readInto'
  | 'hearsay'
  | 'usual'
  | 'usualEnd';

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
      message:
        '`{operation}` is measured here with the {part} {was}; it needs the {part} {need}: {because}',
      fix: 'add a step before this one: `{step}`; or put that mark at the step that does it',
    },
    done: {
      message: '`{operation}` ends with the {part} {was}; it needs the {part} {need}: {because}',
      fix: 'add a step before its last one: `{step}`; or put that mark at the step that does it',
    },
    into: {
      message:
        'the {cause} is {causeIs} from here on, with the {part} {was}; it needs the {part} {need}: {because}',
      fix: 'add a step before this one: `{step}`; or put that mark at the step that does it',
    },
    unsaid: {
      message: '`{operation}` needs the {part} {need}, and {nobody}: {because}',
      fix: 'mark the step that does it, or add one before this: `{step}`',
    },
    unsaidInto: {
      message:
        'the {cause} is {causeIs} from here on; that needs the {part} {need}, and {nobody}: {because}',
      fix: 'mark the step that does it, or add one before this: `{step}`',
    },
    unsaidSeveral: {
      message: '{who} needs {needs}, and {nobody}',
      fix: 'mark the steps that do it, or add them before this: {steps}',
    },
    read: {
      message: '`{operation}` needs the {part} {need}, and {saying} read as {part} {was}',
      fix: 'mark the step that brings it there: `{mark}`; add one if there is none',
    },
    readInto: {
      message:
        'the {cause} is {causeIs} from here on; that needs the {part} {need}, and {saying} read as {part} {was}',
      fix: 'mark the step that brings it there: `{mark}`; add one if there is none',
    },
    hearsay: {
      message: '{who} needs the {part} {need}; only {saying} so, and the last mark leaves it {was}',
      fix: 'put the mark at the step that does it: `{mark}`; add that step if it is not there',
    },
    usualEnd: {
      message: '`{operation}` usually ends with the {part} {need}, and not {was}: {because}',
      fix: 'add a step before this one: `{step}`; or leave it, if this paper does otherwise',
    },
    usual: {
      message: '`{operation}` is usually done with the {part} {need}, and not {was}: {because}',
      fix: 'add a step before this one: `{step}`; or leave it, if this paper does otherwise',
    },
  },
  run(sheet, context, report) {
    const found = orderProof(sheet);
    if (found === null) return;
    const { kind, faults } = found;
    const unmet = faults.filter(
      (fault): fault is Unmet =>
        fault.kind === 'unmet' && (fault.need.strength !== 'usual' || context.usualOrder !== false),
    );
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
      const read = fault.onlySaid ?? (was?.by === 'reading' ? was.span : null);
      const values: Record<string, string> = {
        operation: operation.heading.value,
        part,
        was: was ? conditionWords(kind, need.part, [was.condition]) : '',
        need: conditionWords(kind, need.part, need.anyOf),
        because: need.because,
        nobody: nobodySays([fault]),
        step: stepFor(kind, need.part, need.anyOf[0] ?? ''),
        mark: markFor(kind, need.part, need.anyOf[0] ?? ''),
        who:
          cause === 'operation'
            ? `\`${operation.heading.value}\``
            : `the ${partLabel(kind, cause.part)} ${conditionWords(kind, cause.part, [cause.condition])} from here on`,
        cause: cause === 'operation' ? '' : partLabel(kind, cause.part),
        causeIs: cause === 'operation' ? '' : conditionWords(kind, cause.part, [cause.condition]),
        saying: read ? sayingThat(read, sheet, Boolean(fault.onlySaid)) : '',
      };
      const byCause = cause !== 'operation';
      let message: Words;
      if (need.strength === 'usual') message = bringsAbout(fault, kind) ? 'usualEnd' : 'usual';
      else if (fault.onlySaid) message = 'hearsay';
      else if (read) message = byCause ? 'readInto' : 'read';
      else if (doubtful || was === null) message = byCause ? 'unsaidInto' : 'unsaid';
      else if (byCause) message = 'into';
      else message = operationIn(kind, operation)?.settings.length ? 'measured' : 'done';
      const reported: Report<Words> = {
        message,
        span: at.span,
        values,
        subject: need.part,
        alsoCalled: operation.known ? [operation.known.name] : [],
        suggest: () => bringing([fault], kind),
        related: was?.span
          ? [
              {
                span: was.span,
                label: `the ${part} ${conditionWords(kind, need.part, [was.condition])}`,
              },
            ]
          : [],
      };
      report({ ...reported, severity: fault.weight });
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
            '`Pump stroke` is measured here with the throttle held by the fast idle cam; it needs the throttle shut: the stroke is counted from the shut plate',
          fix: 'add a step before this one: `Let the throttle shut fully. :state[throttle shut]`; or put that mark at the step that does it',
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
            '`Float level` is measured here with the cover gasket on; it needs the cover gasket off: the setting says `gasket: removed`',
          fix: 'add a step before this one: `Lift away the cover gasket. :state[cover-gasket off]`; or put that mark at the step that does it',
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
          message:
            '`Idle speed` is measured here with the engine cold; it needs the engine hot: a cold engine runs at another speed and on another mixture',
          fix: 'add a step before this one: `Run the engine until it is hot. :state[engine hot]`; or put that mark at the step that does it',
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
          message:
            '`Assembly` ends with the bowl cover inverted; it needs the bowl cover on: this closes the unit',
          fix: 'add a step before its last one: `Put the bowl cover on. :state[cover on]`; or put that mark at the step that does it',
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
            'the engine is running from here on, with the gear in drive; it needs the gear in neutral: an engine that is started in gear moves the vehicle',
          fix: 'add a step before this one: `Put the gear in neutral. :state[gear neutral]`; or put that mark at the step that does it',
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
          message:
            '`Pump stroke` needs the throttle shut, and nothing on this sheet that is understood speaks of it: the stroke is counted from the shut plate',
          fix: 'mark the step that does it, or add one before this: `Let the throttle shut fully. :state[throttle shut]`',
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
            'the engine is running from here on; that needs the gear in neutral, and nothing on this sheet that is understood speaks of it: an engine that is started in gear moves the vehicle',
          fix: 'mark the step that does it, or add one before this: `Put the gear in neutral. :state[gear neutral]`',
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
            '`Idle speed` needs the engine running and the engine hot, and nothing on this sheet that is understood speaks of it',
          fix: 'mark the steps that do it, or add them before this: `Start the engine. :state[engine running]` `Run the engine until it is hot. :state[engine hot]`',
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
            'the engine is running from here on; that needs the gear in neutral, and the words “in drive” are read as gear in drive',
          fix: 'mark the step that brings it there: `:state[gear neutral]`; add one if there is none',
        },
      ],
    },
    {
      name: 'custom only: the rods left in for the dip',
      sheet: {
        front:
          'unit: { kind: carburetor, maker: Orlo, model: F27, features: [single-barrel, downdraft, pump, metering-rods] }',
        body: '## Strip\n\n1. Take off the cover and its gasket. :state[unit on-bench] :state[cover off] :state[gasket off]\n\n## Cleaning\n\n1. Blow the passages through.\n\n## Metering rods\n\n1. Draw them out. :state[rods out]\n',
      },
      expect: [
        {
          at: '1. Blow the passages through.',
          severity: 'note',
          message:
            '`Cleaning` is usually done with the metering rods out of their jets, and not in their jets: the jets are blown through from both sides',
          fix: 'add a step before this one: `Draw the metering rods out of their jets. :state[rods out]`; or leave it, if this paper does otherwise',
        },
        {
          at: '1. Draw them out. :state[rods out]',
          severity: 'warning',
          message:
            '`Metering rods` needs the throttle shut, and nothing on this sheet that is understood speaks of it: the rods stand lowest with the throttle shut',
          fix: 'mark the step that does it, or add one before this: `Let the throttle shut fully. :state[throttle shut]`',
        },
      ],
    },
    {
      name: 'the engine left running by what stops it',
      sheet: {
        front:
          'unit: { kind: ignition-distributor, maker: Brennick, model: B12, features: [single-breaker] }',
        body: '## First start\n\n1. Chock the wheels. :state[wheels chocked] :state[gear neutral]\n2. Start the engine. :state[engine running]\n\n## Shutting down\n\n1. Lay the leads aside.\n',
      },
      expect: [
        {
          at: '1. Lay the leads aside.',
          severity: 'note',
          message:
            '`Shutting down` usually ends with the engine stopped, and not running: this stops it',
          fix: 'add a step before this one: `Stop the engine. :state[engine stopped]`; or leave it, if this paper does otherwise',
        },
      ],
    },
    {
      name: 'on the engine by its heading alone, on a sheet that marks its work',
      sheet: {
        body: '## Strip and inspect\n\n1. Take it to the bench. :state[unit on-bench]\n2. Take off the cover. :state[cover off]\n3. Put it back. :state[cover on]\n\n## Installation\n\n1. Turn on the fuel.\n\n## First start\n\n1. Chock the wheels. :state[wheels chocked] :state[gear neutral]\n2. Start the engine. :state[engine running]\n',
      },
      expect: [
        {
          at: '2. Start the engine. :state[engine running]',
          severity: 'warning',
          message:
            'the engine running from here on needs the unit on the engine; only the heading `Installation` says so, and the last mark leaves it on the bench',
          fix: 'put the mark at the step that does it: `:state[unit on-engine]`; add that step if it is not there',
        },
      ],
    },
    {
      name: 'hot by words alone, on a sheet that marks its work',
      sheet: {
        settings: 'idle-speed: { value: 475 rpm, from: m48 p. 41 }',
        body: '## First start\n\n1. Chock the wheels. :state[wheels chocked] :state[gear neutral]\n2. Start the engine. :state[unit on-engine] :state[engine running]\n\n## Idle speed\n\n1. Run it until hot.\n2. Bring it to :value[idle-speed].\n3. Let it cool. :state[engine cold]\n',
      },
      expect: [
        {
          at: '2. Bring it to :value[idle-speed].',
          severity: 'warning',
          message:
            '`Idle speed` needs the engine hot; only the words “until hot” say so, and the last mark leaves it cold',
          fix: 'put the mark at the step that does it: `:state[engine hot]`; add that step if it is not there',
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
function isUnsaid({ was, doubtful, need, onlySaid }: Unmet): boolean {
  if (need.strength === 'usual' || onlySaid) return false;
  return was === null || (doubtful && was.by !== 'reading');
}

/** Whether an operation itself brings about what it needs, by the steps that its kind gives it. */
/** The words that say so marked, where only they do; or steps more that bring it about. */
function bringing(faults: readonly Unmet[], kind: Kind): readonly Cure[] {
  const marked = faults.flatMap(({ need, onlySaid, was }): Cure[] => {
    const said = onlySaid ?? (was?.by === 'reading' ? was.span : null);
    const mark = markFor(kind, need.part, need.anyOf[0] ?? '');
    return said === null ? [] : [{ mark, at: said }];
  });
  const steps = faults.map(({ need }) => stepFor(kind, need.part, need.anyOf[0] ?? ''));
  const at = faults[0]?.at.span;
  return at === undefined ? marked : [...marked, { step: steps.join(' '), where: 'before', at }];
}

function bringsAbout({ need, cause, operation }: Unmet, kind: Kind): boolean {
  if (cause !== 'operation') return false;
  const known = operationIn(kind, operation);
  const marks = need.anyOf.map((each) => markFor(kind, need.part, each));
  return known?.steps.some((step) => marks.some((mark) => step.includes(mark))) ?? false;
}

/** The end of what says or is read as a state: `the words “off its cam” say`, `the heading ... is`. */
function sayingThat(span: Span, sheet: Sheet, alone: boolean): string {
  const { what, isHeading } = saying(span, sheet);
  if (alone) return `${what} ${isHeading ? 'says' : 'say'}`;
  return `${what} ${isHeading ? 'is' : 'are'}`;
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
  const { cause, operation, at, weight } = first;
  const needs = faults.map(
    ({ need }) =>
      `the ${partLabel(kind, need.part)} ${conditionWords(kind, need.part, need.anyOf)}`,
  );
  const who =
    cause === 'operation'
      ? `\`${operation.heading.value}\``
      : `the ${partLabel(kind, cause.part)} ${conditionWords(kind, cause.part, [cause.condition])} from here on`;
  const reported: Report<Words> = {
    message: 'unsaidSeveral',
    span: at.span,
    values: {
      who,
      nobody: nobodySays(faults),
      needs: `${needs.slice(0, -1).join(', ')} and ${needs[needs.length - 1]}`,
      steps: faults
        .map(({ need }) => `\`${stepFor(kind, need.part, need.anyOf[0] ?? '')}\``)
        .join(' '),
    },
    subject: first.need.part,
    suggest: () => bringing(faults, kind),
    alsoCalled: [
      ...faults.map(({ need }) => need.part),
      ...(operation.known ? [operation.known.name] : []),
    ],
  };
  return { ...reported, severity: weight };
}

/** What is told of a state that nothing says: words that are not understood may well say it. */
function nobodySays(faults: readonly Unmet[]): string {
  return faults.some(({ unheard }) => unheard)
    ? 'nothing on this sheet that is understood speaks of it'
    : 'no step so far says so';
}
