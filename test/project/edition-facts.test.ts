import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readKitEntry } from '../../src/gauges/index.ts';
import { altitudeFault, previousFault } from '../../src/project/edition-facts.ts';

describe('facts of an edition', () => {
  it.each(['hello', '1200', '475 rpm', 'about', '12 psi', '1,200 ft', ''])(
    '%j is no altitude',
    (text) => {
      expect(altitudeFault(text)).toMatchObject({ message: `the altitude ${text} is no height` });
    },
  );

  it.each(['1200 ft', '350 m', '0 ft', '1200 feet', 'sea level'])('%s is an altitude', (text) => {
    expect(altitudeFault(text)).toBeNull();
  });

  it('a last edition that is not there, or not in the project, is told', () => {
    const root = mkdtempSync(join(tmpdir(), 'edition-'));
    writeFileSync(join(root, 'first.json'), '{}');
    expect(previousFault(root, 'first.json')).toBeNull();
    expect(previousFault(root, 'frist.json')?.message).toBe('`previous: frist.json` is not there');
    expect(previousFault(root, '../first.json')?.message).toContain('outside the project');
  });

  it.each([
    'drill index 1/0-1/2 by 64ths',
    'drill index 1/16-1/2 by 1/0',
    '3/0 drill',
    'leaf set 0.001-0.025 in by 1/0 in',
    '0.020 in leaf 1/0 in wide',
    '5/0 in wire',
  ])('%s in a kit ends no command', (text) => {
    expect(readKitEntry(text)).toMatchObject({ ok: false });
  });

  it('a wire of size 4/0 is a gauge', () => {
    expect(readKitEntry('4/0 AWG')).toMatchObject({ ok: true });
  });
});
