import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { root } from './marked-blocks.ts';

const guide = join(root, 'DEVELOPERS.md');

/** Where sheets stand, whole or as examples: every text that may name a maker. */
const places = [
  'README.md',
  'DEVELOPERS.md',
  'sheets',
  'templates/club',
  'src/checks',
  'test',
  'docs',
];

function textsBelow(place: string): readonly string[] {
  if (/\.(?:md|ts|ya?ml)$/.test(place)) return [readFileSync(join(root, place), 'utf8')];
  if (place.includes('.')) return [];
  return readdirSync(join(root, place), { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() || /\.(?:md|ts|ya?ml)$/.test(entry.name)
      ? textsBelow(`${place}/${entry.name}`)
      : [],
  );
}

const text = places.flatMap(textsBelow).join('\n');

function sorted(names: Iterable<string>): readonly string[] {
  return [...new Set(names)].sort((a, b) => (a < b ? -1 : 1));
}

/** Makers with the codes of their units, in the order of the alphabet. */
function makers(): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  const unit = /maker: ['"]?([A-Z]\w+)['"]?(?:,|\s*\\n|\n)\s*model: ['"]?([A-Z]\d+[A-Z]?\b)/g;
  for (const [, maker = '', code = ''] of text.matchAll(unit)) {
    found.set(maker, [...(found.get(maker) ?? []), code]);
  }
  return new Map(sorted(found.keys()).map((maker) => [maker, sorted(found.get(maker) ?? [])]));
}

function marques(): readonly string[] {
  return sorted([...text.matchAll(/marque: ['"]?([A-Z][\w-]+)/g)].map(([, name = '']) => name));
}

function listed(): string {
  const units = [...makers()].map(([maker, codes]) => `- ${maker}: ${codes.join(', ')}`);
  return `\n${units.join('\n')}\n- marques: ${marques().join(', ')}\n`;
}

describe('the names in use', () => {
  it('stand in the guide, all of them', () => {
    const page = readFileSync(guide, 'utf8');
    const [, before = '', list, after = ''] =
      /^([\s\S]*<!-- names -->\n)([\s\S]*)(<!-- \/names -->[\s\S]*)$/.exec(page) ?? [];
    if (process.env.RENEW_GOLDEN === '1') {
      writeFileSync(guide, `${before}${listed()}\n${after}`);
      return;
    }
    expect(list).toBe(`${listed()}\n`);
  });

  it('are codes of one letter and figures, on every sheet of the demo', () => {
    const folder = join(root, 'sheets');
    for (const name of readdirSync(folder).filter((one) => one.endsWith('.md'))) {
      const [, model] = /^ {2}model: (.*)$/m.exec(readFileSync(join(folder, name), 'utf8')) ?? [];
      expect(model, name).toMatch(/^[A-Z]\d{1,2}$/);
    }
  });
});
