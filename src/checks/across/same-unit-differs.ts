import { defineAcrossCheck } from './define.ts';
import { counterpart, type SheetFacts } from './facts.ts';
import { figuresDiffer } from './figures-differ.ts';
import { fitsOverlap, isSameUnit, modelKey, partKey } from './same-unit.ts';

/** Two sheets of one unit for one car and year that state a setting differently. */
export default defineAcrossCheck({
  id: 'same-unit-differs',
  severity: 'warning',
  group: 'across',
  summary: 'Two sheets of one unit, for the same vehicle and years, state a setting differently.',
  explain:
    'Both sheets are for the unit in the vise, and they cannot both be followed. Either one figure is ' +
    'wrong, or the sheets are for different parts, cars or years and do not say so. Units are the ' +
    'same that share a part number, or a maker and model where a sheet names no part number. Accept it, on ' +
    'either sheet, where two papers are printed side by side on purpose.',
  messages: {
    differs: {
      message: '{setting} is {own} here and {theirs} on `{other}`, for the same unit{difference}',
      fix: 'correct one of the two, or say in `part-numbers:` or `fits:` how the units differ',
    },
  },
  run(sheets, context, report) {
    const differ = figuresDiffer(context);
    const earlier = new Map<string, SheetFacts[]>();
    for (const sheet of sheets) {
      const met = new Set<SheetFacts>();
      const model = modelKey(sheet);
      const keys = sheet.partNumbers.map((number) => partKey(sheet, number));
      if (model !== null) keys.push(`model ${model}`);
      for (const key of keys) {
        const known = earlier.get(key);
        for (const other of known ?? []) met.add(other);
        if (known) known.push(sheet);
        else earlier.set(key, [sheet]);
      }
      met.delete(sheet);
      const same = [...met].filter((each) => isSameUnit(each, sheet) && fitsOverlap(each, sheet));
      const kind = context.kinds.get(sheet.kind ?? '');
      for (const figure of same.length === 0 ? [] : sheet.figures) {
        const own = { sheet, figure };
        for (const other of same) {
          const theirs = counterpart(figure, other);
          const difference = theirs ? differ(own, { sheet: other, figure: theirs }) : null;
          if (theirs === undefined || difference === null) continue;
          const label = kind?.settings.get(figure.name)?.label ?? `\`${figure.name}\``;
          report({
            message: 'differs',
            sheet,
            at: figure.at,
            others: [{ sheet: other, at: theirs.at, label: 'stated there' }],
            values: {
              setting: figure.place === null ? label : `${label}, ${figure.place},`,
              own: figure.text,
              theirs: theirs.text,
              other: other.id,
              difference,
            },
            compared: [figure.text, theirs.text],
            subject: figure.name,
          });
          break;
        }
      }
    }
  },
  examples: [
    {
      name: 'two sheets of one carburetor, one year in common',
      sheets: {
        'orlo-f27': { settings: 'idle-mixture: { value: 1-1/4 turns out, from: m48 p. 40 }' },
        'orlo-f27-late': {
          front: 'fits: [{ marque: Wexcombe, model: Four, years: 1949-1952 }]',
          settings: 'idle-mixture: { value: 1-3/4 turns out, from: m48 p. 40 }',
        },
      },
      expect: [
        {
          in: 'orlo-f27-late',
          at: '1-3/4 turns out',
          message:
            'Idle mixture baseline is 1-3/4 turns out here and 1-1/4 turns out on `orlo-f27`, for the same unit (1/2 turn less there)',
          fix: 'correct one of the two, or say in `part-numbers:` or `fits:` how the units differ',
          see: [['orlo-f27', '1-1/4 turns out']],
        },
      ],
    },
    {
      name: 'the same figure with other limits',
      sheets: {
        'orlo-f27': {
          settings: 'idle-mixture: { value: 1-1/4 ± 1/4 turns out, from: m48 p. 40 }',
        },
        'orlo-f27-late': {
          settings: 'idle-mixture: { value: 1-1/4 ± 1/2 turns out, from: m48 p. 40 }',
        },
      },
      expect: [
        {
          in: 'orlo-f27-late',
          at: '1-1/4 ± 1/2 turns out',
          message:
            'Idle mixture baseline is 1-1/4 ± 1/2 turns out here and 1-1/4 ± 1/4 turns out on `orlo-f27`, for the same unit (with other limits there)',
          fix: 'correct one of the two, or say in `part-numbers:` or `fits:` how the units differ',
          see: [['orlo-f27', '1-1/4 ± 1/4 turns out']],
        },
      ],
    },
    {
      name: 'one size written in two ways, and the years that follow',
      sheets: {
        'orlo-f27': {
          settings: 'pump-stroke: { value: 7/16 in, link: middle hole, from: m48 p. 34 }',
        },
        'orlo-f27-metric': {
          settings: 'pump-stroke: { value: 11.11 mm, link: middle hole, from: m48 p. 34 }',
        },
        'orlo-f27-late': {
          front: 'fits: [{ marque: Wexcombe, model: Four, years: 1950-1952 }]',
          settings: 'idle-mixture: { value: 1-3/4 turns out, from: m48 p. 40 }',
        },
      },
      expect: [],
    },
  ],
});
