import { describe, expect, test } from 'vitest';
import { findingsPage } from '../../src/checks/findings-page.ts';
import { allChecks, explainCheck } from '../../src/checks/index.ts';

describe('the findings page', () => {
  const page = findingsPage(allChecks);

  test('has an entry for every check, with what it means and its examples', () => {
    for (const check of allChecks) {
      const start = page.indexOf(`\n### ${check.id}\n`);
      expect(start, check.id).toBeGreaterThan(0);
      const entry = page.slice(start, page.indexOf('\n### ', start + 1) >>> 0);
      expect(entry).toContain(`*${check.severity}.* ${check.summary}`);
      expect(entry).toContain(check.explain);
      expect(entry).toContain('\nWrong: ');
      expect(entry).toContain('\nRight: ');
    }
  });

  test('closes every fence it opens', () => {
    expect((page.match(/^`{3,}/gm) ?? []).length % 2).toBe(0);
  });

  test('shows the finding with its place and its remedy', () => {
    expect(page).toContain(
      [
        'error  value-undefined  at: :value[flaot-level]',
        '  no setting `flaot-level` is given',
        '  fix: write `:value[float-level]`',
      ].join('\n'),
    );
  });
});

describe('explain', () => {
  test('says what a finding means, with a wrong and a right example', () => {
    const check = allChecks.find(({ id }) => id === 'directive-unknown');
    const text = check === undefined ? '' : explainCheck(check);
    expect(text).toMatch(/^directive-unknown \(error: wrong or impossible/);
    expect(text).toContain('Wrong: a misspelt mark around the name of a setting');
    expect(text).toContain('    --fix writes: 1. Pass the gauge: :value[float-level].');
    expect(text).toContain('Right: ');
  });

  test('keeps prose within 80 columns', () => {
    for (const check of allChecks) {
      const prose = explainCheck(check)
        .split('\n')
        .filter((line) => !line.startsWith(' ') && !/^(Wrong|Right|[a-z-]+ \()/.test(line));
      expect(Math.max(...prose.map((line) => line.length))).toBeLessThanOrEqual(80);
    }
  });
});
