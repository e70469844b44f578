import type { Amount, Limit, Statement } from './model.ts';

/**
 * How a maker numbers his jets: by the bore in hundredths of a millimeter or in thousandths of an
 * inch, by the drill of that number, or by the flow that his test rig measured, which says no bore.
 */
export type JetNumbering = 'hundredths of mm' | 'thousandths of in' | 'drill' | 'flow';

const NUMBERINGS: ReadonlySet<string> = new Set([
  'hundredths of mm',
  'thousandths of in',
  'drill',
  'flow',
]);

/** The numbering that a sheet's word names; null for any other word. */
export function jetNumbering(word: string | null | undefined): JetNumbering | null {
  const plain = (word ?? '').trim().toLowerCase().replace(/\s+/g, ' ');
  return NUMBERINGS.has(plain) ? (plain as JetNumbering) : null;
}

/** What marks the number of a measured flow: a statement of no size, and yet no words. */
export const FLOW_NUMBER = 'flow number';

/** `105`, `No. 105`, `105–110`, `No. 105 main jet`, `jet 105`: whole numbers and nothing else. */
const NUMBERED =
  /^(?:(?:[a-z]+ )?jets? )?(?:(?:no\.?|nos\.?|number|size|#|№) ?)?(\d{1,4}(?:(?: ?(?:[-–/]|±|\+\/-) ?| to )\d{1,4})?)(?: ?(?:[a-z]+ )?jets?)?$/;

/**
 * What a jet's number says, in words that are read as any size is: `105 hundredths of mm`; null where
 * the text is no such number, or is one of a measured flow. `lower` is the text leveled.
 */
export function jetSize(lower: string, numbering: JetNumbering): string | null {
  const numbers = NUMBERED.exec(lower)?.[1];
  if (numbers === undefined) return null;
  switch (numbering) {
    case 'hundredths of mm':
      return `${numbers} hundredths of mm`;
    case 'thousandths of in':
      return `${numbers} thou`;
    case 'drill':
      return /^\d+$/.test(numbers) ? `No. ${numbers} drill` : null;
    case 'flow':
      return null;
  }
}

/** Whether a text is a jet's number. */
export function isJetNumber(lower: string): boolean {
  return NUMBERED.test(lower);
}

/** A statement that was read in a jet's full words, under what the sheet has written. */
export function asNumbered(statement: Statement, text: string): Statement {
  const amount = (each: Amount): Amount => ({
    ...each,
    text: (/\d+/.exec(each.text) ?? [text])[0],
  });
  const limit = (each: Limit | null): Limit | null =>
    each && { ...each, amount: each.amount && amount(each.amount) };
  const { nominal, low, high } = statement;
  return {
    ...statement,
    text,
    nominal: nominal && amount(nominal),
    low: limit(low),
    high: limit(high),
  };
}
