import { nearest } from '../gauges/index.ts';
import { compareAmounts, differenceText, findMisprint, isNamedBySize } from '../quantity/index.ts';
import type { Amount, GaugeBook } from '../quantity/model.ts';
import { defineCheck } from './define.ts';
import { readOf } from './stated-sizes.ts';

/** A gauge inside the limits that is not the nearest of its own system to the nominal. */
export default defineCheck({
  id: 'gauge-off-nominal',
  severity: 'note',
  group: 'sizes',
  depth: 4,
  summary: 'The gauge is inside the limits, but another of its kind is nearer to the nominal.',
  explain:
    'Working with it takes up part of the tolerance before the setting is made. It may be the gauge ' +
    'that the club owns; it may as well be a misprint of the nearer one.',
  messages: {
    off: {
      message: '{gauge} is {difference} than {value}, though {nearer} is nearer',
      fix: 'use {nearer}, or leave it where the source names this gauge',
      suggest: [{ write: '{nearer}' }],
    },
  },
  run(sheet, context, report) {
    for (const setting of sheet.settings.values()) {
      const value = readOf(setting.value);
      const gauge = readOf(setting.gauge);
      if (!setting.value || !setting.gauge || !value?.nominal || !gauge?.nominal) continue;
      if (!value.low || !value.high || gauge.dimension !== value.dimension) continue;
      const amount = gauge.nominal;
      const verdict = compareAmounts(value.nominal, amount);
      if (verdict !== 'apart' && verdict !== 'loose') continue;
      if (amount.base.compare(value.low.base) < 0 || amount.base.compare(value.high.base) > 0)
        continue;
      const nearer = nearerOf(value.nominal, amount, context.gauges);
      if (!nearer) continue;
      report({
        message: 'off',
        span: setting.gauge.span,
        values: {
          gauge: gauge.text,
          value: value.text,
          difference: differenceText(value.nominal, amount, gauge),
          nearer,
        },
        compared: [value.text, gauge.text],
        related: [{ span: setting.value.span, label: 'the value' }],
        subject: setting.id,
      });
    }
  },
  examples: [
    {
      name: 'the next drill but one',
      sheet: {
        settings:
          'float-level:\n  value: 13/64 ± 1/64 in\n  at: free end of the float\n  cover: inverted\n  gasket: removed\n  from: m48 p. 31\n  gauge: 7/32 drill',
      },
      expect: [
        {
          at: '7/32 drill',
          message: '7/32 drill is 0.016 in more than 13/64 ± 1/64 in, though 13/64 drill is nearer',
          fix: 'use 13/64 drill, or leave it where the source names this gauge',
        },
      ],
    },
    {
      name: 'a number drill beside its neighbor',
      sheet: {
        settings: 'unloader: { value: 0.136 ± 0.010 in, gauge: No. 30 drill, from: m48 p. 33 }',
      },
      expect: [
        {
          at: 'No. 30 drill',
          message:
            'No. 30 drill is 0.008 in less than 0.136 ± 0.010 in, though No. 29 drill is nearer',
          fix: 'use No. 29 drill, or leave it where the source names this gauge',
        },
      ],
    },
    {
      name: 'two digits of a wire swapped',
      sheet: {
        settings:
          'fast-idle-gap: { value: 0.056 ± 0.010 in, gauge: 0.065 in wire, from: m48 p. 34 }',
      },
      expect: [
        {
          at: '0.065 in wire',
          message:
            '0.065 in wire is 0.009 in more than 0.056 ± 0.010 in, though 0.056 in wire is nearer',
          fix: 'use 0.056 in wire, or leave it where the source names this gauge',
        },
      ],
    },
    {
      name: 'the nearest of its kind',
      sheet: {
        settings: 'unloader: { value: 0.1370 ± 0.0050 in, gauge: No. 29 drill, from: m48 p. 33 }',
      },
      expect: [],
    },
  ],
});

/** A gauge of the same system nearer to the nominal; null where the chosen one is the nearest. */
function nearerOf(nominal: Amount, chosen: Amount, gauges: GaugeBook): string | null {
  const gauge = chosen.gauge;
  if (!gauge) return null;
  if (isNamedBySize(gauge.system)) {
    return findMisprint(nominal, chosen, gauges)?.suggestion ?? null;
  }
  const off = chosen.base.sub(nominal.base).abs();
  const { below, exact, above } = nearest(nominal.base, [gauge.system]);
  const near = [...exact, below, above].filter((each) => each !== null);
  const better = near.find((each) => each.mm.sub(nominal.base).abs().compare(off) < 0);
  return better?.label ?? null;
}
