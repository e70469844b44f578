import { rational, readStatement } from '../quantity/index.ts';
import type { Statement } from '../quantity/model.ts';
import type { Setting } from '../sheet/model.ts';
import { defineCheck } from './define.ts';
import { dimensionNoun, readOf } from './stated-sizes.ts';
import { kindOf } from './vocabulary.ts';
import { disparity, workedFrom } from './worked-size.ts';

/** Crank degrees (or crank speed) are twice those of a shaft that turns at half its speed. */
const TWICE = rational(2);

/** A figure at the half-speed shaft and its figure at the crank that are not one to two. */
export default defineCheck({
  id: 'crank-disagrees',
  severity: 'error',
  group: 'sizes',
  summary: 'A figure at the half-speed shaft and the one at the crank are not one to two.',
  explain:
    'In a four-stroke engine the camshaft, and whatever it drives, turns once while the crank turns ' +
    'twice, so degrees and speeds at the crank are twice as many. A sheet that gives both gives one ' +
    'too many, and so proves itself. Figures that only rounding can bring together are a warning: ' +
    'accept it where the source prints both.',
  messages: {
    apart: {
      message: '{first} is {worked} at the crank, but `{key}` says {crank} ({difference})',
      fix: '{fix}',
    },
    limits: {
      message:
        'the {side} limit of {first} is {worked} at the crank, but of `{key}` {crank} it is {difference}',
      fix: 'correct the limits of one of the two',
    },
    unread: {
      message: '`{key}` says {crank}, which is not read as {noun}',
      fix: 'write it as `{of}` is written, with its unit',
    },
  },
  run(sheet, context, report) {
    const kind = kindOf(sheet, context);
    if (!kind) return;
    const { settings, keys } = kind.relations.crank;
    for (const setting of sheet.settings.values()) {
      if (setting.canonical === null || !settings.includes(setting.canonical)) continue;
      for (const [key, crankKey] of keys) {
        const shaft = sizeUnder(setting, key, context);
        const said = setting.said.get(crankKey);
        if (!shaft || !said) continue;
        const reading = readStatement(said.value, {
          gauges: context.gauges,
          expect: [shaft.dimension],
        });
        const subject = setting.canonical;
        if (!reading.ok || reading.statement.dimension !== shaft.dimension) {
          report({
            message: 'unread',
            span: said.span,
            values: {
              key: crankKey,
              crank: said.value,
              noun: dimensionNoun(shaft.dimension),
              of: key,
            },
            subject,
          });
          continue;
        }
        const unit = (shaft.nominal ?? shaft.low?.amount ?? shaft.high?.amount)?.unit;
        if (unit === undefined) continue;
        const worked = workedFrom(shaft, TWICE, shaft.dimension, unit);
        const found = disparity(worked, reading.statement, context.gauges);
        if (!found) continue;
        const otherwise = `correct \`${key}\``;
        const write = `write ${found.worked}, or ${otherwise}`;
        report({
          message: found.kind === 'limits' ? 'limits' : 'apart',
          span: said.span,
          severity: found.kind === 'loose' ? 'warning' : 'error',
          values: {
            first: shaft.text,
            worked: found.worked,
            key: crankKey,
            crank: found.stated,
            difference: found.difference,
            side: found.side,
            fix: found.slip ? `${found.slip}; otherwise ${otherwise}` : write,
          },
          compared: [found.worked, found.stated],
          related: related(setting, key),
          subject,
        });
      }
    }
  },
  examples: [
    {
      name: 'one wrong digit',
      sheet: withAdvance('value: 14° distributor, crank: 38°, speed: 1600 rpm'),
      expect: [
        {
          at: '38°',
          message: '14° distributor is 28° at the crank, but `crank` says 38° (10° more)',
          fix: '28°, if one digit is wrong; otherwise correct `value`',
        },
      ],
    },
    {
      name: 'limits that were not doubled',
      sheet: withAdvance('value: 14 ± 1° distributor, crank: 28 ± 1°, speed: 1600 rpm'),
      expect: [
        {
          at: '28 ± 1°',
          message:
            'the lower limit of 14 ± 1° distributor is 26° at the crank, but of `crank` 28 ± 1° it is 27°',
          fix: 'correct the limits of one of the two',
        },
      ],
    },
    {
      name: 'figures that only rounding can bring together',
      sheet: withAdvance('value: 14° distributor, crank: 27.5°, speed: 1600 rpm'),
      expect: [
        {
          at: '27.5°',
          severity: 'warning',
          message: '14° distributor is 28.0° at the crank, but `crank` says 27.5° (0.5° less)',
          fix: 'write 28.0°, or correct `value`',
        },
      ],
    },
    {
      name: 'a speed of the crank that is no double',
      sheet: withAdvance(
        'value: 14° distributor, crank: 28°, speed: 1600 rpm, crank-speed: 2300 rpm',
      ),
      expect: [
        {
          at: '2300 rpm',
          message:
            '1600 rpm is 3200 rpm at the crank, but `crank-speed` says 2300 rpm (900 rpm less)',
          fix: '3200 rpm, if two digits were swapped; otherwise correct `speed`',
        },
      ],
    },
    {
      name: 'a figure without its unit',
      sheet: withAdvance('value: 14° distributor, crank: 28, speed: 1600 rpm'),
      expect: [
        {
          at: '28',
          message: '`crank` says 28, which is not read as an angle',
          fix: 'write it as `value` is written, with its unit',
        },
      ],
    },
    {
      name: 'twice as many, limits and speed too',
      sheet: withAdvance(
        'value: 14 ± 1° distributor, crank: 28 ± 2°, speed: 1600 rpm, crank-speed: 3200 rpm',
      ),
      expect: [],
    },
    {
      name: 'only the crank is spoken of',
      sheet: withAdvance('value: 28 ± 2° crank, speed: 3200 rpm'),
      expect: [],
    },
  ],
});

/** A unit with an advance, as an example's whole front matter has it. */
function withAdvance(said: string): { readonly front: string } {
  return {
    front: `unit: { kind: ignition-distributor, maker: Orlo, model: K1, features: [four-lobe, single-points, centrifugal-advance] }\nsettings:\n  advance-maximum: { ${said}, from: m48 }`,
  };
}

/** The size under a key of a setting: its value, or one that is only said beside it. */
function sizeUnder(
  setting: Setting,
  key: string,
  context: { readonly gauges: Parameters<typeof readStatement>[1]['gauges'] },
): Statement | null {
  if (key === 'value') return readOf(setting.value);
  const said = setting.said.get(key);
  const reading = said && readStatement(said.value, { gauges: context.gauges });
  return reading?.ok ? reading.statement : null;
}

function related(
  setting: Setting,
  key: string,
): readonly { readonly span: { start: number; end: number }; readonly label: string }[] {
  const span = key === 'value' ? setting.value?.span : setting.said.get(key)?.span;
  return span ? [{ span, label: 'the shaft' }] : [];
}
