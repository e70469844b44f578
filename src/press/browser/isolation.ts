import type { HTTPRequest, Page } from 'puppeteer-core';

/**
 * Switches of the browser while printing. The two on the network keep everything in even where a
 * page finds a way round the rest: names resolve to nothing, and the only way out is a closed port.
 */
export const isolatingSwitches: readonly string[] = [
  '--host-resolver-rules=MAP * ~NOTFOUND',
  '--proxy-server=http://127.0.0.1:9',
  '--proxy-bypass-list=<-loopback>',
  '--disable-quic',
  '--disable-gpu',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-default-apps',
  '--disable-extensions',
  '--font-render-hinting=none',
];

/** What a page may load, as a Content Security Policy: pictures and fonts it brings along. */
export const contentPolicy =
  "default-src 'none'; img-src data:; style-src 'unsafe-inline'; font-src data:; " +
  "form-action 'none'; base-uri 'none'";

/**
 * Shuts a page in: no scripts, and every request but `data:` is refused. A navigation of the whole
 * page is answered with 204 (no content), which leaves the page as it is; refusing it would put an
 * error page in its place.
 */
export async function shutIn(page: Page): Promise<void> {
  await page.setJavaScriptEnabled(false);
  await page.setRequestInterception(true);
  page.on('request', (request) => {
    // A request of a page that has been closed meanwhile can no longer be answered.
    answer(request, page).catch(() => undefined);
  });
}

async function answer(request: HTTPRequest, page: Page): Promise<void> {
  const url = request.url();
  const whole = request.isNavigationRequest() && request.frame() === page.mainFrame();
  if (url === 'about:blank') return request.continue();
  if (whole) return request.respond({ status: 204 });
  if (url.startsWith('data:') && !request.isNavigationRequest()) return request.continue();
  return request.abort('blockedbyclient');
}
