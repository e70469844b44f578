import { settingNamed } from '../sheet/index.ts';
import { bench } from './bench-example.ts';
import { defineCheck } from './define.ts';
import { nearest, settingNames } from './vocabulary.ts';

/** Readings of what the sheet has no figure for, or of a record that is not there. */
export default defineCheck({
  id: 'measured-unknown',
  severity: 'error',
  group: 'provenance',
  summary: 'Readings are of no setting of the sheet, or of a bench record that there is not.',
  explain:
    'Such readings are held against nothing. A setting that the kind knows and the sheet does not state is ' +
    'a note: somebody measured it, and the sheet could say it.',
  messages: {
    near: {
      message: '`{source}` has readings of `{setting}`, and the sheet has no such setting',
      fix: 'write `{near}:`',
      suggest: [{ write: '{near}' }],
    },
    unknown: {
      message: '`{source}` has readings of `{setting}`, and the sheet has no such setting',
      fix: 'state the setting with its figure, or take the readings out',
    },
    record: {
      message:
        '`{source}` counts the bench record `{record}`, and there is none of that name in `sheets/records/`',
      fix: 'correct the name, or take it out of `records:`',
    },
  },
  run(sheet, { records = null }, report) {
    for (const { name: source, readings, records: named } of sheet.sources.values()) {
      for (const { name, id, known } of readings) {
        if (settingNamed(name.value, sheet) ?? settingNamed(id, sheet)) continue;
        const near = known ? null : nearest(name.value, settingNames(sheet));
        const values = { source: source.value, setting: name.value };
        const subject = source.value;
        const place = { span: name.span, subject, alsoCalled: [name.value] };
        if (near !== null) report({ message: 'near', values: { ...values, near }, ...place });
        else report({ message: 'unknown', values, severity: known ? 'note' : 'error', ...place });
      }
      if (records === null) continue;
      for (const { name, file } of named) {
        if (file !== null) continue;
        const values = { source: source.value, record: name.value };
        report({ message: 'record', span: name.span, values, subject: source.value });
      }
    }
  },
  examples: [
    {
      name: 'two letters changed about',
      sheet: { front: bench(2, 'pump-storke: [0.437 in, 0.438 in]') },
      expect: [
        {
          at: 'pump-storke',
          message: '`bench` has readings of `pump-storke`, and the sheet has no such setting',
          fix: 'write `pump-stroke:`',
        },
      ],
    },
    {
      name: 'what the kind knows and the sheet does not state',
      sheet: { front: bench(2, 'idle-vacuum: [18.1 inHg, 18.4 inHg]') },
      expect: [
        {
          at: 'idle-vacuum',
          severity: 'note',
          message: '`bench` has readings of `idle-vacuum`, and the sheet has no such setting',
          fix: 'state the setting with its figure, or take the readings out',
        },
      ],
    },
    {
      name: 'a record that nobody wrote',
      sheet: {
        front:
          'sources:\n  m48: { title: Workshop Manual }\n  bench: { title: Units, kind: measured, records: [1250] }',
      },
      expect: [
        {
          at: '1250',
          message:
            '`bench` counts the bench record `1250`, and there is none of that name in `sheets/records/`',
          fix: 'correct the name, or take it out of `records:`',
        },
      ],
    },
    {
      name: 'readings of a setting by another of its names',
      sheet: { front: bench(2, 'Pump stroke: [0.437 in, 0.438 in]') },
      expect: [],
    },
  ],
});
