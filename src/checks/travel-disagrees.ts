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
          turns: turns.text,
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
  examples: [],
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
