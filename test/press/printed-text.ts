import { typesetSize } from '../../src/press/lettering/index.ts';

/**
 * What a reader of a print's text finds of a size, without spaces and in small letters: a mixed number's
 * hyphen and the slash between two tolerances are not drawn, and `min` stands in capitals.
 */
export function printedText(written: string): string {
  return leveled(typesetSize(written).replace(/<[^>]+>/g, ''))
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'");
}

/** Text of a print without what only sets it: spaces, capitals, fraction bars, signs for signs. */
export function leveled(text: string): string {
  return text
    .normalize('NFKC')
    .replaceAll('⁄', '/')
    .replace(/[−–‐]/g, '-')
    .replaceAll('″', '"')
    .replace(/\s/g, '')
    .toLowerCase();
}
