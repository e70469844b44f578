import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readWording } from '../../src/press/orders/index.ts';
import { templateShapes } from '../../src/press/style/check-style.ts';
import { stylePage } from '../../src/press/style/style-page.ts';
import { root } from './marked-blocks.ts';

const wordingText = readFileSync(join(root, 'templates/wording.yaml'), 'utf8');
const { words: wording, faults } = readWording(wordingText);

test('docs/templates.md is what templates may use (else RENEW_GOLDEN=1 npx vitest run test/docs)', () => {
  const path = join(root, 'docs', 'templates.md');
  const colors = readFileSync(join(root, 'templates/styles.css'), 'utf8');
  const page = stylePage({ shapes: templateShapes, wording, wordingText, colors });
  if (process.env.RENEW_GOLDEN === '1') writeFileSync(path, page);
  expect(readFileSync(path, 'utf8')).toBe(page);
});

test('every key of the words says above it where it is printed', () => {
  expect(faults).toEqual([]);
  const lines = wordingText.split('\n');
  const keys = lines.flatMap((line, at) => (/^[a-z]/.test(line) ? [at] : []));
  expect(keys).toHaveLength(wording.size);
  for (const at of keys) expect(lines[at - 1], lines[at]).toMatch(/^# [A-Z].*\.$|^# .*\.$/);
});
