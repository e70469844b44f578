import { join } from 'node:path';
import { drawingForms } from '../kinds/index.ts';
import type { Kind } from '../kinds/model.ts';
import { readWording } from '../press/orders/index.ts';
import { checkStyle, largestLogo, pngLogoFault } from '../press/style/index.ts';
import type { Span } from '../text/index.ts';
import { type Fault, type FileFaults, fileFaults } from './file-faults.ts';
import { logoNames, readTemplateFolder, wordingFile } from './template-folder.ts';
import { builtInFolder } from './templates.ts';

const grave = 'template-invalid';
const idle = 'template-unused';
const nowhere: Span = { start: 0, end: 0 };

/**
 * Everything that is wrong in a club's `templates` folder, file by file in byte order; none where all
 * is well. `show` turns a path into what reports say.
 */
export async function templateFaults(
  root: string,
  folder: string,
  kinds: ReadonlyMap<string, Kind>,
  show: (path: string) => string,
): Promise<readonly FileFaults[]> {
  const own = readTemplateFolder(root, folder);
  const builtIn = readTemplateFolder(builtInFolder(), builtInFolder());
  const faults = new Map<string, Fault[]>();
  const add = (file: string, fault: Fault): void => {
    faults.set(file, [...(faults.get(file) ?? []), fault]);
  };
  for (const { name, why, fix } of own.unusable) {
    const message = `${show(join(folder, name))} ${why}`;
    add(name, { check: grave, span: nowhere, message, fix });
  }
  const drawings = new Set<string>(Object.keys(drawingForms));
  for (const kind of kinds.values()) for (const name of kind.operations.keys()) drawings.add(name);
  const found = await checkStyle({
    own: own.texts,
    builtIn: builtIn.texts,
    wording: readWording(builtIn.texts.get(wordingFile) ?? '').words,
    fonts: new Set([...builtIn.fonts.keys(), ...own.fonts.keys()]),
    drawings,
  });
  for (const { file, grave: stops, span, message, fix } of found) {
    add(file, { check: stops ? grave : idle, span, message, fix });
  }
  const svg = own.texts.get(logoNames.svg);
  const logos = { [logoNames.svg]: Buffer.byteLength(svg ?? ''), [logoNames.png]: own.png?.length };
  for (const [name, bytes = 0] of Object.entries(logos)) {
    if (bytes <= largestLogo) continue;
    const message = `the logo has ${bytes} bytes; at most ${largestLogo} are printed`;
    add(name, { check: grave, span: nowhere, message, fix: 'make it simpler or smaller' });
  }
  const fault = own.png === null ? null : pngLogoFault(own.png);
  if (fault !== null) add(logoNames.png, { check: grave, ...fault });
  if (own.png !== null && svg !== undefined) {
    const message = `${logoNames.svg} goes before it, so it is never printed`;
    add(logoNames.png, { check: idle, span: nowhere, message, fix: 'take one of them out' });
  }
  return [...faults]
    .sort(([first], [second]) => (first < second ? -1 : 1))
    .map(([name, list]) => fileFaults(show(join(folder, name)), own.texts.get(name) ?? '', list));
}
