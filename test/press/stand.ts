import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';
import type { Finding } from '../../src/checks/define.ts';
import { gaugeBook } from '../../src/gauges/index.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import {
  type Browser,
  type CardOrder,
  PressStopped,
  type Printed,
  printCards,
  type SheetToPrint,
  type Templates,
} from '../../src/press/index.ts';
import { findBrowser } from '../../src/project/browser/find-browser.ts';
import { readTemplates } from '../../src/project/templates.ts';
import { readSheet } from '../../src/sheet/index.ts';

const here = dirname(fileURLToPath(import.meta.url));
const kinds = builtInKinds();

/** The sheet that the press's tests print: every form of value, source, caution and note once. */
export const sampleText = readFileSync(`${here}/sheets/tarn-t64-holme-seven.md`, 'utf8');

/** A sheet ready to print, from text. */
export function toPrint(text: string, findings: readonly Finding[] = []): SheetToPrint {
  const sheet = readSheet(text, 'sheets/tarn-t64-holme-seven.md', {
    kinds,
    gauges: gaugeBook(),
    wireGauge: null,
  });
  return { sheet, findings };
}

/** A finding with the fields that the press looks at. */
export function finding(fields: Partial<Finding>): Finding {
  return {
    check: 'sizes-disagree',
    severity: 'warning',
    file: 'sheets/tarn-t64-holme-seven.md',
    span: { start: 0, end: 0 },
    message: 'No. 30 drill is 0.1285 in, but the bench says 0.129 in (0.0005 in more)',
    fix: null,
    compared: null,
    related: [],
    edits: null,
    subject: 'choke-pull-down',
    accepted: null,
    ...fields,
  };
}

/** One sheet as a bench card. */
export async function printCard(order: CardOrder): Promise<Printed> {
  const [printed] = await printCards([order]);
  if (printed === undefined) throw new PressStopped('No card was printed.');
  return printed;
}

/** The built-in templates and fonts. */
export function builtInTemplates(): Templates {
  return readTemplates(`${here}/sheets`);
}

/** A browser to print with, or the reason why the tests that print are skipped. */
export async function browserHere(): Promise<Browser | string> {
  if (process.env.GAUGELEAF_TESTS === 'quick') return 'only what needs no browser is tested';
  try {
    return await findBrowser();
  } catch (error) {
    if (error instanceof PressStopped) return error.message;
    throw error;
  }
}

/**
 * Compares a text with the file of that name in `golden/`. The file is written anew only where the
 * environment says RENEW_GOLDEN=1: `RENEW_GOLDEN=1 npx vitest run test/press`, and then read in
 * review like any other change.
 */
export function expectGolden(name: string, text: string): void {
  const path = `${here}/golden/${name}`;
  if (process.env.RENEW_GOLDEN === '1') {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
  }
  expect(text).toBe(readFileSync(path, 'utf8'));
}
