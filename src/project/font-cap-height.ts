import { fontTable } from './font-table.ts';

/**
 * The height of a font's capitals in ems, as its `OS/2` table says (`sCapHeight`, version 2 and
 * later, over `unitsPerEm` of `head`); null where the font does not say it or is no font.
 */
export function capHeightOf(bytes: Uint8Array): number | null {
  try {
    const metrics = fontTable(bytes, 'OS/2');
    const head = fontTable(bytes, 'head');
    if (metrics === null || head === null || metrics.getUint16(0) < 2) return null;
    const height = metrics.getInt16(88) / head.getUint16(18);
    return height > 0 && height < 2 ? height : null;
  } catch {
    return null;
  }
}
