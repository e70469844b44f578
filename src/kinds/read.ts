import { validate } from '../generated/validate-kind.js';
import { lookup, readYaml, type Span, schemaWords } from '../text/index.ts';
import { buildKind } from './build.ts';
import { builtOn, isOwn } from './builds-on.ts';
import type { KindData } from './data.ts';
import { commonFaults, kindFaults } from './faults.ts';
import type { Kind } from './model.ts';
import type { FormulaNames } from './relation-faults.ts';
import { kindTrial } from './trial.ts';

/** What a club's own kind file has wrong, with its place. */
export interface KindProblem {
  readonly kind: 'front-matter' | 'schema' | 'limits';
  /** The file as it was passed in. */
  readonly file: string;
  readonly span: Span;
  readonly message: string;
  readonly fix: string | null;
}

/**
 * A club's own kind of unit from the text of its file. Never throws; `kind` is null where anything is
 * wrong, for half a vocabulary would call good sheets wrong. `formulas` are the relations that the
 * program knows; left out, their names are not proved.
 */
export function readKind(
  text: string,
  file: string,
  formulas: FormulaNames | null = null,
): { readonly kind: Kind | null; readonly problems: readonly KindProblem[] } {
  const read = readYaml(text);
  const start: Span = { start: 0, end: 0 };
  const problems: KindProblem[] = read.problems.map(({ kind, span, message, fix }) => ({
    kind: kind === 'limits' ? 'limits' : 'front-matter',
    file,
    span,
    message,
    fix,
  }));
  const place = (path: readonly (string | number)[], onKey: boolean): Span =>
    lookup(read.root, path, onKey ? 'key' : 'value') ?? start;
  const tell = (faults: ReturnType<typeof kindFaults>): void => {
    for (const { path, onKey, message, fix } of faults)
      problems.push({ kind: 'schema', file, span: place(path, onKey), message, fix });
  };
  // Where YAML itself is broken, what the schema says is mostly an echo of that.
  if (problems.length > 0) return { kind: null, problems };
  const whole = builtOn(read.value ?? null);
  if (!validate(whole)) tell(schemaWords(validate.errors, whole));
  else tell([...commonFaults(whole as KindData), ...kindFaults(whole as KindData, formulas)]);
  return { kind: problems.length > 0 ? null : buildKind(whole as KindData), problems };
}

/** Something of a kind that can never come to bear, with its place. */
export type KindIdle = Pick<KindProblem, 'span' | 'message' | 'fix'>;

/**
 * What of a kind can never come to bear, from the text of its file and in its order; empty where `readKind`
 * finds anything wrong, for that comes first.
 */
export function tryKind(text: string): readonly KindIdle[] {
  const read = readYaml(text);
  const whole = builtOn(read.value ?? null);
  if (read.problems.length > 0 || !validate(whole)) return [];
  if ([...commonFaults(whole as KindData), ...kindFaults(whole as KindData)].length > 0) return [];
  return kindTrial(whole as KindData).flatMap(({ path, onKey, message, fix }) => {
    // What a common kind has and this one has no use for is no fault of its file.
    if (!isOwn(read.value, path)) return [];
    const span = lookup(read.root, path, onKey ? 'key' : 'value') ?? { start: 0, end: 0 };
    return [{ span, message, fix }];
  });
}
