/** Keys and 0-based list indexes from the root of some data. */
export type SchemaPath = readonly (string | number)[];

/** A path as people read it: `sources › m48 › year`, `also › item 2`; the root is `this`. */
export function named(path: SchemaPath): string {
  if (path.length === 0) return 'this';
  const steps = path.map((step) => (typeof step === 'number' ? `item ${step + 1}` : step));
  return `\`${clean(steps.join(' › '), 120)}\``;
}

/** A value as a message shows it; a list or a mapping is only named. */
export function shown(value: unknown): string {
  if (value === null || value === undefined) return 'empty';
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : 'a list';
  if (typeof value === 'object') return 'keys with values';
  const text = String(value);
  return text.trim() === '' ? 'empty' : `\`${clean(text, 60)}\``;
}

/** `draft, proof or released`; a long list is cut. */
export function listed(items: readonly unknown[], last: 'or' | 'and' | 'nor'): string {
  const texts = items.slice(0, 24).map((item) => String(item));
  if (texts.length < items.length) return `${texts.join(', ')} ...`;
  const end = texts.pop() ?? '';
  return texts.length === 0 ? end : `${texts.join(', ')} ${last} ${end}`;
}

/** A text on one line, without control characters, cut to a length. */
function clean(text: string, most: number): string {
  const line = text.replace(/[\p{Cc}\p{Cf}\s]+/gu, ' ').trim();
  const letters = [...line.slice(0, most * 2)];
  return letters.length > most ? `${letters.slice(0, most - 3).join('')}...` : letters.join('');
}
