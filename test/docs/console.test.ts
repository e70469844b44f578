import { describe, expect, test } from 'vitest';
import { carriedOut, consoleBlocks, renewBlock } from './pages.ts';

const renew = process.env.RENEW_GOLDEN === '1';

describe('the commands of the guide', () => {
  test.each(consoleBlocks('run'))(
    '%s: %s',
    async (_place, _commands, page, block) => {
      const text = await carriedOut(block);
      if (renew) renewBlock(page, block, text);
      else expect(block.text).toBe(text);
    },
    120_000,
  );
});
