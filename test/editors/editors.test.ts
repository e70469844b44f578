import { execFileSync, spawn, spawnSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { wholeSheet } from '../checks/examples.ts';
import { markedBlocks, root } from '../docs/marked-blocks.ts';

const program = join(root, 'dist', 'gaugeleaf.js');
const page = readFileSync(join(root, 'docs', 'language-server.md'), 'utf8');
const settings = (mark: string) =>
  markedBlocks(page).find((each) => each.mark === mark)?.text ?? '';

function has(command: string): boolean {
  const found = spawnSync(command, ['--version'], { stdio: 'ignore' }).status === 0;
  if (!found)
    console.warn(`${command} is not on this machine: what the page says for it is not tried`);
  return found;
}

let folder: string;
let env: NodeJS.ProcessEnv;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'gaugeleaf-editor-'));
  mkdirSync(join(folder, 'bin'));
  mkdirSync(join(folder, 'sheets'));
  writeFileSync(join(folder, 'edition.yaml'), 'title: Demo\n');
  writeFileSync(
    join(folder, 'sheets', 'orlo-f27.md'),
    wholeSheet({}).replace('value: 13/64 in', 'value: 13/6x4 in'),
  );
  const bin = join(folder, 'bin', 'gaugeleaf');
  writeFileSync(bin, `#!/bin/sh\nexec "${process.execPath}" "${program}" "$@"\n`);
  chmodSync(bin, 0o755);
  env = { ...process.env, HOME: folder, PATH: join(folder, 'bin') + delimiter + process.env.PATH };
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Runs an editor in the folder until it ends, and gives what it wrote to `out`. */
function edited(command: string, args: readonly string[]): Promise<string> {
  return new Promise((done, fail) => {
    const child = spawn(command, args, { cwd: folder, env, stdio: 'ignore', timeout: 30_000 });
    child.on('error', fail);
    child.on('exit', () => {
      const out = join(folder, 'out');
      done(existsSync(out) ? readFileSync(out, 'utf8') : '');
    });
  });
}

describe.skipIf(!existsSync(program))('with what the page says', () => {
  test.skipIf(!has('nvim'))(
    'Neovim shows findings, and makes a cure',
    async () => {
      const probe = `
local function codes()
  local found = {}
  for _, each in ipairs(vim.diagnostic.get(0)) do
    table.insert(found, (each.lnum + 1) .. ' ' .. vim.split(each.message, '\\n')[1])
  end
  return table.concat(found, '\\n')
end
vim.wait(15000, function() return #vim.diagnostic.get(0) > 0 end, 20)
local before = codes()
vim.cmd([[%s/13.6x4 in/13\\/64 in/]])
vim.wait(15000, function() return #vim.diagnostic.get(0) == 0 end, 20)
local out = io.open('out', 'w')
out:write(before .. '\\nthen ' .. #vim.diagnostic.get(0))
out:close()
vim.cmd('qall!')
`;
      writeFileSync(join(folder, 'init.lua'), settings('neovim'));
      writeFileSync(join(folder, 'probe.lua'), probe);
      const out = await edited('nvim', [
        '--headless',
        '-n',
        '-i',
        'NONE',
        '-u',
        'init.lua',
        'sheets/orlo-f27.md',
        '-c',
        'luafile probe.lua',
      ]);
      expect(out).toBe('19 x is no unit that a size is written in\nthen 0');
    },
    40_000,
  );

  const emacs = has('emacs') && hasEglot();
  test.skipIf(!emacs)(
    'Emacs shows findings',
    async () => {
      const probe = `
(find-file "sheets/orlo-f27.md")
(let ((eglot-sync-connect 10)) (apply #'eglot--connect (eglot--guess-contact)))
(flymake-mode 1)
(flymake-start)
(let ((end (+ (float-time) 15)))
  (while (and (< (float-time) end) (null (flymake-diagnostics))) (accept-process-output nil 0.05)))
(let ((found (mapcar (lambda (each)
                       (format "%d %s" (line-number-at-pos (flymake-diagnostic-beg each))
                               (car (split-string (flymake-diagnostic-text each) "\\n"))))
                     (flymake-diagnostics))))
  (find-file "../out")
  (insert (string-join found "\\n"))
  (let ((require-final-newline nil)) (save-buffer)))
(kill-emacs 0)
`;
      writeFileSync(join(folder, 'init.el'), settings('emacs'));
      writeFileSync(join(folder, 'probe.el'), probe);
      const out = await edited('emacs', [
        '--batch',
        '--eval',
        '(package-initialize)',
        '-l',
        'init.el',
        '-l',
        'probe.el',
      ]);
      expect(out.trim()).toBe(
        '19 gaugeleaf [size-unreadable]: x is no unit that a size is written in',
      );
    },
    40_000,
  );
});

function hasEglot(): boolean {
  try {
    execFileSync(
      'emacs',
      [
        '--batch',
        '--eval',
        "(progn (package-initialize) (require 'eglot) (require 'markdown-mode))",
      ],
      { stdio: 'ignore' },
    );
    return true;
  } catch {
    console.warn(
      'Emacs has no Eglot or no markdown-mode here: what the page says for it is not tried',
    );
    return false;
  }
}
