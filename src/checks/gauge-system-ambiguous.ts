import { agree, principal } from '../quantity/index.ts';
import { defineCheck } from './define.ts';
import { readOf, sizesOfSetting } from './stated-sizes.ts';

/** `22 SWG` where the letters could be imperial or US steel wire gauge. */
export default defineCheck({
  id: 'gauge-system-ambiguous',
  severity: 'warning',
  group: 'sizes',
  summary: 'A wire gauge is named by letters that two systems share.',
  explain:
    'SWG stands for the imperial standard wire gauge and for US steel wire gauge, and the two differ ' +
    '(No. 28 is .0148 in and .0162 in). Another statement of the same setting settles it; so does ' +
    '`wire-gauge: imperial` on the sheet or in the edition.',
  messages: {
    either: {
      message: '{text} could be imperial, {imperial}, or US steel wire, {other}',
      fix: 'write `{text} imperial`, or say `wire-gauge: imperial` for the whole sheet or edition',
    },
  },
  run(sheet, context, report) {
    for (const setting of sheet.figures) {
      for (const { size, subject } of sizesOfSetting(setting)) {
        const statement = readOf(size);
        const other = statement?.ambiguous[0];
        const amount = statement ? principal(statement) : null;
        if (!statement || !other || !amount) continue;
        const settled = [...sizesOfSetting(setting)].some((each) => {
          const beside = each.size === size ? null : readOf(each.size);
          if (!beside || beside.ambiguous.length > 0) return false;
          const { verdict } = agree(beside, statement, { gauges: context.gauges });
          return verdict === 'same' || verdict === 'agrees' || verdict === 'chopped';
        });
        if (settled) continue;
        const inches = (mm: typeof other.mm): string =>
          `${mm.div(25.4).toString().replace(/^0/, '')} in`;
        report({
          message: 'either',
          span: size.span,
          suggest: () => [
            ...(amount.gauge ? [{ write: amount.gauge.label }] : []),
            { write: other.label },
            { under: ['wire-gauge'], as: 'imperial' },
            { under: ['wire-gauge'], as: 'us-steel' },
          ],
          values: { text: statement.text, imperial: inches(amount.base), other: inches(other.mm) },
          subject,
        });
      }
    }
  },
  examples: [
    {
      name: 'SWG of which country',
      sheet: { settings: 'fast-idle-gap: { value: 28 SWG, from: m48 p. 34 }' },
      expect: [
        {
          at: '28 SWG',
          message: '28 SWG could be imperial, .0148 in, or US steel wire, .0162 in',
          fix: 'write `28 SWG imperial`, or say `wire-gauge: imperial` for the whole sheet or edition',
        },
      ],
    },
    {
      name: 'settled by another statement',
      sheet: { settings: 'fast-idle-gap: { value: 28 SWG, also: [0.0148 in], from: m48 p. 34 }' },
      expect: [],
    },
    {
      name: 'settled by the sheet',
      sheet: {
        front: 'wire-gauge: us-steel',
        settings: 'fast-idle-gap: { value: 28 SWG, from: m48 p. 34 }',
      },
      expect: [],
    },
    {
      name: 'said on the spot',
      sheet: { settings: 'fast-idle-gap: { value: 28 SWG imperial, from: m48 p. 34 }' },
      expect: [],
    },
  ],
});
