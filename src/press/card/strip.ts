import type { SignalWord } from '../../kinds/model.ts';
import { typesetWords } from '../lettering/index.ts';
import { type SafetyLine, type SheetBody, signalOrder } from '../matter/index.ts';

/** A hazard in full, as the sheet words it or else its kind. */
export interface CardHazard {
  readonly signal: SignalWord;
  /** `WARNING`. */
  readonly word: string;
  /** Whether the alert symbol stands with it: not for NOTICE. */
  readonly alert: boolean;
  /** HTML. */
  readonly html: string;
}

/** Hazards of one signal word in the strip at the head of a card: one imperative each. */
export interface StripLine extends Omit<CardHazard, 'html'> {
  readonly hazards: readonly { readonly label: string; readonly imperative: string }[];
}

/** The hazards of a card: the gravest in full at its head, the rest there in short and in full behind the work. */
export interface CardHazards {
  readonly dangers: readonly CardHazard[];
  readonly strip: readonly StripLine[];
  readonly full: readonly CardHazard[];
}

/**
 * The sheet's own messages in falling order of harm, and the kind's words for a hazard that the work meets
 * and the sheet says nothing of.
 */
export function cardHazards(body: SheetBody, usual: readonly SafetyLine[]): CardHazards {
  const found = new Map<string, CardHazard>();
  const covered = new Set<string>();
  const add = (signal: SignalWord, html: string) =>
    found.set(`${signal} ${html}`, {
      signal,
      word: signal.toUpperCase(),
      alert: signal !== 'notice',
      html,
    });
  for (const message of body.messages) {
    for (const label of message.hazards.split(', ')) covered.add(label);
    add(message.signal, message.html);
  }
  for (const line of usual) {
    if (covered.has(line.label)) continue;
    add(line.signal, `<p>${typesetWords(`${line.hazard} ${line.consequence} ${line.avoid}`)}</p>`);
  }
  const full = [...found.values()].sort(
    (first, second) => signalOrder.indexOf(first.signal) - signalOrder.indexOf(second.signal),
  );
  return {
    dangers: full.filter(({ signal }) => signal === 'danger'),
    strip: stripLines(usual),
    full: full.filter(({ signal }) => signal !== 'danger'),
  };
}

function stripLines(usual: readonly SafetyLine[]): StripLine[] {
  return signalOrder.flatMap((signal) => {
    const same = usual.filter((line) => line.signal === signal);
    if (signal === 'danger' || same.length === 0) return [];
    const hazards = same.map(({ label, imperative }) => ({ label, imperative }));
    return [{ signal, word: signal.toUpperCase(), alert: signal !== 'notice', hazards }];
  });
}
