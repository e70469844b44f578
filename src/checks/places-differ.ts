import { agree } from '../quantity/index.ts';
import { defineCheck } from './define.ts';
import { readOf } from './stated-sizes.ts';

/** Two barrels or two places with different baselines, and nobody says that it is meant. */
export default defineCheck({
  id: 'places-differ',
  severity: 'warning',
  group: 'sizes',
  depth: 4,
  summary: 'Two barrels or places are given different settings without a word.',
  explain:
    'A baseline is the same on every barrel unless the source says otherwise. Where it does, say ' +
    '`places-differ:` with the reason; it prints beside the setting. Where it does not, one of the ' +
    'two is a misprint.',
  messages: {
    between: {
      message:
        '{name} is {first} at `{place}` and {second} at `{other}`, and nothing says that they differ on purpose',
      fix: 'make them equal, or add `places-differ:` with the reason',
      suggest: [{ say: 'places-differ', as: null }],
    },
    value: {
      message:
        '{name} is {first} by its value and {second} at `{other}`, and nothing says that they differ on purpose',
      fix: 'make them equal, or add `places-differ:` with the reason',
      suggest: [{ say: 'places-differ', as: null }],
    },
  },
  run(sheet, context, report) {
    for (const setting of sheet.settings.values()) {
      if (setting.places.size === 0 || setting.placesDiffer) continue;
      const all = [...setting.places].map(([place, size]) => ({
        place,
        size,
        statement: readOf(size),
      }));
      const value = readOf(setting.value);
      const base =
        value && setting.value
          ? { place: null, size: setting.value, statement: value }
          : all.shift();
      if (!base?.statement) continue;
      for (const { place, size, statement } of all) {
        if (!statement) continue;
        const { verdict } = agree(base.statement, statement, { gauges: context.gauges });
        if (verdict !== 'disagrees' && verdict !== 'within-tolerance') continue;
        const values = {
          name: setting.name.value,
          first: base.statement.text,
          second: statement.text,
          other: place,
        };
        report({
          message: base.place === null ? 'value' : 'between',
          span: size.span,
          values: base.place === null ? values : { ...values, place: base.place },
          compared: [base.statement.text, statement.text],
          suggest: () => [{ write: base.size.text }, { write: size.text, at: base.size.span }],
          related: [
            { span: base.size.span, label: base.place === null ? 'the value' : `at ${base.place}` },
          ],
          subject: setting.id,
        });
      }
    }
  },
  examples: [
    {
      name: 'two barrels, and nothing said',
      sheet: {
        settings:
          'idle-mixture: { places: { left: 1-1/4 turns out, right: 1-1/2 turns out }, from: m48 p. 40 }',
      },
      expect: [
        {
          at: '1-1/2 turns out',
          message:
            'idle-mixture is 1-1/4 turns out at `left` and 1-1/2 turns out at `right`, and nothing says that they differ on purpose',
          fix: 'make them equal, or add `places-differ:` with the reason',
        },
      ],
    },
    {
      name: 'a place against the value',
      sheet: {
        settings:
          'idle-mixture: { value: 1-1/4 turns out, places: { rear: 1-1/2 turns out }, from: m48 p. 40 }',
      },
      expect: [
        {
          at: '1-1/2 turns out',
          message:
            'idle-mixture is 1-1/4 turns out by its value and 1-1/2 turns out at `rear`, and nothing says that they differ on purpose',
          fix: 'make them equal, or add `places-differ:` with the reason',
        },
      ],
    },
    {
      name: 'said, with the reason',
      sheet: {
        settings:
          'main-jet: { places: { primary: 0.050 in, secondary: 0.067 in }, places-differ: the secondary has no rod, from: m48 p. 28 }',
      },
      expect: [],
    },
    {
      name: 'the same, written two ways',
      sheet: {
        settings: 'main-jet: { places: { left: 0.0400 in, right: No. 60 drill }, from: m48 p. 28 }',
      },
      expect: [],
    },
  ],
});
