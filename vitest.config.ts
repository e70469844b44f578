import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { defineConfig } from 'vitest/config';

/**
 * Which part of the tests is run: `quick`, all that needs no browser; `press`, the files that have tests
 * with a browser; the whole where nothing is said.
 */
const part = process.env.GAUGELEAF_TESTS;

const folder = join(import.meta.dirname, 'test');
const pressFiles = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.test.ts'))
  .filter((name) => readFileSync(join(folder, name), 'utf8').includes('browserHere'))
  .map((name) => `test/${name.replaceAll('\\', '/')}`);

export default defineConfig({
  plugins: [
    {
      // Packages as they ship: what some hold ready for their own development is slower. The runner adds
      // to the conditions of a configuration, so they are set when it is done.
      name: 'packages-as-they-ship',
      configResolved({ ssr }) {
        if (ssr.resolve !== undefined) ssr.resolve.conditions = ['node'];
      },
    },
  ],
  test: {
    include: part === 'press' ? pressFiles : ['test/**/*.test.ts'],
    globalSetup: ['test/suite/one-browser.ts'],
    setupFiles: ['test/suite/share-browser.ts', 'test/suite/each-test.ts'],
    // The files of a worker share their modules, which are read once and not two hundred times. No test
    // changes anything that is common: environment, folder, clock, console or a module of the program.
    isolate: false,
    // Sheets are read by the thousand: with more room for what lives briefly, less time goes into clearing it.
    execArgv: ['--max-semi-space-size=64'],
    // Two printing tests at a time are what a machine of two cores can do.
    maxWorkers: 2,
    // No test waits for a clock. What takes longer than this does not end, on a busy machine either.
    testTimeout: 120_000,
    hookTimeout: 300_000,
  },
});
