import { describe, expect, test } from 'vitest';
import { browserHere } from '../press/stand.ts';
import { carriedOut, consoleBlocks, renewBlock } from './pages.ts';

const browser = await browserHere();

/** The numbers of pages that were told, and the rest of what was shown. */
function parted(shown: string): readonly [pages: readonly number[], rest: string] {
  const pattern = /(\d+) pages?$/gm;
  return [[...shown.matchAll(pattern)].map(([, n]) => Number(n)), shown.replace(pattern, 'pages')];
}

describe('the printing commands of the guide', () => {
  if (typeof browser === 'string') console.warn(`skipped, nothing to print with: ${browser}`);
  test.skipIf(typeof browser === 'string').each(consoleBlocks('print'))(
    '%s: %s',
    async (_place, _commands, page, block) => {
      const text = await carriedOut(block);
      if (process.env.RENEW_GOLDEN === '1') return renewBlock(page, block, text);
      const [pages, rest] = parted(block.text);
      const [pagesNow, restNow] = parted(text);
      expect(rest).toBe(restNow);
      // How many pages a booklet has depends on the make of browser too: near is enough.
      for (const [index, count] of pagesNow.entries()) {
        expect(Math.abs((pages[index] ?? 0) / count - 1)).toBeLessThan(0.1);
      }
    },
    240_000,
  );
});
