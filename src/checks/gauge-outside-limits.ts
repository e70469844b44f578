import { goNoGo, inside } from '../gauges/index.ts';
import { findMisprint, saysItsSize, writeIn } from '../quantity/index.ts';
import type { Amount, Gauge, Limit, Statement } from '../quantity/model.ts';
import { defineCheck } from './define.ts';
import { readOf, sizesOfSetting } from './stated-sizes.ts';

/** A gauge whose own size the limits refuse. */
export default defineCheck({
  id: 'gauge-outside-limits',
  severity: 'error',
  group: 'sizes',
  depth: 4,
  summary: 'The gauge is itself outside the limits it should prove.',
  explain:
    'A setting made with it is out of limits by the gauge. A gauge is only usable if its own size ' +
    'lies inside the limits; a go and no-go pair only if both do.',
  messages: {
    below: {
      message: '{gauge} is below {limit}, the lower limit of {value}',
      fix: '{fix}',
    },
    above: {
      message: '{gauge} is above {limit}, the upper limit of {value}',
      fix: '{fix}',
    },
  },
  run(sheet, context, report) {
    for (const setting of sheet.settings.values()) {
      const value = readOf(setting.value);
      if (!value || !setting.value || (!value.low && !value.high)) continue;
      for (const { size, role, subject } of sizesOfSetting(setting)) {
        if (role !== 'gauge' && role !== 'go' && role !== 'no-go') continue;
        const gauge = readOf(size);
        const amount = gauge?.nominal;
        if (!gauge || !amount || gauge.dimension !== value.dimension) continue;
        const side = sideOutside(value, amount);
        if (!side) continue;
        const limit = writeLimit(side === 'below' ? value.low : value.high, value, amount);
        report({
          message: side,
          span: size.span,
          values: {
            gauge: toldFully(gauge.text, amount),
            value: value.text,
            limit,
            fix: remedy(value, amount, context.gauges),
          },
          suggest: () => fittingLabels(value, amount).map((write) => ({ write })),
          compared: [gauge.text, limit],
          related: [{ span: setting.value.span, label: 'the value' }],
          subject,
        });
      }
    }
  },
  examples: [
    {
      name: 'a drill below the lower limit',
      sheet: {
        settings:
          'float-level:\n  value: 13/64 ± 1/128 in\n  at: free end of the float\n  cover: inverted\n  gasket: removed\n  from: m48 p. 31\n  gauge: 3/16 drill',
      },
      expect: [
        {
          at: '3/16 drill',
          message: '3/16 drill, 0.1875 in, is below 0.1953 in, the lower limit of 13/64 ± 1/128 in',
          fix: '13/64 drill, if the next number was taken; otherwise use No. 6 drill or 5.2 mm drill, inside the limits',
        },
      ],
    },
    {
      name: 'a wire above the upper limit',
      sheet: {
        settings: 'fast-idle-gap: { value: 0.018–0.022 in, gauge: 0.024 in wire, from: m48 p. 34 }',
      },
      expect: [
        {
          at: '0.024 in wire',
          message: '0.024 in wire is above 0.0220 in, the upper limit of 0.018–0.022 in',
          fix: 'use 0.020 in wire or 0.50 mm wire, inside the limits',
        },
      ],
    },
    {
      name: 'a no-go gauge past the limit',
      sheet: {
        settings:
          'fast-idle-gap: { value: 0.018–0.022 in, gauge: { go: 0.018 in wire, no-go: 0.023 in wire }, from: m48 p. 34 }',
      },
      expect: [
        {
          at: '0.023 in wire',
          message: '0.023 in wire is above 0.0220 in, the upper limit of 0.018–0.022 in',
          fix: 'use 0.020 in wire or 0.50 mm wire, inside the limits',
        },
      ],
    },
    {
      name: 'limits so close that no gauge fits',
      sheet: {
        settings:
          'fast-idle-gap: { value: 0.0203–0.0204 in, gauge: 0.025 in wire, from: m48 p. 34 }',
      },
      expect: [
        {
          at: '0.025 in wire',
          message: '0.025 in wire is above 0.0204 in, the upper limit of 0.0203–0.0204 in',
          fix: 'no gauge lies within the limits: No. 76 drill is below them, 0.52 mm drill above',
        },
      ],
    },
    {
      name: 'a gauge for a limit on one side',
      sheet: {
        settings: 'unloader: { value: 0.136 in min, gauge: No. 30 drill, from: m48 p. 33 }',
      },
      expect: [
        {
          at: 'No. 30 drill',
          message: 'No. 30 drill, 0.1285 in, is below 0.1360 in, the lower limit of 0.136 in min',
          fix: 'take a gauge inside the limits',
        },
      ],
    },
    {
      name: 'exactly on the limits',
      sheet: {
        settings:
          'float-level:\n  value: 13/64 ± 1/64 in\n  at: free end of the float\n  cover: inverted\n  gasket: removed\n  from: m48 p. 31\n  gauge: 3/16 drill\nfast-idle-gap: { value: 0.018–0.022 in, gauge: { go: 0.018 in wire, no-go: 0.022 in wire }, from: m48 p. 34 }',
      },
      expect: [],
    },
  ],
});

/** A gauge told in decimals may be the limit itself, rounded: then it is on the limit, not outside. */
function sideOutside(value: Statement, gauge: Amount): 'below' | 'above' | null {
  if (value.low && gauge.could.high.compare(value.low.base) < 0) return 'below';
  return value.high && gauge.could.low.compare(value.high.base) > 0 ? 'above' : null;
}

/** A gauge's name with its size, unless the name is the size. */
function toldFully(text: string, amount: Amount): string {
  const named = amount.gauge && !saysItsSize(amount.gauge.system);
  return named
    ? `${text}, ${writeIn(amount.base, 'length', amount.unit, placesFor(amount))},`
    : text;
}

function placesFor(amount: Amount): number {
  return amount.unit === 'in' ? 4 : Math.max(amount.places ?? 2, 2);
}

function writeLimit(limit: Limit | null, value: Statement, beside: Amount): string {
  return limit ? writeIn(limit.base, value.dimension, beside.unit, placesFor(beside)) : '';
}

function remedy(
  value: Statement,
  gauge: Amount,
  gauges: Parameters<typeof findMisprint>[2],
): string {
  const nominal = value.nominal;
  const misprint = nominal ? findMisprint(nominal, gauge, gauges) : null;
  const named = misprint ? `${misprint.suggestion}, if ${misprint.because}; otherwise ` : '';
  if (value.dimension !== 'length' || !value.low || !value.high)
    return `${named}take a gauge inside the limits`;
  const fitting = fittingLabels(value, gauge);
  if (fitting.length === 0) {
    const { reason } = goNoGo(value.low.base, value.high.base);
    return `${named}${reason ?? 'no common gauge lies within the limits'}`;
  }
  const labels = fitting.filter((label) => label !== misprint?.suggestion);
  return labels.length === 0
    ? `${named}look in the source again`
    : `${named}use ${labels.slice(0, 2).join(' or ')}, inside the limits`;
}

/** Gauges inside the limits: of the gauge's own sort where there are any, a drill for a drill. */
/** Gauges of the same sort inside the limits, nearest to the middle first; none for what is no length. */
function fittingLabels(
  { dimension, nominal, low, high }: Statement,
  gauge: Amount,
): readonly string[] {
  if (dimension !== 'length' || !low || !high) return [];
  const center = nominal?.base ?? low.base.add(high.base).div(2);
  return [...fittingGauges(low.base, high.base, gauge)]
    .sort((a, b) => a.mm.sub(center).abs().compare(b.mm.sub(center).abs()))
    .map(({ label }) => label)
    .slice(0, 3);
}

function fittingGauges(low: Amount['base'], high: Amount['base'], gauge: Amount): readonly Gauge[] {
  const all = inside(low, high);
  const sort = (system: string | undefined): string => system?.replace(/^.*-drill$/, 'drill') ?? '';
  const own = all.filter((each) => sort(each.system) === sort(gauge.gauge?.system));
  return own.length > 0 ? own : all;
}
