import { unitsOf } from '../measured/index.ts';
import { citing, isMeasured } from '../sheet/index.ts';

import type { Source } from '../sheet/model.ts';
import { defineCheck } from './define.ts';
import { allOf } from './vocabulary.ts';

/** A figure rests on fewer units than the edition wants measured, and on no paper. */
export default defineCheck({
  id: 'measured-too-few',
  severity: 'warning',
  group: 'provenance',
  summary: 'A figure rests on fewer measured units than the edition asks for.',
  explain:
    'One unit on a bench may have been bent by an earlier owner. `measured-units:` of edition.yaml ' +
    'says how many good units a figure needs that no paper bears out. Accept it, for the source, ' +
    'where no more units are left to be measured.',
  messages: {
    few: {
      message: '{sources} {count}, and the edition asks for {asked}; no paper bears out {settings}',
      fix: 'measure more units, or name a paper that gives the same figure',
    },
    uncounted: {
      message:
        '{sources} does not say how many units were measured, and the edition asks for {asked}',
      fix: 'add `units: ...` to the source',
    },
  },
  run(sheet, { measuredUnits: asked = null }, report) {
    if (asked === null) return;
    const resting = new Map<string, { sources: readonly Source[]; settings: string[] }>();
    for (const { id, from } of citing(sheet)) {
      const names = [...new Set(from.map((each) => each.id))];
      const sources = names.flatMap((each) => sheet.sources.get(each) ?? []);
      if (names.length === 0 || sources.length < names.length) continue;
      if (!sources.every(isMeasured)) continue;
      const key = names.join(' ');
      const entry = resting.get(key) ?? { sources, settings: [] };
      entry.settings.push(id);
      resting.set(key, entry);
    }
    for (const { sources, settings } of resting.values()) {
      const [first] = sources;
      if (first === undefined) continue;
      const uncounted = sources.find((each) => unitsOf(each) === null);
      const units = sources.reduce((sum, each) => sum + (unitsOf(each) ?? 0), 0);
      if (units >= asked) continue;
      const told = uncounted ?? first;
      const named = allOf((uncounted ? [uncounted] : sources).map(({ name }) => name.value));
      report({
        message: uncounted ? 'uncounted' : 'few',
        span: (uncounted ? uncounted.name : (first.units ?? first.name)).span,
        values: {
          sources: named,
          count: `${sources.length === 1 ? 'is' : 'are'} ${units === 1 ? '1 unit' : `${units} units`}`,
          asked: String(asked),
          settings: allOf(settings),
        },
        subject: told.name.value,
        alsoCalled: settings,
      });
    }
  },
  examples: [
    {
      name: 'two units where the edition asks for three',
      sheet: {
        front:
          'sources:\n  m48: { title: Workshop Manual, kind: manual, year: 1948 }\n  bench: { title: Two good units, kind: measured, units: 2 }',
        settings:
          'idle-mixture: { value: 1-1/4 turns out, from: bench }\npump-stroke: { value: 7/16 in, link: middle hole, from: [m48 p. 34, bench] }',
      },
      expect: [
        {
          at: '2',
          message:
            '`bench` is 2 units, and the edition asks for 3; no paper bears out `idle-mixture`',
          fix: 'measure more units, or name a paper that gives the same figure',
        },
      ],
    },
    {
      name: 'nobody says how many',
      sheet: {
        front:
          'sources:\n  m48: { title: Workshop Manual }\n  bench: { title: Good units, kind: measured }',
        settings: 'idle-mixture: { value: 1-1/4 turns out, from: bench }',
      },
      expect: [
        {
          at: 'bench',
          message: '`bench` does not say how many units were measured, and the edition asks for 3',
          fix: 'add `units: ...` to the source',
        },
      ],
    },
    {
      name: 'just as many as asked, also when two members measured them',
      sheet: {
        front:
          'sources:\n  m48: { title: Workshop Manual }\n  bench: { title: Good units, kind: measured, units: 3 }\n  one: { title: A unit, kind: measured, units: 1 }\n  two: { title: Two more, kind: measured, units: 2 }',
        settings:
          'idle-mixture: { value: 1-1/4 turns out, from: bench }\npump-stroke: { value: 7/16 in, link: middle hole, from: [one, two] }',
      },
      expect: [],
    },
  ],
});
