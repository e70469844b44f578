import validate from '../generated/validate-sheet.js';
import { lookup, type Part, type Span, schemaWords, type YamlRead } from '../text/index.ts';
import type { ReadProblem } from './model.ts';

/** What the schema has against a front matter, each at its place in the YAML; none for a sound one. */
export function schemaProblems(yaml: Pick<YamlRead, 'root' | 'value'>): readonly ReadProblem[] {
  if (validate(yaml.value)) return [];
  return schemaWords(validate.errors, yaml.value).map(({ path, onKey, message, fix, write }) => ({
    kind: 'schema',
    span: placeOf(path, onKey ? 'key' : 'value', yaml),
    message,
    fix,
    ...(write ? { write } : {}),
  }));
}

/** A key that is missing at the top level has no other place than where the top level starts. */
function placeOf(
  path: readonly (string | number)[],
  part: Part,
  yaml: Pick<YamlRead, 'root'>,
): Span {
  const span = path.length > 0 ? lookup(yaml.root, path, part) : null;
  if (span) return span;
  const start = yaml.root?.span.start ?? 0;
  const first = yaml.root?.kind === 'map' ? [...yaml.root.entries.values()][0] : undefined;
  return first?.key.span ?? { start, end: start };
}
