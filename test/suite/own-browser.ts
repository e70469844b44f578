import type { Browser } from '../../src/press/index.ts';

/** In the environment that a browser is started with: it is not to be the one that the tests share. */
export const ownMark = 'GAUGELEAF_TEST_OWN_BROWSER';

/** The same browser, started for each print by itself, as a user's is. */
export function ofItsOwn(browser: Browser): Browser {
  return { ...browser, env: { ...browser.env, [ownMark]: '1' } };
}
