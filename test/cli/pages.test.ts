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
      'edition.yaml': edition(['orlo-1a', 'orlo-1b']),
      'sheets/orlo-1a.md': cleanSheet('orlo-1a').replace('status: proof', 'status: released'),
      'sheets/orlo-1b.md': cleanSheet('orlo-1b'),
    });
    const { status, out, err } = await gaugeleaf(['pages'], { cwd });
    expect(err).toBe('6 pages\n');
    expect(status).toBe(0);
    expect(out).toBe('print/pages/index.html\n');
    const home = readFileSync(join(cwd, 'print/pages/index.html'), 'utf8');
    expect(home).toContain('href="units/orlo-1b.html"');
    expect(readFileSync(join(cwd, 'print/pages/units/orlo-1a.html'), 'utf8')).not.toContain(
      'PROOF',
    );
    expect(readFileSync(join(cwd, 'print/pages/units/orlo-1b.html'), 'utf8')).toContain('PROOF');

    const elsewhere = await gaugeleaf(['pages', '--out', 'site/'], { cwd });
    expect(elsewhere.out).toBe('site/index.html\n');
    expect(readFileSync(join(cwd, 'site/index.html'), 'utf8')).toBe(home);

    const fewer = folderWith({
      'edition.yaml': edition(['orlo-1a']),
      'sheets/orlo-1a.md': cleanSheet('orlo-1a'),
    });
    const again = await gaugeleaf(['pages', fewer, '--out', 'site'], { cwd });
    expect(again.err).toBe('5 pages\ntaken away, no longer in the edition: units/orlo-1b.html\n');
    expect(existsSync(join(cwd, 'site/units/orlo-1b.html'))).toBe(false);
  });

  it('writes nothing while a finding stops the press, and a proof says DRAFT', async () => {
    const cwd = folderWith({
      'edition.yaml': edition(['orlo-1a']),
      'sheets/orlo-1a.md': cleanSheet('orlo-1a').replace('13/64 in #', 'No. 29 #'),
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
    const cwd = folderWith({ 'sheets/orlo-1a.md': cleanSheet('orlo-1a') });
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
