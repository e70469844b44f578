/**
 * The notices of the packages that are bundled into dist: name, version, license and the words of each
 * license, as most licenses ask of those who pass copies on. Called by bundle.mjs with what the bundler
 * says it took in, so that no package is forgotten and none is named that is not there.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Folders of packages from what the bundler read, each once, by name; nested ones too. */
export function bundledPackages(inputs) {
  const folders = new Set();
  for (const path of inputs) {
    const [folder] = /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(path) ?? [];
    if (folder !== undefined) folders.add(folder);
  }
  return [...folders].sort();
}

/** The whole text. A package that brings no license text has its author and the license's name. */
export function notices(root, inputs) {
  const seen = new Map();
  for (const folder of bundledPackages(inputs)) {
    const about = JSON.parse(readFileSync(join(root, folder, 'package.json'), 'utf8'));
    seen.set(`${about.name} ${about.version}`, {
      license: about.license,
      words: licenseWords(root, folder) ?? withoutText(about),
    });
  }
  const entries = [...seen].sort(([a], [b]) => (a < b ? -1 : 1));
  return [
    'Gaugeleaf is built with the packages below; their code is part of the files in this folder.\n',
    ...entries.map(([title, { license, words }]) => `${title} (${license})\n\n${words}\n`),
  ].join(`\n${'-'.repeat(72)}\n\n`);
}

function licenseWords(root, folder) {
  const files = readdirSync(join(root, folder));
  const file = files.find((each) => /^licen[cs]e(\.|-|$)/i.test(each));
  if (file !== undefined) return plain(readFileSync(join(root, folder, file), 'utf8'));
  const readme = files.find((each) => /^readme(\.|$)/i.test(each));
  const text = readme === undefined ? '' : readFileSync(join(root, folder, readme), 'utf8');
  const [, words] = /^#+\s*licen[cs]e\s*$([\s\S]*)/im.exec(text) ?? [];
  return words === undefined ? undefined : plain(words);
}

function withoutText({ author, license }) {
  const by = typeof author === 'object' ? `${author.name}` : `${author ?? 'its authors'}`;
  return `By ${by}, under the ${license} license. The package carries no text of it.`;
}

/** With one form of line ends, and none at the end. */
function plain(text) {
  return text.replace(/\r\n?/g, '\n').trim();
}
