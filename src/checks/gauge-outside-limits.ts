import { goNoGo, inside } from '../gauges/index.ts';
import { findMisprint, writeIn } from '../quantity/index.ts';
import type { Amount, Limit, Statement } from '../quantity/model.ts';
import { defineCheck } from './define.ts';
import { readOf, sizesOfSetting } from './stated-sizes.ts';

/** A gauge whose own size the limits refuse. */
export default defineCheck({
  id: 'gauge-outside-limits',
  severity: 'error',
  group: 'sizes',
  summary: 'The gauge is itself outside the limits it should prove.',
  explain:
    'A setting made with it is out of limits by the gauge. A gauge is only usable if its own size ' +
    'lies inside the limits; a go and no-go pair only if both do.',
  messages: {
    below: {
      message: '{gauge} is {size}, below the lower limit of {value}, {limit}',
      fix: '{fix}',
    },
    above: {
      message: '{gauge} is {size}, above the upper limit of {value}, {limit}',
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
            gauge: gauge.text,
            size: writeIn(amount.base, gauge.dimension, amount.unit, placesFor(amount)),
            value: value.text,
            limit,
            fix: remedy(value, amount, context.gauges),
          },
          compared: [gauge.text, limit],
          related: [{ span: setting.value.span, label: 'the value' }],
          subject,
        });
      }
    }
  },
  examples: [],
});

/** A gauge told in decimals may be the limit itself, rounded: then it is on the limit, not outside. */
function sideOutside(value: Statement, gauge: Amount): 'below' | 'above' | null {
  if (value.low && gauge.could.high.compare(value.low.base) < 0) return 'below';
  return value.high && gauge.could.low.compare(value.high.base) > 0 ? 'above' : null;
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
  const fitting = inside(value.low.base, value.high.base);
  if (fitting.length === 0) {
    const pair = goNoGo(value.low.base, value.high.base);
    return `${named}no common gauge lies inside the limits${pair.reason ? ` (${pair.reason})` : ''}`;
  }
  const centre = nominal?.base ?? value.low.base.add(value.high.base).div(2);
  const nearest = [...fitting].sort((a, b) =>
    a.mm.sub(centre).abs().compare(b.mm.sub(centre).abs()),
  );
  return `${named}use ${nearest
    .slice(0, 2)
    .map((each) => each.label)
    .join(' or ')}, inside the limits`;
}
