import validate from '../generated/validate-edition.js';
import { lookup, schemaWords, type YamlRead } from '../text/index.ts';
import type { Fault } from './file-faults.ts';

/** What the schema of an edition has against the file, in plain words, each with its place. */
export function editionSchemaFaults(yaml: YamlRead): Omit<Fault, 'check'>[] {
  if (validate(yaml.value)) return [];
  return schemaWords(validate.errors, yaml.value).map(({ path, onKey, message, fix }) => ({
    span: lookup(yaml.root, path, onKey ? 'key' : 'value') ??
      yaml.root?.span ?? { start: 0, end: 0 },
    message,
    fix,
  }));
}
