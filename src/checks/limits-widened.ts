import { agreeLimits, convertLimits } from '../quantity/index.ts';
import type { Statement } from '../quantity/model.ts';
import { inMeasureOf } from '../sheet/index.ts';
import type { Setting, Sheet } from '../sheet/model.ts';
import { defineCheck } from './define.ts';
import { readOf } from './stated-sizes.ts';

/** Limits restated in another unit that let through what the value refuses. */
export default defineCheck({
  id: 'limits-widened',
  severity: 'warning',
  group: 'sizes',
  depth: 4,
  summary: 'Converted limits let through a part that the original limits refuse.',
  explain:
    'A limit that is converted and rounded to the nearest can move outward. A restorer who works by ' +
    'the second figure then passes a setting that the source refuses. Round the lower limit up and ' +
    'the upper one down, or say `rounding: ordinary` on the setting or the sheet if the ordinary ' +
    'rounding is meant.',
  messages: {
    low: {
      message: '`also` {second} starts at {there}, but `value` {first} starts at {here}',
      fix: 'write {inward}, rounded inward, or say `rounding: ordinary`',
      suggest: [{ write: '{inward}' }, { say: 'rounding', as: 'ordinary' }],
    },
    high: {
      message: '`also` {second} goes up to {there}, but `value` {first} stops at {here}',
      fix: 'write {inward}, rounded inward, or say `rounding: ordinary`',
      suggest: [{ write: '{inward}' }, { say: 'rounding', as: 'ordinary' }],
    },
  },
  run(sheet, _context, report) {
    for (const setting of sheet.figures) {
      const value = readOf(setting.value);
      if (!value || !setting.value || isOrdinary(setting, sheet)) continue;
      for (const size of setting.also) {
        const also = readOf(size);
        if (also?.dimension !== value.dimension) continue;
        const own = inMeasureOf(value, also.text, setting);
        const limits = agreeLimits(own, also);
        if (limits.verdict !== 'widened') continue;
        report({
          message: limits.side,
          span: size.span,
          values: {
            first: value.text,
            second: also.text,
            here: limits.first,
            there: limits.second,
            inward: inwardText(own, also),
          },
          compared: [limits.first, limits.second],
          related: [{ span: setting.value.span, label: 'the value' }],
          subject: setting.id,
        });
      }
    }
  },
  examples: [
    {
      name: 'the lower limit rounded down',
      sheet: {
        settings: 'float-drop: { value: 11.0 ± 0.3 mm, also: [.421–.444 in], from: m48 p. 31 }',
      },
      expect: [
        {
          at: '.421–.444 in',
          message:
            '`also` .421–.444 in starts at 0.4210 in, but `value` 11.0 ± 0.3 mm starts at 0.4213 in',
          fix: 'write 0.422–0.444 in, rounded inward, or say `rounding: ordinary`',
        },
      ],
    },
    {
      name: 'the upper limit rounded up',
      sheet: {
        settings: 'float-drop: { value: 11.0 ± 0.3 mm, also: [.422–.445 in], from: m48 p. 31 }',
      },
      expect: [
        {
          at: '.422–.445 in',
          message:
            '`also` .422–.445 in goes up to 0.4450 in, but `value` 11.0 ± 0.3 mm stops at 0.4449 in',
          fix: 'write 0.422–0.444 in, rounded inward, or say `rounding: ordinary`',
        },
      ],
    },
    {
      name: 'rounded inward',
      sheet: {
        settings: 'float-drop: { value: 11.0 ± 0.3 mm, also: [.422–.444 in], from: m48 p. 31 }',
      },
      expect: [],
    },
    {
      name: 'exactly the same limits',
      sheet: {
        settings:
          'float-drop: { value: 0.750 ± 0.010 in, also: [18.796–19.304 mm], from: m48 p. 31 }',
      },
      expect: [],
    },
    {
      name: 'the ordinary rounding, and said so',
      sheet: {
        settings:
          'float-drop: { value: 11.0 ± 0.3 mm, also: [.421–.445 in], rounding: ordinary, from: m48 p. 31 }',
      },
      expect: [],
    },
  ],
});

function isOrdinary(setting: Setting, sheet: Sheet): boolean {
  return (setting.rounding ?? sheet.rounding)?.value === 'ordinary';
}

/** The value's limits in the other statement's unit and places, rounded inward; one more place where none fit. */
function inwardText(value: Statement, also: Statement): string {
  const amount = also.low?.amount ?? also.high?.amount ?? also.nominal;
  const places = amount?.places ?? 3;
  for (let more = 0; more < 3; more++) {
    const converted = convertLimits(value, amount?.unit ?? 'mm', {
      places: places + more,
      rounding: 'inward',
    });
    if (converted.ok) return converted.text;
  }
  return value.text;
}
