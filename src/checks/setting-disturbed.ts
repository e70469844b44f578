import type { Kind, ReasonedNeed } from '../kinds/model.ts';
import { placeToCheck } from '../order/index.ts';
import type { Sheet } from '../sheet/model.ts';
import type { Span } from '../text/index.ts';
import { defineCheck } from './define.ts';
import {
  conditionWords,
  markFor,
  nextStep,
  orderProof,
  orOverrule,
  overruling,
  partLabel,
  stepFor,
} from './order-proof.ts';

const before = {
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
        '`{setting}` is made in `{made}` and moved by `{by}` ({because}), and no step checks it again {before}',
      fix: 'add `{number}. {check}` at the end of `## {by}`{overrule}',
    },
    repeat: {
      message:
        '`{setting}` is made in `{made}` and moved by `{by}` ({because}), and no step checks it again {before}',
      fix: 'do `## {made}` once more after `## {by}`, under a heading of its own, or before it is closed up{overrule}',
    },
    tried: {
      message:
        '`{setting}` is moved by `{by}` ({because}), and is checked again with the {part} {was}; that needs the {part} {need}',
      fix: 'add a step before that check: `{step}`',
    },
    words: {
      message:
        '`{setting}` is moved by `{by}` ({because}), and words speak of it later, but no step prints its figure again {before}',
      fix: 'print it where it is checked: `:value[{setting}]`',
    },
  },
  run(sheet, context, report) {
    const found = orderProof(sheet);
    if (found === null) return;
    const { kind, walk } = found;
    let told = 0;
    for (const fault of found.faults) {
      if (fault.kind !== 'disturbed') continue;
      if (fault.strength === 'usual' && context.usualOrder === false) continue;
      const { setting, madeAt, by, span, tried } = fault;
      const isNamed = told++ < mostSearched && namedAfter(setting, span, sheet, kind);
      const { lacking, isClosed } = placeToCheck(fault, sheet, walk, kind, (part) =>
        walk.steps.some(({ after }) => after.has(part)),
      );
      const rule = overruling([fault], kind);
      const shown = tried
        ? walk.steps.find(({ step }) => step === tried.at)?.after.get(tried.need.part)
        : null;
      report({
        message: tried ? 'tried' : isNamed ? 'words' : isClosed ? 'repeat' : 'disturbed',
        span: tried?.at.span ?? span,
        values: {
          setting,
          because: fault.because,
          made: madeAt.heading.value,
          by: by.heading.value,
          number: nextStep(by),
          before: before[fault.before],
          check: checkStep(setting, lacking, kind),
          overrule: orOverrule(rule),
          part: tried ? partLabel(kind, tried.need.part) : '',
          was:
            tried && shown ? conditionWords(kind, tried.need.part, [shown.condition]) : 'as it is',
          need: tried ? conditionWords(kind, tried.need.part, tried.need.anyOf) : '',
          step: tried ? stepFor(kind, tried.need.part, tried.need.anyOf[0] ?? '') : '',
        },
        suggest: () => {
          if (tried) {
            const step = stepFor(kind, tried.need.part, tried.need.anyOf[0] ?? '');
            return [{ step, where: 'before', at: tried.at.span }];
          }
          return [{ step: checkStep(setting, lacking, kind), where: 'end', at: by.heading.span }];
        },
        related: [{ span: madeAt.heading.span, label: 'made here' }],
        subject: setting,
        alsoCalled: by.known ? [by.known.name] : [],
        severity: isNamed && !tried ? 'note' : fault.weight,
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
            '`metering-rods` is made in `Metering rods` and moved by `Pump stroke, again` (the rods hang on the pump linkage), and no step checks it again before the work ends',
          fix: 'add `3. Check the metering rods again: :value[metering-rods].` at the end of `## Pump stroke, again`; or, where it does not hold on this unit, add under `work:` `pump-stroke: { without: { disturbs: [metering-rods] }, because: ... }`',
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
            '`idle-speed` is moved by `Idle mixture` (speed and mixture move one another, so speed is set again after mixture), and words speak of it later, but no step prints its figure again before the work ends',
          fix: 'print it where it is checked: `:value[idle-speed]`',
        },
      ],
    },
    {
      name: 'the level not checked after the drop, and the cover on',
      sheet: {
        settings: 'float-drop: { value: 1 in, from: m48 p. 31 }',
        body: '## Float level\n\n1. Turn it over and lift the gasket. :state[cover inverted] :state[gasket off]\n2. Measure :value[float-level].\n\n## Float drop\n\n1. Hold it upright. :state[cover upright]\n2. Measure :value[float-drop].\n3. Bend the tab, and put the cover on. :state[gasket on] :state[cover on]\n',
      },
      expect: [
        {
          at: '2. Measure :value[float-drop].',
          message:
            '`float-level` is made in `Float level` and moved by `Float drop` (bending the stop tab may move the arm that carries the level), and no step checks it again before the work ends',
          fix: 'do `## Float level` once more after `## Float drop`, under a heading of its own, or before it is closed up; or, where it does not hold on this unit, add under `work:` `float-drop: { without: { disturbs: [float-level] }, because: ... }`',
        },
      ],
    },
    {
      name: 'checked again with the cover the other way up',
      sheet: {
        settings: 'float-drop: { value: 1 in, from: m48 p. 31 }',
        body: '## Float level\n\n1. Turn it over and lift the gasket. :state[cover inverted] :state[gasket off]\n2. Measure :value[float-level].\n\n## Float drop\n\n1. Hold it upright and bend the tab. :state[cover upright]\n2. Measure :value[float-drop].\n3. Check the level: :value[float-level].\n',
      },
      expect: [
        {
          at: '3. Check the level: :value[float-level].',
          message:
            '`float-level` is moved by `Float drop` (bending the stop tab may move the arm that carries the level), and is checked again with the bowl cover the right way up; that needs the bowl cover inverted',
          fix: 'add a step before that check: `Turn the bowl cover over. :state[cover inverted]`',
        },
      ],
    },
    {
      name: 'spoken of in passing only',
      sheet: {
        settings: 'float-drop: { value: 1 in, from: m48 p. 31 }',
        body: '## Float level\n\n1. Turn it over and lift the gasket. :state[cover inverted] :state[gasket off]\n2. Measure :value[float-level].\n\n## Float drop\n\n1. Hold it upright and bend the tab. :state[cover upright]\n2. Measure :value[float-drop]; do not disturb the level, :value[float-level].\n',
      },
      expect: [
        {
          at: '2. Measure :value[float-drop]; do not disturb the level, :value[float-level].',
          message:
            '`float-level` is made in `Float level` and moved by `Float drop` (bending the stop tab may move the arm that carries the level), and no step checks it again before the work ends',
          fix: 'add `3. With the bowl cover inverted, check the float level again: :value[float-level]. :state[cover inverted]` at the end of `## Float drop`; or, where it does not hold on this unit, add under `work:` `float-drop: { without: { disturbs: [float-level] }, because: ... }`',
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

/** The step that checks a setting again, in the state that it needs. */
function checkStep(setting: string, lacking: readonly ReasonedNeed[], kind: Kind): string {
  const what = (kind.settings.get(setting)?.label ?? setting).toLowerCase();
  if (lacking.length === 0) return `Check the ${what} again: :value[${setting}].`;
  const states = lacking.map(
    ({ part, anyOf }) =>
      `the ${partLabel(kind, part)} ${conditionWords(kind, part, anyOf.slice(0, 1))}`,
  );
  const last = states.pop() ?? '';
  const listed = states.length > 0 ? `${states.join(', ')} and ${last}` : last;
  const marks = lacking.map(({ part, anyOf }) => markFor(kind, part, anyOf[0] ?? ''));
  return `With ${listed}, check the ${what} again: :value[${setting}]. ${marks.join(' ')}`;
}

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
