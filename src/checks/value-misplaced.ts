import type { Kind } from '../kinds/model.ts';
import { sameFamily } from '../quantity/index.ts';
import { settingNamed } from '../sheet/index.ts';
import type { Operation, Setting, Sheet, ValueUse } from '../sheet/model.ts';
import { defineCheck } from './define.ts';
import { settingsNamed } from './prose-names.ts';
import { sentenceAround } from './prose-sentence.ts';
import { readOf } from './stated-sizes.ts';

/** `:value[float-drop]` in a step of the float level: the right mark in the wrong place, or the wrong mark. */
export default defineCheck({
  id: 'value-misplaced',
  severity: 'warning',
  group: 'prose',
  depth: 7,
  summary: 'A step prints a setting that another operation makes.',
  explain:
    'The restorer sets what the step prints. A mark that slipped under another heading prints a true ' +
    'figure for the wrong thing. Accept it where the step really works by the other setting, or name ' +
    'that setting in its sentence.',
  messages: {
    instead: {
      message: '`{name}` is printed where `{own}` is made, and nothing here prints `{own}`',
      fix: 'write `:value[{own}]`, or name {label} in the sentence if it is meant',
      suggest: [{ write: ':value[{own}]' }],
    },
    beside: {
      message:
        '`{name}` is printed where `{own}` is made, beside it and without a word of what it is',
      fix: 'write `:value[{own}]`, or name {label} in the sentence if it is meant',
      suggest: [{ write: ':value[{own}]' }],
    },
    away: {
      message: '`{name}` is printed under {heading}, and not where it is made, under {home}',
      fix: 'move the step under {home}, or put `:value[{name}]` into a step there',
    },
  },
  run(sheet, _context, report) {
    const { kind } = sheet;
    if (kind === null) return;
    for (const use of sheet.values) {
      const operation = use.operation === null ? undefined : sheet.operations[use.operation];
      const { setting } = use;
      if (!operation || !setting?.known) continue;
      const makers = makersOf(kind).get(setting.known.name) ?? new Set<string>();
      const stage = operation.known?.stage ?? 'any';
      if (makers.size === 0 || makers.has(operation.known?.name ?? '')) continue;
      if (operation.known !== null && stage === 'any') continue;
      if (!inStep(use, operation) || isNamed(use, operation, setting, sheet)) continue;
      const home = sheet.operations.find(({ known }) => makers.has(known?.name ?? ''));
      // Where its own heading is missing or misnamed, that is the root and has its finding.
      if (home === undefined) continue;
      const own = ownOf(operation, setting, sheet);
      const name = setting.name.value;
      const label = setting.known.label.toLowerCase();
      const subject = setting.known.name;
      if (own !== null) {
        const printed = isPrinted(own, sheet, ({ known }) => known?.name === operation.known?.name);
        // Running speeds are set against one another; on the bench every figure has its own step.
        if (printed && stage !== 'bench' && stage !== 'before-start') continue;
        // Who bends for the drop measures the level again: the one may move the other.
        if (printed && [...makers].some((each) => areBound(each, operation, kind))) continue;
        report({
          message: printed ? 'beside' : 'instead',
          span: use.span,
          values: { name, own: own.name.value, label },
          related: [{ span: own.name.span, label: 'the setting made here' }],
          // The setting whose mark gave way is printed nowhere, and that follows.
          suspects: [use.span, own.name.span],
          subject,
        });
        continue;
      }
      const isAtHome = isPrinted(setting, sheet, ({ known }) => makers.has(known?.name ?? ''));
      if (isAtHome || makesOthers(home, setting, sheet)) continue;
      const quoted = (text: string): string => `“${text}”`;
      report({
        message: 'away',
        span: use.span,
        values: {
          name,
          heading: quoted(operation.heading.value),
          home: quoted(home.heading.value),
        },
        related: [{ span: home.heading.span, label: 'where it is made' }],
        suggest: () => [
          { step: `Set and measure: :value[${name}].`, where: 'end', at: home.heading.span },
        ],
        suspects: [use.span, setting.name.span],
        subject,
      });
    }
  },
  examples: [
    {
      name: 'the pump stroke where the float level is made',
      sheet: {
        body: '## Float level\n\n1. Pass the gauge under the free end: :value[pump-stroke].\n\n## Pump stroke\n\n1. Measure it: :value[pump-stroke].\n',
      },
      expect: [
        {
          at: ':value[pump-stroke]',
          message:
            '`pump-stroke` is printed where `float-level` is made, and nothing here prints `float-level`',
          fix: 'write `:value[float-level]`, or name pump stroke in the sentence if it is meant',
        },
      ],
    },
    {
      name: 'both of them, and no word of the second',
      sheet: {
        body: '## Float level\n\n1. Pass the gauge under the free end: :value[float-level].\n2. Bend the arm to :value[pump-stroke].\n\n## Pump stroke\n\n1. Measure it: :value[pump-stroke].\n',
      },
      expect: [
        {
          at: ':value[pump-stroke]',
          message:
            '`pump-stroke` is printed where `float-level` is made, beside it and without a word of what it is',
          fix: 'write `:value[float-level]`, or name pump stroke in the sentence if it is meant',
        },
      ],
    },
    {
      name: 'under a heading that makes nothing, and missing under its own',
      sheet: {
        body: '## Cleaning\n\n1. Wash the bowl, and set :value[float-level].\n\n## Float level\n\n1. Bend the arm until it just drags.\n',
      },
      expect: [
        {
          at: ':value[float-level]',
          message:
            '`float-level` is printed under “Cleaning”, and not where it is made, under “Float level”',
          fix: 'move the step under “Float level”, or put `:value[float-level]` into a step there',
        },
      ],
    },
    {
      name: 'what the work of the heading disturbs, measured again',
      sheet: {
        settings:
          'float-drop: { value: 3/4 in, at: free end of the float, cover: upright, gasket: removed, from: m48 p. 31 }',
        body: '## Float level\n\n1. Pass the gauge: :value[float-level].\n\n## Float drop\n\n1. Let it hang: :value[float-drop].\n2. Turn the cover over, and see that :value[float-level] still passes.\n',
      },
      expect: [],
    },
    {
      name: 'a seat gauged while stripping, where the jets are gauged later',
      sheet: {
        settings:
          'inlet-seat: { value: 0.080 in, from: m48 p. 31 }\nmain-jet: { value: 0.052 in, from: m48 p. 31 }',
        body: '## Strip and inspect\n\n1. Gauge the seat: :value[inlet-seat].\n\n## Jets\n\n1. Gauge them: :value[main-jet].\n',
      },
      expect: [],
    },
    {
      name: 'named in its sentence, listed in a table, and printed where it is made',
      sheet: {
        body: '## Settings\n\n| what | size |\n| --- | --- |\n| Stroke | :value[pump-stroke] |\n\n## Float level\n\n1. Pass the gauge: :value[float-level].\n2. The pump stroke of :value[pump-stroke] is made after it.\n\n## Pump stroke\n\n1. Measure it: :value[pump-stroke].\n',
      },
      expect: [],
    },
  ],
});

/** The operations that make each setting, by the kind. */
function makersOf(kind: Kind): ReadonlyMap<string, ReadonlySet<string>> {
  const made = new Map<string, Set<string>>();
  for (const { name, settings } of kind.operations.values())
    for (const each of settings) made.set(each, (made.get(each) ?? new Set()).add(name));
  return made;
}

function inStep(use: ValueUse, { steps }: Operation): boolean {
  return steps.some(({ span }) => span.start <= use.span.start && use.span.end <= span.end);
}

/** Whether the sentence of a mark, or its heading, says in words which setting it prints. */
function isNamed(use: ValueUse, operation: Operation, setting: Setting, sheet: Sheet): boolean {
  const step = operation.steps.find(
    ({ span }) => span.start <= use.span.start && use.span.end <= span.end,
  );
  const sentence = sentenceAround(sheet.text, step?.span ?? operation.span, use.span);
  const heading = { before: operation.heading.value, after: '' };
  return [sentence, heading].some((words) => settingsNamed(words, sheet).includes(setting));
}

/** The setting of the same measure that an operation makes itself; null where it makes none. */
function ownOf(operation: Operation, setting: Setting, sheet: Sheet): Setting | null {
  const made = operation.known?.settings ?? [];
  const given = made.flatMap((name) => settingNamed(name, sheet) ?? []);
  const measure = readOf(setting.value)?.dimension;
  return (
    given.find((own) => {
      const dimension = readOf(own.value)?.dimension;
      return measure !== undefined && dimension !== undefined && sameFamily(dimension, measure);
    }) ?? null
  );
}

/** Whether one of two operations disturbs what the other makes. */
function areBound(maker: string, { known }: Operation, kind: Kind): boolean {
  if (known === null) return false;
  const disturbs = kind.operations.get(maker)?.disturbs ?? [];
  return (
    known.disturbs.some(({ name }) => name === maker) ||
    disturbs.some(({ name }) => name === known.name)
  );
}

/**
 * Whether an operation prints other settings of its own: jets and seats are gauged wherever they come
 * to hand, and one that is gauged elsewhere leaves no gap there.
 */
function makesOthers(home: Operation, setting: Setting, sheet: Sheet): boolean {
  const made = home.known?.settings ?? [];
  return made.some((name) => {
    const other = settingNamed(name, sheet);
    return other !== null && other !== setting && isPrinted(other, sheet, (one) => one === home);
  });
}

function isPrinted(
  setting: Setting,
  sheet: Sheet,
  where: (operation: Operation) => boolean,
): boolean {
  return sheet.values.some((use) => {
    const operation = use.operation === null ? undefined : sheet.operations[use.operation];
    return operation && where(operation) && use.setting === setting;
  });
}
