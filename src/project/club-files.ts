import { join } from 'node:path';
import { packageRoot } from './package-root.ts';
import { readText } from './read-text.ts';

/** Files of an example project folder, by where they go; each stands in `templates/club`. */
const places = {
  'edition.yaml': 'edition.yaml',
  'README.md': 'README.md',
  'package.json': 'package.json',
  gitignore: '.gitignore',
  gitattributes: '.gitattributes',
  'workflow.yml': '.github/workflows/gaugeleaf.yml',
  'pre-commit-config.yaml': '.pre-commit-config.yaml',
} as const;

/**
 * The files of an example project folder by their paths in it, every `{{name}}` replaced by the value
 * of that name. Fails with an `Error` where the package was taken apart, or a name has no value.
 */
export function clubFiles(values: Readonly<Record<string, string>>): ReadonlyMap<string, string> {
  return new Map(
    Object.entries(places).map(([file, place]) => {
      const text = packaged(file).replace(/\{\{([a-z]+)\}\}/g, (_, name: string) => {
        const value = values[name];
        if (value === undefined) throw new Error(`templates/club/${file} asks for ${name}`);
        return value;
      });
      return [place, text];
    }),
  );
}

/** Schemas that a folder gets a copy of, so that editors find them wherever the folder goes. */
const schemas = ['sheet', 'edition', 'sources', 'kind', 'mapping', 'record', 'reading'] as const;

/** The schemas of an example project folder by their paths in it. */
export function clubSchemas(): ReadonlyMap<string, string> {
  return new Map(
    schemas.map((name) => {
      const place = `schemas/${name}.schema.json`;
      return [place, textOf(join(packageRoot(), place))];
    }),
  );
}

/** The text that says what the example sheets hold. */
export function clubExamples(): string {
  return packaged('examples.yaml');
}

function packaged(file: string): string {
  return textOf(join(packageRoot(), 'templates', 'club', file));
}

function textOf(path: string): string {
  const read = readText(path);
  if (!read.ok) throw new Error(read.message);
  return read.text;
}
