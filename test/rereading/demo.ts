import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { gaugeBook } from '../../src/gauges/index.ts';
import { validate } from '../../src/generated/validate-reading.js';
import { builtInKinds } from '../../src/kinds/index.ts';
import type { CompareContext } from '../../src/rereading/compare-reading.ts';
import { askedOf, readReading } from '../../src/rereading/index.ts';
import type { Asked, AskedPart, SecondReading } from '../../src/rereading/model.ts';
import { readSheet } from '../../src/sheet/index.ts';
import type { Sheet } from '../../src/sheet/model.ts';

export const digest = (text: string): string =>
  createHash('sha256').update(text).digest('hex').slice(0, 16);

const options = { gauges: gaugeBook(), kinds: builtInKinds(), wireGauge: 'imperial' };

export const context: CompareContext = {
  read: { gauges: gaugeBook(), swg: 'imperial' },
  sheets: options,
  digest,
};

export function sheetOf(text: string, file = 'sheets/a.md'): Sheet {
  return readSheet(text, file, options);
}

const folder = new URL('../../sheets/', import.meta.url);

/** The sheets of the demo. */
export function demoSheets(): readonly Sheet[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.md'))
    .map((name) => sheetOf(readFileSync(new URL(name, folder), 'utf8'), `sheets/${name}`));
}

/** A reading that says what the sheet says: of a whole source, or of one page of it where a part differs. */
export function readingOf(
  sheet: Sheet,
  source: string,
  instead: { readonly asked: Asked; readonly part: AskedPart; readonly text: string } | null = null,
): SecondReading {
  const pages: Record<string, Record<string, Record<string, unknown>>> = {};
  for (const asked of askedOf(sheet)) {
    if (asked.source !== source) continue;
    if (instead !== null && asked.page !== instead.asked.page) continue;
    pages[asked.page] ??= {};
    const page = pages[asked.page] ?? {};
    const own: Record<string, unknown> = {};
    for (const part of asked.parts) {
      const isIt =
        instead?.asked.key === asked.key &&
        instead.asked.page === asked.page &&
        instead.part.path.join() === part.path.join();
      const text = isIt ? instead.text : part.text;
      const [key = '', inner] = part.path;
      if (inner === undefined) own[key] = text;
      else own[key] = { ...(own[key] as object | undefined), [inner]: text };
    }
    page[asked.key] = own;
  }
  const file = { 'gaugeleaf-reading': 1, sheet: sheet.id?.value, source, by: 'A', pages };
  const { reading, faults } = readReading(JSON.stringify(file), validate);
  if (reading === null) throw new Error(JSON.stringify(faults));
  return reading;
}
