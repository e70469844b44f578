import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { cleanSheet, folderWith } from '../project/folder.ts';
import { gaugeleaf } from './console.ts';

const edition = (order: readonly string[]) =>
  `gaugeleaf-edition: 1\ntitle: Settings\nclub: Wexcombe Circle\norder: [${order.join(', ')}]\n`;

describe('gaugeleaf pages', () => {
  it('writes the edition into print/pages, or where it is told, and takes stale pages away', async () => {
    const cwd = folderWith({
      'edition.yaml': edition(['orlo-f27', 'orlo-l83']),
      'sheets/orlo-f27.md': cleanSheet('orlo-f27').replace('status: proof', 'status: released'),
      'sheets/orlo-l83.md': cleanSheet('orlo-l83'),
    });
    const { status, out, err } = await gaugeleaf(['pages'], { cwd });
    expect(err).toBe('6 pages\n');
    expect(status).toBe(0);
    expect(out).toBe('print/pages/index.html\n');
    const home = readFileSync(join(cwd, 'print/pages/index.html'), 'utf8');
    expect(home).toContain('href="units/orlo-l83.html"');
    expect(readFileSync(join(cwd, 'print/pages/units/orlo-f27.html'), 'utf8')).not.toContain(
      'PROOF',
    );
    expect(readFileSync(join(cwd, 'print/pages/units/orlo-l83.html'), 'utf8')).toContain('PROOF');

    const elsewhere = await gaugeleaf(['pages', '--out', 'site/'], { cwd });
    expect(elsewhere.out).toBe('site/index.html\n');
    expect(readFileSync(join(cwd, 'site/index.html'), 'utf8')).toBe(home);

    const fewer = folderWith({
      'edition.yaml': edition(['orlo-f27']),
      'sheets/orlo-f27.md': cleanSheet('orlo-f27'),
    });
    const again = await gaugeleaf(['pages', fewer, '--out', 'site'], { cwd });
    expect(again.err).toBe('5 pages\ntaken away, no longer in the edition: units/orlo-l83.html\n');
    expect(existsSync(join(cwd, 'site/units/orlo-l83.html'))).toBe(false);
  });

  it('writes nothing while a finding stops the press, and a proof says DRAFT', async () => {
    const cwd = folderWith({
      'edition.yaml': edition(['orlo-f27']),
      'sheets/orlo-f27.md': cleanSheet('orlo-f27').replace('13/64 in #', 'No. 29 #'),
    });
    const stopped = await gaugeleaf(['pages'], { cwd });
    expect(stopped.status).toBe(1);
    expect(stopped.out).toBe('');
    expect(stopped.err).toContain('Nothing was printed.');
    expect(existsSync(join(cwd, 'print'))).toBe(false);
    const proof = await gaugeleaf(['pages', '--proof'], { cwd });
    expect(proof.status).toBe(0);
    expect(proof.out).toBe('print/pages-proof/index.html\n');
    const home = readFileSync(join(cwd, 'print/pages-proof/index.html'), 'utf8');
    expect(home).toContain('<b>DRAFT</b> Not for use');
  });

  it('says what it cannot do', async () => {
    const cwd = folderWith({ 'sheets/orlo-f27.md': cleanSheet('orlo-f27') });
    const none = await gaugeleaf(['pages'], { cwd });
    expect(none.status).toBe(2);
    expect(none.err).toContain('there is no edition.yaml');
    const stream = await gaugeleaf(['pages', '--out', '-'], { cwd });
    expect(stream.err).toBe(
      'gaugeleaf: pages are many files, and standard output takes one\n' +
        '           name a folder: gaugeleaf pages --out site\n',
    );
  });
});
