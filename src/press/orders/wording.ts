import { lookup, readYaml, type Span } from '../../text/index.ts';

/** The words of the templates by their keys; `{name}` in a line stands for what the page puts there. */
export type Wording = ReadonlyMap<string, string>;

/** What a `wording.yaml` says, with the places of what it says wrongly. */
export interface WordingRead {
  readonly words: Wording;
  readonly faults: readonly WordingFault[];
  /** Where a key stands in the file; null for one that it has not. */
  readonly keySpan: (key: string) => Span | null;
}

/** One thing wrong in a file of words. */
export interface WordingFault {
  readonly span: Span;
  readonly message: string;
  readonly fix: string | null;
}

/** A line of more characters than this is no label and no sentence of a page. */
const longestLine = 2000;

/** Reads a file of words: a key and a text a line. Never throws. */
export function readWording(text: string): WordingRead {
  const base = text.startsWith('\ufeff') ? 1 : 0;
  const { root, value, problems } = readYaml(text.slice(base), base);
  const faults: WordingFault[] = problems.map(({ span, message, fix }) => ({ span, message, fix }));
  const words = new Map<string, string>();
  const keySpan = (key: string) => (root === null ? null : lookup(root, [key], 'key'));
  if (root !== null && root.kind !== 'map' && faults.length === 0) {
    faults.push({
      span: { start: base, end: base },
      message: 'a file of words has a key and a text on each line',
      fix: 'write, for instance, `as-found: As found`',
    });
  }
  const entries = root?.kind === 'map' ? Object.entries(value as Record<string, unknown>) : [];
  for (const [key, said] of entries) {
    const line = typeof said === 'number' ? String(said) : said;
    if (typeof line === 'string' && line.trim() !== '' && line.length <= longestLine) {
      words.set(key, line);
      continue;
    }
    faults.push({
      span: keySpan(key) ?? { start: base, end: base },
      message: `the words for \`${key}\` are ${fault(line)}`,
      fix: 'write them as one text, in quotes if they have a colon in them',
    });
  }
  return { words, faults, keySpan };
}

function fault(said: unknown): string {
  if (typeof said === 'string' && said.length > longestLine) {
    return `${said.length} characters long; at most ${longestLine} are printed`;
  }
  if (said === null || said === '') return 'missing';
  return typeof said === 'string' ? 'blank' : 'no text';
}

/** What a line of words has in braces, each once, in its order: `{page}` gives `page`. */
export function placeholders(line: string): readonly string[] {
  return [...new Set([...line.matchAll(placeholder)].map(([, name = '']) => name))];
}

/** A line of words with what goes into its braces; a name that `values` lacks stays as it is. */
export function fillIn(line: string, values: Readonly<Record<string, unknown>>): string {
  return line.replace(placeholder, (whole, name: string) =>
    Object.hasOwn(values, name) ? String(values[name] ?? '') : whole,
  );
}

const placeholder = /\{([a-z][A-Za-z]*)\}/g;
