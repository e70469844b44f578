import { distance } from 'fastest-levenshtein';
import { type Thread, threads } from '../gauges/index.ts';
import type { GaugeBook } from '../quantity/model.ts';
import { threadVerdict, type WorkedNumbers } from '../relations/index.ts';
import type { Span } from '../text/index.ts';

/** A thread that may have been meant, as a paper would write it. */
export interface LikelyThread {
  readonly text: string;
  readonly thread: Thread;
  /** Whether turns and travel on the sheet come out with it. */
  readonly isBorneOut: boolean;
}

/**
 * The threads that a name may be a slip of: first those that the turns and travel of the sheet bear
 * out, then those of the same series and diameter, then by how few signs differ. Threads that share
 * neither diameter nor pitch are none. At most three.
 */
export function likelyThreads(
  text: string,
  span: Span,
  numbers: WorkedNumbers,
  gauges: GaugeBook,
): readonly LikelyThread[] {
  const wanted = shapeOf(text);
  if (!wanted) return [];
  return threads()
    .flatMap((thread) => {
      const is = shapeOf(written(thread));
      if (!is || is.system !== wanted.system) return [];
      const isSameSize = is.size === wanted.size;
      const near = distance(is.size, wanted.size) === 1 && is.size.length === wanted.size.length;
      if (!isSameSize && !(near && (is.pitch === wanted.pitch || is.system === 'ba'))) return [];
      const verdict = threadVerdict(numbers, span, thread.pitchMm, gauges);
      if (verdict === 'refuted') return [];
      const isBorneOut = verdict === 'borne-out';
      const isSeries = wanted.series === null || wanted.series === is.series;
      const isAlike = is.pitch.replace(/[.0]/g, '') === wanted.pitch.replace(/[.0]/g, '');
      const ranks = [!isBorneOut, !isSameSize, !isSeries, !isAlike].map(Number);
      const off = Math.abs(Number(is.pitch) - Number(wanted.pitch || is.pitch));
      // `M6` is how a coarse pitch is mostly written; it is told where the slip told one.
      const told = wanted.pitch === '' ? thread.name : written(thread);
      return [{ text: told, thread, isBorneOut, ranks: [...ranks, off] }];
    })
    .sort((one, two) => inOrder(one.ranks, two.ranks))
    .slice(0, 3)
    .map(({ text: told, thread, isBorneOut }) => ({ text: told, thread, isBorneOut }));
}

function inOrder(one: readonly number[], two: readonly number[]): number {
  const at = one.findIndex((rank, i) => rank !== two[i]);
  return at < 0 ? 0 : (one[at] ?? 0) - (two[at] ?? 0);
}

/** A thread with its pitch, which `M6` leaves unsaid. */
function written({ name, series, pitchMm }: Thread): string {
  return series === 'ISO coarse' ? `${name} x ${pitchMm.toString()}` : name;
}

interface Shape {
  readonly system: 'inch' | 'metric' | 'ba';
  readonly size: string;
  /** Threads an inch, or mm; empty where none is told. */
  readonly pitch: string;
  /** Null where it is not told, or no series of the tables. */
  readonly series: string | null;
}

/** What a name of a thread is made of, known or not: `10-33 UNF`, `M6 x 1.5`, `15 BA`. */
function shapeOf(text: string): Shape | null {
  const plain = text
    .trim()
    .replace(/(?<=[a-z])\.(?!\d)/gi, '')
    .replace(/^(?:no\.?|#) ?/i, '');
  const metric = /^m ?(\d{1,2}(?:[.,]\d)?)(?: ?[x×*-] ?(\d{0,2}(?:[.,]\d{1,3})?))?/i.exec(plain);
  if (metric) {
    const pitch = (metric[2] ?? '').replace(',', '.').replace(/^\./, '0.');
    return { system: 'metric', size: metric[1] ?? '', pitch, series: null };
  }
  const association = /^(\d{1,2}) ?ba\b/i.exec(plain);
  if (association) return { system: 'ba', size: association[1] ?? '', pitch: '', series: null };
  const inch =
    /^(\d{1,2}(?:\/\d{1,2})?)(?: ?(?:in|"))?[ x×-]+(?:(\d{1,3})\b)?(?: ?tpi)?[ -]*([a-z]+)?/i.exec(
      plain,
    );
  if (!inch) return null;
  const letters = (inch[3] ?? '').toUpperCase();
  const series = /^N(?:C|F|EF)$/.test(letters) ? `U${letters}` : letters;
  return {
    system: 'inch',
    size: inch[1] ?? '',
    pitch: inch[2] ?? '',
    series: SERIES.has(series) ? series : series === 'WHITWORTH' ? 'BSW' : null,
  };
}

const SERIES: ReadonlySet<string> = new Set(threads().map(({ series }) => series));
