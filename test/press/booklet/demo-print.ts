import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, printBooklet } from '../../../src/press/index.ts';
import type { PrintedBooklet } from '../../../src/press/orders/model.ts';
import { flate, pictureData } from '../../../src/project/index.ts';
import { folderWith } from '../../project/folder.ts';
import { demoEdition, demoLast, demoSheets } from '../demo-sheets.ts';
import { builtInTemplates } from '../stand.ts';

const root = fileURLToPath(new URL('../../../', import.meta.url));

/** The demo's booklet on half letter, as the browser prints it, and the file that it was put in. */
export interface DemoBooklet {
  readonly printed: PrintedBooklet;
  readonly file: string;
}

let once: Promise<PrintedBooklet> | null = null;

/** Prints the demo's booklet, once for all tests of a worker; the file is each caller's own. */
export async function printedDemo(browser: Browser): Promise<DemoBooklet> {
  once ??= print(browser);
  const printed = await once;
  const file = join(folderWith(), 'booklet.pdf');
  writeFileSync(file, printed.pdf);
  return { printed, file };
}

function print(browser: Browser): Promise<PrintedBooklet> {
  const { facts, orderGraphs } = demoEdition();
  const sheets = demoSheets();
  return printBooklet({
    paper: 'half-letter',
    templates: builtInTemplates(),
    picture: (url, file) => pictureData(root, join(root, file), url),
    browser,
    draft: false,
    edition: facts,
    last: demoLast(sheets),
    orderGraphs,
    sheets,
    flate,
    store: null,
  });
}
