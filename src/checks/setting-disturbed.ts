import type { Kind } from '../kinds/model.ts';
import type { Sheet } from '../sheet/model.ts';
import type { Span } from '../text/span.ts';
import { defineCheck } from './define.ts';
import { nextStep, orderProof } from './order-proof.ts';

const before = {
  stage: 'before the next stage of the work',
  start: 'before the engine is started',
  end: 'before the work ends',
} as const;

/** The words of a sheet are searched for this many settings at most. */
const mostSearched = 40;

/** A setting that later work moves and that nothing makes or checks again. */
export default defineCheck({
  id: 'setting-disturbed',
  severity: 'warning',
  group: 'order',
  summary: 'A setting is moved after it was made, and not checked again.',
  explain:
    'Bending one lug moves what hangs on it, and nobody notices: the figure was right when it was ' +
    'read. Accept it where this unit is built so that the one does not move the other.',
  messages: {
    disturbed: {
      message:
        '`{setting}` is made in `{made}` and moved by `{by}`, and no step checks it again {before}',
      fix: 'add `{number}. Check again: :value[{setting}].` at the end of `## {by}`',
    },
    words: {
      message:
        '`{setting}` is moved by `{by}`, and words speak of it later, but no step prints its figure again {before}',
      fix: 'print it where it is checked: `:value[{setting}]`',
    },
  },
  run(sheet, _context, report) {
    const found = orderProof(sheet);
    if (found === null) return;
    let told = 0;
    for (const fault of found.faults) {
      if (fault.kind !== 'disturbed') continue;
      const { setting, madeAt, by, span } = fault;
      const isNamed = told++ < mostSearched && namedAfter(setting, span, sheet, found.kind);
      report({
        message: isNamed ? 'words' : 'disturbed',
        span,
        values: {
          setting,
          made: madeAt.heading.value,
          by: by.heading.value,
          number: nextStep(by),
          before: before[fault.before],
        },
        related: [{ span: madeAt.heading.span, label: 'made here' }],
        subject: setting,
        alsoCalled: by.known ? [by.known.name] : [],
        severity: isNamed || fault.doubtful ? 'note' : 'warning',
      });
    }
  },
  examples: [
    {
      name: 'the pump touched again after the rods',
      sheet: {
        front:
          'unit: { kind: carburetor, maker: Orlo, model: F27, features: [single-barrel, downdraft, pump, fast-idle-cam, metering-rods] }',
        settings: 'metering-rods: { value: 2-7/16 in, from: m48 p. 35 }',
        body: '## Pump stroke\n\n1. Let the throttle shut. :state[throttle shut]\n2. Measure :value[pump-stroke].\n\n## Metering rods\n\n1. Keep the throttle shut.\n2. Stand the gauge in the well: :value[metering-rods].\n\n## Pump stroke, again {#pump-stroke}\n\n1. Let the throttle shut. :state[throttle shut]\n2. Measure :value[pump-stroke].\n',
      },
      expect: [
        {
          at: '2. Measure :value[pump-stroke].',
          message:
            '`metering-rods` is made in `Metering rods` and moved by `Pump stroke, again`, and no step checks it again before the work ends',
          fix: 'add `3. Check again: :value[metering-rods].` at the end of `## Pump stroke, again`',
        },
      ],
    },
    {
      name: 'checked again in words only',
      sheet: {
        settings:
          'idle-speed: { value: 475 rpm, from: m48 p. 41 }\nidle-vacuum: { value: 19 inHg, from: m48 p. 41 }',
        body: '## Idle speed\n\n1. Bring it to :value[idle-speed].\n\n## Idle mixture\n\n1. Turn the needle to the highest vacuum: :value[idle-vacuum].\n2. Bring the idle speed back.\n',
      },
      expect: [
        {
          at: '1. Turn the needle to the highest vacuum: :value[idle-vacuum].',
          severity: 'note',
          message:
            '`idle-speed` is moved by `Idle mixture`, and words speak of it later, but no step prints its figure again before the work ends',
          fix: 'print it where it is checked: `:value[idle-speed]`',
        },
      ],
    },
    {
      name: 'checked again',
      sheet: {
        settings:
          'idle-speed: { value: 475 rpm, from: m48 p. 41 }\nidle-vacuum: { value: 19 inHg, from: m48 p. 41 }',
        body: '## Idle speed\n\n1. Bring it to :value[idle-speed].\n\n## Idle mixture\n\n1. Turn the needle to the highest vacuum: :value[idle-vacuum].\n2. Bring the speed back to :value[idle-speed].\n',
      },
      expect: [],
    },
  ],
});

/** Whether the steps behind a place name the setting in words. */
function namedAfter(name: string, { end }: Span, sheet: Sheet, kind: Kind): boolean {
  const setting = kind.settings.get(name);
  if (setting === undefined) return false;
  const names = [name.replaceAll('-', ' '), setting.label, ...setting.aliases]
    // A single word, such as `pump`, names the thing more often than its setting.
    .filter((each) => each.includes(' '))
    .map((each) => each.toLowerCase());
  return sheet.operations.some(({ steps }) =>
    steps.some((step) => {
      if (step.span.start < end) return false;
      const text = sheet.text.slice(step.span.start, step.span.end).toLowerCase();
      return names.some((each) => text.includes(each));
    }),
  );
}
