import { defineCheck } from './define.ts';

/** A table where one figure belongs, or one figure where a table does. */
export default defineCheck({
  id: 'table-misplaced',
  severity: 'error',
  group: 'sizes',
  depth: 2,
  summary: 'A setting of one figure has a table, or a curve has none.',
  explain:
    'The kind says which settings are tables of figures by station. A table elsewhere says of several things ' +
    'that they are one; one figure in place of a table does not say at which station it holds.',
  messages: {
    table: {
      message: '`{setting}` is one figure, and has a table of {rows} rows',
      fix: 'write `value:` in place of `table:`, or {curves}',
    },
    figure: {
      message: '`{setting}` is a table by {against}, and has the one figure {value}',
      fix: 'write `table:` with a row for each {against} that the source has: `at:` and `value:`',
    },
  },
  run(sheet, _context, report) {
    const { kind } = sheet;
    if (kind === null) return;
    for (const setting of sheet.settings.values()) {
      const { known, rows, value, name } = setting;
      if (known === null) continue;
      const isCurve = known.curve !== null;
      if (rows.length > 0 && !isCurve) {
        const curves = [...kind.settings.values()].filter(({ curve }) => curve !== null);
        const names = curves.map((each) => `\`${each.name}\``).join(', ');
        report({
          message: 'table',
          span: name.span,
          values: {
            setting: name.value,
            rows: String(rows.length),
            curves:
              names === '' ? 'leave the rows out' : `put it under one that is a table: ${names}`,
          },
          subject: setting.id,
        });
      } else if (isCurve && rows.length === 0 && value !== null) {
        report({
          message: 'figure',
          span: value.span,
          values: { setting: name.value, value: value.text, against: known.curve?.label ?? '' },
          subject: setting.id,
        });
      }
    }
  },
  examples: [
    {
      name: 'a table of a pump',
      sheet: {
        settings:
          'pump-curve:\n  table:\n    - { at: 1/8 in, value: 0.5 cm3 }\n    - { at: 1/4 in, value: 0.8 cm3 }\n  from: m48 p. 35',
      },
      expect: [],
    },
    {
      name: 'a table of a float level',
      sheet: {
        settings:
          'float-level:\n  table:\n    - { at: 1/8 in, value: 13/64 in }\n    - { at: 1/4 in, value: 15/64 in }\n  at: free end of the float\n  cover: inverted\n  gasket: removed\n  from: m48 p. 31',
      },
      expect: [
        {
          at: 'float-level',
          message: '`float-level` is one figure, and has a table of 2 rows',
          fix: 'write `value:` in place of `table:`, or put it under one that is a table: `pump-curve`, `needle-profile`',
        },
      ],
    },
    {
      name: 'one figure of a needle',
      sheet: { settings: 'needle-profile: { value: 0.0815 in, from: m48 p. 35 }' },
      expect: [
        {
          at: '0.0815 in',
          message: '`needle-profile` is a table by station, and has the one figure 0.0815 in',
          fix: 'write `table:` with a row for each station that the source has: `at:` and `value:`',
        },
      ],
    },
  ],
});
