import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { gaugeBook } from '../../src/gauges/index.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import type { Kind } from '../../src/kinds/model.ts';
import { readStates } from '../../src/order/reading.ts';
import { readSheet } from '../../src/sheet/index.ts';
import { compareReading, type Figures, noFigures } from './reading-figures.ts';

/**
 * How the words of a folder's marked sheets are read with their marks passed over, by voice. A
 * `voices.yaml` beside `sheets/` says which voice a sheet is written in; without it, each is its own.
 */
export function readVoices(folder: string): ReadonlyMap<string, Figures> {
  const book = join(folder, 'voices.yaml');
  const voices: Readonly<Record<string, string>> = existsSync(book)
    ? parse(readFileSync(book, 'utf8'))
    : {};
  const context = { gauges: gaugeBook(), kinds: builtInKinds(), wireGauge: 'imperial' as const };
  const byVoice = new Map<string, Figures>();
  for (const name of readdirSync(join(folder, 'sheets')).sort()) {
    if (!name.endsWith('.md')) continue;
    const sheet = readSheet(readFileSync(join(folder, 'sheets', name), 'utf8'), name, context);
    const kind = context.kinds.get(sheet.unit.kind?.value ?? '');
    if (!kind) continue;
    const voice = voices[name.slice(0, -3)] ?? name.slice(0, -3);
    const figures = byVoice.get(voice) ?? noFigures();
    byVoice.set(voice, figures);
    compareReading(sheet, kind, figures);
  }
  return byVoice;
}

export function summed(all: Iterable<Figures>): Figures {
  const sum = noFigures();
  for (const each of all) {
    for (const key of ['steps', 'marked', 'recalled', 'changes', 'changesRecalled'] as const)
      sum[key] += each[key];
    sum.read += each.read;
    sum.right += each.right;
    sum.missed.push(...each.missed);
    sum.wrong.push(...each.wrong);
  }
  return sum;
}

const percent = (part: number, whole: number): string =>
  whole === 0 ? '-' : `${((100 * part) / whole).toFixed(0)} %`;

export function toldFigures(name: string, { recalled, marked, right, read }: Figures): string {
  return (
    `${name}: recall ${percent(recalled, marked)} (${recalled} of ${marked}), ` +
    `precision ${percent(right, read)} (${right} of ${read})`
  );
}

export type Half = 'seen' | 'unseen';

interface Row {
  readonly say: string;
  readonly leaves: readonly string[];
}

type Rows = Readonly<Record<string, Readonly<Record<string, readonly Row[]>>>>;

/** The steps of a half of `reading-voices.yaml`, compared with what each is said to leave. */
export function readSentences(half: Half): ReadonlyMap<string, Figures> {
  const text = readFileSync(join(import.meta.dirname, 'reading-voices.yaml'), 'utf8');
  const voices: Rows = (parse(text) as Record<Half, Rows>)[half];
  const kinds = builtInKinds();
  const byVoice = new Map<string, Figures>();
  for (const [voice, byKind] of Object.entries(voices)) {
    const figures = noFigures();
    byVoice.set(voice, figures);
    for (const [name, rows] of Object.entries(byKind)) {
      const kind = kinds.get(name);
      if (!kind) throw new Error(`no kind ${name}`);
      for (const { say, leaves } of rows) compareSentence(say, leaves, kind, figures);
    }
  }
  return byVoice;
}

function compareSentence(
  say: string,
  leaves: readonly string[],
  kind: Kind,
  figures: Figures,
): void {
  const read = new Map(readStates(say, kind).map(({ term }) => [term.part, term.condition]));
  const follows = new Map(read);
  for (const [part, condition] of read)
    for (const each of kind.parts.get(part)?.conditions.get(condition)?.follows ?? [])
      if (!follows.has(each.part)) follows.set(each.part, each.condition);
  figures.steps++;
  for (const state of leaves) {
    const [part = '', condition = ''] = state.split(' ');
    if (!kind.parts.get(part)?.conditions.has(condition)) throw new Error(`no state ${state}`);
    figures.marked++;
    if (follows.get(part) === condition) figures.recalled++;
    else figures.missed.push(`${say} | ${state}`);
  }
  for (const [part, condition] of read) {
    figures.read++;
    const implied = leaves.some((state) => {
      const [of = '', is = ''] = state.split(' ');
      const leads = kind.parts.get(of)?.conditions.get(is)?.follows ?? [];
      return leads.some((each) => each.part === part && each.condition === condition);
    });
    if (leaves.includes(`${part} ${condition}`) || implied) figures.right++;
    else figures.wrong.push(`${say} | ${part} ${condition}`);
  }
}
