import type { KindEntry, KindReference } from '../../kinds/reference/model.ts';
import { visible } from '../../text/index.ts';
import type { Paint } from '../paint.ts';
import { wrap } from '../wrap.ts';
import { entryRows } from './entry.ts';
import { sectionsOf } from './lines.ts';

/** How the reference is written for people. */
export interface KindTextOptions {
  readonly ink: Paint;
  /** Columns to break lines at; null keeps an entry on one line. */
  readonly width: number | null;
}

/** A kind in the list of kinds. */
export interface ListedKind {
  readonly reference: KindReference;
  /** The club's file that describes it; null for one that comes with the program. */
  readonly file: string | null;
}

/** The kinds that there are, one a line. */
export function kindList(kinds: readonly ListedKind[], { ink, width }: KindTextOptions): string {
  const column = Math.max(...kinds.map(({ reference }) => reference.kind.length));
  return kinds
    .map(({ reference, file }) => {
      const { kind, title, settings, operations, parts, hazards, features } = reference;
      const counts = [
        count(settings, 'setting'),
        count(operations, 'operation'),
        count(parts, 'part'),
        count(hazards, 'hazard'),
        count(features, 'feature'),
      ].join(', ');
      return line(
        ink.bold(kind) + ' '.repeat(column - kind.length),
        column,
        `${title}: ${counts}${file === null ? '' : ` (${file})`}`,
        width,
      );
    })
    .join('');
}

/** All that a kind knows, one line an entry. */
export function kindText(reference: KindReference, { ink, width }: KindTextOptions): string {
  return sectionsOf(reference)
    .map(({ title, rows }) => {
      const column = Math.max(...rows.map(([name]) => name.length));
      const lines = rows.map(([name, words]) =>
        line(`  ${name.padEnd(column)}`, column + 2, words, width),
      );
      return `${ink.bold(title)}\n${lines.join('')}`;
    })
    .join('\n');
}

/** All of some entries, a block each. */
export function entriesText(
  entries: readonly KindEntry[],
  kind: string,
  { ink, width }: KindTextOptions,
): string {
  return entries
    .map((entry) => {
      const what = {
        setting: 'setting',
        operation: 'operation',
        part: 'part',
        hazard: 'hazard',
        feature: 'feature',
        unit: 'key under `unit:`',
      }[entry.section];
      const label = 'label' in entry ? `, ${entry.label}` : '';
      const rows = entryRows(entry);
      const column = Math.min(11, Math.max(...rows.map(([name]) => name.length)));
      const lines = rows.map(([name, words], index) => {
        const again = rows[index - 1]?.[0] === name;
        return line(`  ${(again ? '' : name).padEnd(column)}`, column + 2, words, width);
      });
      return `${ink.bold(entry.name)}${label}: ${what} of the kind ${kind}\n${lines.join('')}`;
    })
    .join('\n');
}

function count(those: readonly unknown[], word: string): string {
  return `${those.length} ${word}${those.length === 1 ? '' : 's'}`;
}

function line(lead: string, column: number, words: string, width: number | null): string {
  const room = width === null ? null : Math.max(20, width - column - 2);
  const [first = '', ...rest] = wrap(visible(words.replace(/\s+/g, ' ')), room);
  return [`${lead}  ${first}`, ...rest.map((more) => ' '.repeat(column + 2) + more), ''].join('\n');
}
