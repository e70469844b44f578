import type * as Driver from 'puppeteer-core';
import { inject, vi } from 'vitest';
import type { SharedBrowser } from './one-browser.ts';
import { ownMark } from './own-browser.ts';

// Where the press would start the browser that the whole run shares, it is given a profile of its own
// in that one: no page, cookie or cache of another test is seen there. Any other browser, or the
// same with other switches, is started as always.
vi.mock('puppeteer-core', async (original) => {
  const driver = await original<typeof Driver>();
  return {
    ...driver,
    async launch(options: Driver.LaunchOptions): Promise<Driver.Browser> {
      const shared = options.env?.[ownMark] === undefined ? await sharedBrowser() : null;
      const isThat =
        shared?.path === options.executablePath &&
        JSON.stringify(shared?.args) === JSON.stringify(options.args);
      if (shared === null || !isThat) return driver.launch(options);
      const browser = await driver.connect({
        browserWSEndpoint: shared.endpoint,
        defaultViewport: null,
        ...(options.protocolTimeout === undefined
          ? {}
          : { protocolTimeout: options.protocolTimeout }),
      });
      const profile = await browser.createBrowserContext();
      const part = {
        newPage: () => profile.newPage(),
        process: () => null,
        async close() {
          await profile.close();
          await browser.disconnect();
        },
      };
      return part as unknown as Driver.Browser;
    },
  };
});

async function sharedBrowser(): Promise<SharedBrowser | null> {
  const answer = await fetch(inject('browserDesk'));
  return answer.ok ? ((await answer.json()) as SharedBrowser) : null;
}
