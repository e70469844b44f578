import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { build } from 'esbuild';
import { expect, test } from 'vitest';
import { pastDoors } from '../../src/build/past-doors.mjs';
import { folderWith } from '../project/folder.ts';

/** The files that stand in the bundle of a small program, in the order of their names. */
async function bundled(main: string): Promise<readonly string[]> {
  const folder = folderWith();
  const files = {
    'src/main.ts': main,
    'src/room/index.ts':
      "export { one, type One } from './one.ts';\nexport { two as second } from './two.ts';\nexport { three } from './inner/index.ts';\n",
    'src/room/inner/index.ts': "export { three } from './three.ts';\n",
    'src/room/inner/three.ts': "export const three = [Symbol('three')];\n",
    'src/room/one.ts': "export type One = string;\nexport const one = [Symbol('one')];\n",
    'src/room/two.ts': "export const two = [Symbol('two')];\n",
  };
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  const { metafile } = await build({
    absWorkingDir: folder,
    entryPoints: ['src/main.ts'],
    bundle: true,
    splitting: true,
    format: 'esm',
    outdir: 'dist',
    write: false,
    metafile: true,
    plugins: [pastDoors()],
  });
  return Object.keys(metafile.inputs).sort();
}

test.each([
  ["import { one } from './room/index.ts';\nconsole.log(one);\n", ['src/room/one.ts']],
  [
    "import { type One, second as it } from './room/index.ts';\nconsole.log(it as unknown as One);\n",
    ['src/room/two.ts'],
  ],
  ["import { three } from './room/index.ts';\nconsole.log(three);\n", ['src/room/inner/three.ts']],
  ["export { one } from './room/index.ts';\n", ['src/room/one.ts']],
  ["const { one } = await import('./room/index.ts');\nconsole.log(one);\n", ['src/room/one.ts']],
])('of a room that is entered by its door only what is used is loaded: %s', async (main, files) => {
  expect(await bundled(main)).toEqual(['src/main.ts', ...files]);
});

test('names of several files that are loaded later come by the door', async () => {
  const main =
    "const { one, second } = await import('./room/index.ts');\nconsole.log(one, second);\n";
  expect(await bundled(main)).toContain('src/room/index.ts');
});
