import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Browser as Puppeteer } from 'puppeteer-core';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Where the one browser of the tests is asked for; empty where each starts its own. */
    browserDesk: string;
  }
}

/** What a test is told of the browser that runs: how to reach it, and what it was started with. */
export interface SharedBrowser {
  readonly endpoint: string;
  readonly path: string;
  readonly args: readonly string[];
}

/**
 * Keeps one browser for all test files of a run, since starting one costs more than most prints do.
 * It is started when it is first asked for, so that a run that prints nothing has none, and anew
 * should it have died. `share-browser.ts` is the other end.
 */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  let running: Promise<{ browser: Puppeteer; shared: SharedBrowser }> | null = null;

  async function start(): Promise<{ browser: Puppeteer; shared: SharedBrowser }> {
    const { launch } = await import('puppeteer-core');
    const { isolatingSwitches } = await import('../../src/press/browser/isolation.ts');
    const { findBrowser } = await import('../../src/project/browser/find-browser.ts');
    const { path, env, args: own } = await findBrowser();
    const args = [...isolatingSwitches, ...own];
    const browser = await launch({
      executablePath: path,
      headless: 'shell',
      args,
      env: { ...env },
      timeout: 120_000,
      waitForInitialPage: false,
    });
    browser.on('disconnected', () => {
      running = null;
    });
    return { browser, shared: { endpoint: browser.wsEndpoint(), path, args } };
  }

  const server = createServer(async (_, response) => {
    // A worker that has been at work for long would ask by a connection that was given up meanwhile.
    response.setHeader('connection', 'close');
    try {
      running ??= start();
      const { shared } = await running;
      response.setHeader('content-type', 'application/json').end(JSON.stringify(shared));
    } catch (error) {
      running = null;
      response.writeHead(503).end(String(error));
    }
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  project.provide('browserDesk', `http://127.0.0.1:${(server.address() as AddressInfo).port}/`);

  return async () => {
    server.close();
    const last = await running?.catch(() => null);
    await last?.browser.close();
  };
}
