import { describe, expect, it } from 'vitest';
import type { Io } from '../../src/cli/io.ts';
import { quickCheck } from '../../src/cli/quick-check.ts';
import { cleanSheet, folderWith } from '../project/folder.ts';
import { gaugeleaf } from './console.ts';

describe('check without the argument parser', () => {
  it('means what the parser means, or leaves the arguments to it', async () => {
    const cwd = folderWith({
      'sheets/a.md': cleanSheet('a'),
      'sheets/b.md': cleanSheet('b', { settings: '  float-drop: { value: 1 in, from: m49 }\n' }),
    });
    const quick = async (argv: readonly string[]) => {
      let out = '';
      let err = '';
      const io = {
        stdout: {
          write: (text: string) => {
            out += text;
          },
        },
        stderr: {
          write: (text: string) => {
            err += text;
          },
        },
        env: {},
        cwd,
      } as unknown as Io;
      const status = quickCheck(argv, io);
      return status === null ? null : { status: await status, out, err };
    };
    for (const argv of [
      ['check'],
      ['check', 'a'],
      ['check', 'sheets/b.md', '--format', 'json'],
      ['check', '--format=github', 'sheets'],
      ['check', '-f', 'sarif', '-a'],
      ['check', '--all', '--fix', 'a', 'b'],
      ['check', 'none.md'],
    ]) {
      expect(await quick(argv), argv.join(' ')).toEqual(await gaugeleaf(argv, { cwd }));
    }
    for (const argv of [
      [],
      ['size', '1/2 in'],
      ['check', '--help'],
      ['check', '--fromat'],
      ['check', '--format'],
      ['check', '--format', 'xml'],
      ['check', '-fjson'],
      ['check', '--', '-a.md'],
      ['check', ''],
    ]) {
      expect(await quick(argv), argv.join(' ')).toBeNull();
    }
  });
});
