import { build } from 'esbuild';
import { expect, test } from 'vitest';

test('the service bundles for a worker of a browser: it needs nothing of Node', async () => {
  const { outputFiles, warnings } = await build({
    entryPoints: [new URL('../../src/desk/index.ts', import.meta.url).pathname],
    bundle: true,
    write: false,
    minify: true,
    format: 'esm',
    platform: 'browser',
    conditions: ['worker'],
    logLevel: 'silent',
  });
  expect(warnings).toEqual([]);
  // What it could not find for a browser would have failed it.
  expect(outputFiles).toHaveLength(1);
});
