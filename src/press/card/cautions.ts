import type { SignalWord } from '../../kinds/model.ts';
import { typesetWords } from '../lettering/index.ts';
import { type SafetyLine, type SheetBody, signalOrder } from '../matter/index.ts';

/** A caution at the head of the card. */
export interface CardCaution {
  readonly signal: SignalWord;
  /** `WARNING`. */
  readonly word: string;
  /** Whether the alert symbol stands with it: not for NOTICE. */
  readonly alert: boolean;
  /** HTML. */
  readonly html: string;
  /**
   * The hazard's name and how to avoid it, as HTML, for a card that is short of room; the whole where
   * the kind has no such words, or no fewer.
   */
  readonly short: string;
}

/**
 * The sheet's own messages, in falling order of harm, and the kind's words for a hazard that the work
 * meets and the sheet says nothing of.
 */
export function cardCautions(body: SheetBody, usual: readonly SafetyLine[]): CardCaution[] {
  const found = new Map<string, CardCaution>();
  const covered = new Set<string>();
  const add = (signal: SignalWord, html: string, lines: readonly SafetyLine[]) => {
    const word = signal.toUpperCase();
    const short = lines.map(({ label, avoid }) => typesetWords(`${label}: ${avoid}`)).join(' ');
    found.set(`${signal} ${html}`, {
      signal,
      word,
      alert: signal !== 'notice',
      html,
      short: short !== '' && textLength(short) < textLength(html) ? `<p>${short}</p>` : html,
    });
  };
  for (const message of body.messages) {
    const labels = message.hazards.split(', ');
    for (const label of labels) covered.add(label);
    const known = usual.filter(({ label }) => labels.includes(label));
    add(message.signal, message.html, known.length === labels.length ? known : []);
  }
  for (const line of usual) {
    if (covered.has(line.label)) continue;
    const words = typesetWords(`${line.hazard} ${line.consequence} ${line.avoid}`);
    add(line.signal, `<p>${words}</p>`, [line]);
  }
  return [...found.values()].sort(
    (first, second) => signalOrder.indexOf(first.signal) - signalOrder.indexOf(second.signal),
  );
}

function textLength(html: string): number {
  return html.replace(/<[^>]*>/g, '').length;
}
