import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { findingsPage } from '../../src/checks/findings-page.ts';
import { acrossChecks, allChecks } from '../../src/checks/index.ts';
import { projectChecks } from '../../src/project/file-faults.ts';
import { root } from './marked-blocks.ts';

test('docs/findings.md is what the checks say (else RENEW_GOLDEN=1 npx vitest run test/docs)', () => {
  const path = join(root, 'docs', 'findings.md');
  const page = findingsPage([...allChecks, ...acrossChecks, ...projectChecks]);
  if (process.env.RENEW_GOLDEN === '1') writeFileSync(path, page);
  expect(readFileSync(path, 'utf8')).toBe(page);
});
