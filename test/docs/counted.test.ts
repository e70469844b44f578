import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { root } from './marked-blocks.ts';

/**
 * A list of the guide that a comment before it marks: `<!-- counted "nozzle-lip" pattern="..." -->`. It
 * says which files name a thing of that sort; the test looks for one that is there.
 */
interface Recipe {
  readonly specimen: string;
  readonly pattern: RegExp;
  /** Files from the project's root; `NAME` stands for the specimen. */
  readonly files: readonly string[];
}

function recipes(): readonly Recipe[] {
  const page = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8');
  const marked = /^<!-- counted "([^"]+)" pattern="([^"]+)" -->\n\n((?:- .*\n(?: {2}.*\n)*)+)/gm;
  return [...page.matchAll(marked)].map(([, specimen = '', pattern = '', list = '']) => ({
    specimen,
    pattern: new RegExp(pattern),
    files: [...list.matchAll(/^- `([^`]+)`/gm)]
      .map(([, file = '']) => file.replaceAll('NAME', specimen))
      .sort(),
  }));
}

/** Every file that a contributor or a tool writes and that is no test. */
function filesBelow(place: string): readonly string[] {
  return readdirSync(join(root, place), { withFileTypes: true }).flatMap((entry) => {
    const path = `${place}/${entry.name}`;
    if (entry.isDirectory()) return path === 'src/generated' ? [] : filesBelow(path);
    return /\.(?:md|ts|mjs|ya?ml|json|hbs|css|tsv)$/.test(entry.name) ? [path] : [];
  });
}

const places = ['src', 'docs', 'schemas', 'templates'];
const texts = ['README.md', ...places.flatMap(filesBelow)].map(
  (path) => [path, readFileSync(join(root, path), 'utf8')] as const,
);

describe('the files that a recipe names', () => {
  test('are counted for each sort of addition', () => expect(recipes()).toHaveLength(7));

  test.each(recipes().map((recipe) => [recipe.specimen, recipe] as const))(
    'are those that name %s',
    (_, { pattern, files }) => {
      const naming = texts.filter(([path, text]) => pattern.test(path) || pattern.test(text));
      expect(naming.map(([path]) => path).sort()).toEqual(files);
    },
  );
});
