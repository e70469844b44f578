import type { Thread } from '../gauges/index.ts';
import { thread } from '../gauges/index.ts';
import type { Kind } from '../kinds/model.ts';
import { differenceText, findMisprint, unitById, writeIn } from '../quantity/index.ts';
import type { Amount } from '../quantity/model.ts';
import type { Setting, Sheet } from '../sheet/model.ts';
import { defineCheck } from './define.ts';
import { kindSetting, readOf } from './stated-sizes.ts';
import { kindOf } from './vocabulary.ts';

/** Turns, thread and travel that do not go together. */
export default defineCheck({
  id: 'travel-disagrees',
  severity: 'error',
  group: 'sizes',
  summary: 'The turns of a screw on its thread do not come to the travel that is stated.',
  explain:
    'Travel is turns times pitch. A sheet that gives turns, thread and travel gives one too many, and ' +
    'so proves itself. Where they part, one of the three is a misprint.',
  messages: {
    apart: {
      message: '{turns} of {thread} is {worked}, but `travel` says {travel} ({difference})',
      fix: '{fix}',
    },
  },
  run(sheet, context, report) {
    const kind = kindOf(sheet, context);
    for (const setting of sheet.settings.values()) {
      const turns = readOf(setting.value)?.nominal;
      const travel = readOf(setting.travel);
      if (!turns || !travel?.nominal || !setting.travel || !setting.value) continue;
      if (unitById(turns.unit).dimension !== 'turns' || travel.dimension !== 'length') continue;
      const named = threadOf(setting, sheet, kind);
      if (!named) continue;
      const worked = workedTravel(turns, named.thread, travel.nominal);
      // The turns are as fine as they are stated: the travel is right anywhere in between.
      const overlap =
        worked.could.low.compare(travel.nominal.could.high) <= 0 &&
        travel.nominal.could.low.compare(worked.could.high) <= 0;
      if (overlap) continue;
      const misprint = findMisprint(worked, travel.nominal, context.gauges);
      const places = travel.nominal.unit === 'in' ? 4 : 3;
      const workedText = writeIn(worked.base, 'length', travel.nominal.unit, places);
      const otherwise = 'correct the turns or the thread';
      report({
        message: 'apart',
        span: setting.travel.span,
        values: {
          turns: /\p{L}/u.test(turns.text) ? turns.text : `${turns.text} ${turns.unit}s`,
          thread: named.text,
          worked: workedText,
          travel: travel.text,
          difference: differenceText(worked, travel.nominal, travel),
          fix: misprint
            ? `${misprint.suggestion}, if ${misprint.because}; otherwise ${otherwise}`
            : `write ${workedText}, or ${otherwise}`,
        },
        compared: [workedText, travel.text],
        related: [
          { span: setting.value.span, label: 'the turns' },
          { span: named.span, label: 'the thread' },
        ],
        subject: setting.canonical ?? setting.name.value,
      });
    }
  },
  examples: [
    {
      name: 'two digits swapped',
      sheet: {
        front:
          'unit:\n  kind: carburetor\n  maker: Orlo\n  model: 1A\n  features: [single-barrel, downdraft, pump]\n  idle-needle-thread: 10-32 UNF',
        settings: 'idle-mixture: { value: 1-1/4 turns out, travel: 0.093 in, from: m48 p. 40 }',
      },
      expect: [
        {
          at: '0.093 in',
          message:
            '1-1/4 turns of 10-32 UNF is 0.0391 in, but `travel` says 0.093 in (0.054 in more)',
          fix: '0.039 in, if two digits were swapped; otherwise correct the turns or the thread',
        },
      ],
    },
    {
      name: 'turns and travel that no one slip explains',
      sheet: {
        front:
          'unit:\n  kind: carburetor\n  maker: Orlo\n  model: 1A\n  features: [single-barrel, downdraft, pump]\n  stop-screw-thread: 2 BA',
        settings:
          'idle-stop: { value: 1-1/2 turns in after contact, travel: 2 mm, from: m48 p. 40 }',
      },
      expect: [
        {
          at: '2 mm',
          message: '1-1/2 turns of 2 BA is 1.215 mm, but `travel` says 2 mm (0.79 mm more)',
          fix: 'write 1.215 mm, or correct the turns or the thread',
        },
      ],
    },
    {
      name: 'flats of a jet nut',
      sheet: {
        front:
          'unit:\n  kind: carburetor\n  maker: Orlo\n  model: 1A\n  features: [single-barrel, side-draft, constant-depression, adjustable-jet]\n  jet-nut-thread: 1/4 BSF',
        settings: 'jet-height: { value: 9 flats down, travel: 1.628 mm, from: m48 p. 40 }',
      },
      expect: [
        {
          at: '1.628 mm',
          message: '9 flats of 1/4 BSF is 1.465 mm, but `travel` says 1.628 mm (0.16 mm more)',
          fix: 'write 1.465 mm, or correct the turns or the thread',
        },
      ],
    },
    {
      name: 'a screw that names its own thread',
      sheet: {
        settings:
          'dashpot: { value: 3 turns in, thread: 8-32 UNC, travel: 0.0983 in, from: m48 p. 41 }',
      },
      expect: [
        {
          at: '0.0983 in',
          message: '3 turns of 8-32 UNC is 0.0938 in, but `travel` says 0.0983 in (0.005 in more)',
          fix: '0.0938 in, if two digits were swapped; otherwise correct the turns or the thread',
        },
      ],
    },
    {
      name: 'travel to the places it is stated in',
      sheet: {
        front:
          'unit:\n  kind: carburetor\n  maker: Orlo\n  model: 1A\n  features: [single-barrel, downdraft, pump]\n  idle-needle-thread: 10-32 UNF',
        settings: 'idle-mixture: { value: 1-1/4 turns out, travel: 0.039 in, from: m48 p. 40 }',
      },
      expect: [],
    },
    {
      name: 'no thread is named, so nothing can be proved',
      sheet: {
        settings: 'idle-mixture: { value: 1-1/4 turns out, travel: 0.093 in, from: m48 p. 40 }',
      },
      expect: [],
    },
  ],
});

interface NamedThread {
  readonly thread: Thread;
  readonly text: string;
  readonly span: { readonly start: number; readonly end: number };
}

/** The thread of a setting's screw: its own `thread:`, else the unit's that the kind names for it. */
function threadOf(setting: Setting, sheet: Sheet, kind: Kind | null): NamedThread | null {
  const own = setting.said.get('thread');
  const named = own ?? sheet.unit.threads.get(kindSetting(setting, kind)?.thread ?? '');
  const found = named ? thread(named.value) : null;
  return named && found ? { thread: found, text: named.value, span: named.span } : null;
}

function workedTravel(turns: Amount, screw: Thread, as: Amount): Amount {
  const by = (count: Amount['base']): Amount['base'] => count.mul(screw.pitchMm);
  const unit = unitById(as.unit);
  return {
    ...as,
    base: by(turns.base),
    could: { low: by(turns.could.low), high: by(turns.could.high) },
    number: by(turns.base).div(unit.factor),
    places: null,
    style: 'fraction',
    gauge: null,
  };
}
