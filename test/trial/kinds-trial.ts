import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import type { CheckContext, Finding } from '../../src/checks/index.ts';
import { examine } from '../../src/checks/list.ts';
import { gaugeBook } from '../../src/gauges/index.ts';
import { builtInKinds } from '../../src/kinds/index.ts';

/** One change of a sheet, as the heads of the files in `kinds/orders/` say. */
interface Edit {
  readonly remove?: string;
  readonly 'remove-section'?: string;
  readonly swap?: readonly [string, string];
  readonly 'swap-steps'?: readonly [string, string];
  readonly move?: readonly [string, 'before' | 'after', string];
  readonly 'move-step'?: readonly [string, 'before' | 'to' | 'first', string];
  readonly 'move-cautions'?: readonly [string, string];
  readonly 'copy-step'?: readonly [string, 'again'];
}

interface Case extends Edit {
  readonly name: string;
  readonly why: string;
  readonly ops?: readonly Edit[];
}

interface Orders {
  readonly sheet: string;
  readonly kind: string;
  readonly wrong: readonly Case[];
  readonly right: readonly Case[];
}

/** What the trial of one kind came to; `said` has a line for each case that is not as it should be. */
export interface KindFigures {
  readonly kind: string;
  /** Errors and warnings on the sheet as it stands. */
  readonly onRight: string[];
  wrong: number;
  /** Wrong orders with a new error or warning, and those with a new note at least. */
  told: number;
  noted: number;
  right: number;
  refused: number;
  readonly said: string[];
}

const context: CheckContext = {
  gauges: gaugeBook(),
  kinds: builtInKinds(),
  wireGauge: 'imperial',
  picture: null,
};

/** Tries every file of orders in a folder against its sheet. */
export function tryKinds(folder: string, only = ''): readonly KindFigures[] {
  return readdirSync(join(folder, 'orders'))
    .sort()
    .map((file) => parse(readFileSync(join(folder, 'orders', file), 'utf8')) as Orders)
    .filter(({ kind }) => kind.includes(only))
    .map((orders) => tryOne(folder, orders));
}

function tryOne(folder: string, { sheet, kind, wrong, right }: Orders): KindFigures {
  const text = readFileSync(join(folder, 'sheets', `${sheet}.md`), 'utf8');
  const found = (of: string): readonly Finding[] =>
    examine(of, `sheets/${sheet}.md`, context).findings.filter(({ accepted }) => accepted === null);
  const before = found(text);
  const figures: KindFigures = {
    kind,
    onRight: before.filter(isGrave).map(said),
    wrong: wrong.length,
    told: 0,
    noted: 0,
    right: right.length,
    refused: 0,
    said: [],
  };
  const freshOf = (each: Case): readonly Finding[] => newOf(found(changed(text, each)), before);
  for (const each of wrong) {
    const fresh = freshOf(each);
    const grave = fresh.filter(isGrave);
    if (grave.length > 0) figures.told++;
    if (fresh.length > 0) figures.noted++;
    if (grave.length === 0) figures.said.push(lines(`not told: ${each.name}`, fresh));
    else if (process.env.KINDS_SAID) figures.said.push(lines(`told: ${each.name}`, fresh));
  }
  for (const each of right) {
    const fresh = freshOf(each);
    if (!fresh.some(isGrave)) continue;
    figures.refused++;
    figures.said.push(lines(`refused: ${each.name}`, fresh));
  }
  return figures;
}

const isGrave = ({ severity }: Finding): boolean => severity !== 'note';
const said = ({ severity, check, message }: Finding): string => `${severity} ${check}: ${message}`;
const lines = (head: string, found: readonly Finding[]): string =>
  [head, ...found.map((each) => `    ${said(each)}`)].join('\n');

/** Findings that the sheet as it stands has not, each as often as it is more. */
function newOf(found: readonly Finding[], before: readonly Finding[]): readonly Finding[] {
  const left = new Map<string, number>();
  for (const each of before) left.set(said(each), (left.get(said(each)) ?? 0) + 1);
  return found.filter((each) => {
    const count = left.get(said(each)) ?? 0;
    left.set(said(each), count - 1);
    return count <= 0;
  });
}

/** A sheet's front matter, and its sections; the first is what stands before any heading. */
interface Parted {
  front: string;
  sections: string[];
}

function changed(text: string, { ops, ...own }: Case): string {
  const end = text.indexOf('\n---\n') + 5;
  const sheet: Parted = {
    front: text.slice(0, end),
    sections: text
      .slice(end)
      .trimEnd()
      .split(/^(?=## )/m)
      .map((each) => `${each.trimEnd()}\n`),
  };
  for (const edit of ops ?? [own]) apply(sheet, edit);
  return `${sheet.front}${sheet.sections.join('\n')}`;
}

function apply(sheet: Parted, edit: Edit): void {
  if (edit.remove) cut(sheet, edit.remove);
  if (edit['remove-section']) removeSection(sheet, edit['remove-section']);
  if (edit.swap) {
    const [a, b] = edit.swap.map((heading) => at(sheet, heading)) as [number, number];
    const [one, two] = [sheet.sections[a] as string, sheet.sections[b] as string];
    sheet.sections[a] = two;
    sheet.sections[b] = one;
  }
  if (edit['swap-steps']) {
    const [one, two] = edit['swap-steps'];
    inSection(sheet, one, (section) =>
      section
        .replace(one, '\u0000')
        .replace(two, () => one)
        .replace('\u0000', () => two),
    );
  }
  if (edit.move) {
    const [heading, side, beside] = edit.move;
    const [section = ''] = sheet.sections.splice(at(sheet, heading), 1);
    sheet.sections.splice(at(sheet, beside) + (side === 'after' ? 1 : 0), 0, section);
  }
  if (edit['move-step']) {
    const [step, where, to] = edit['move-step'];
    cut(sheet, step);
    if (where === 'before')
      inSection(sheet, to, (each) => each.replace(to, () => `${step}\n${to}`));
    else {
      const i = at(sheet, to);
      const section = sheet.sections[i] as string;
      const first = section.search(/^\d+\. /m);
      sheet.sections[i] =
        where === 'to' || first < 0
          ? `${section.trimEnd()}\n${step}\n`
          : `${section.slice(0, first)}${step}\n${section.slice(first)}`;
    }
  }
  if (edit['move-cautions']) {
    const [from, to] = edit['move-cautions'].map((heading) => at(sheet, heading)) as [
      number,
      number,
    ];
    const cautions = /^:::[\s\S]*?^:::\n\n?/gm;
    const moved = (sheet.sections[from] as string).match(cautions)?.join('') ?? '';
    if (moved === '') throw new Error('no cautions to move');
    sheet.sections[from] = (sheet.sections[from] as string).replace(cautions, '');
    sheet.sections[to] = (sheet.sections[to] as string).replace(/\n\n?/, () => `\n\n${moved}`);
  }
  if (edit['copy-step']) {
    const [step] = edit['copy-step'];
    inSection(sheet, step, (section) => section.replace(step, () => `${step}\n${step}`));
  }
}

function at(sheet: Parted, heading: string): number {
  const found = sheet.sections.findIndex((section) => section.split('\n')[0] === heading);
  if (found < 0) throw new Error(`no ${heading}`);
  return found;
}

function inSection(sheet: Parted, step: string, change: (section: string) => string): void {
  const found = sheet.sections.findIndex((section) => `\n${section}`.includes(`\n${step}\n`));
  if (found < 0) throw new Error(`no step ${step}`);
  sheet.sections[found] = change(sheet.sections[found] as string);
}

function cut(sheet: Parted, step: string): void {
  inSection(sheet, step, (section) => section.replace(`${step}\n`, ''));
}

/** The section, and the settings that no other prints. */
function removeSection(sheet: Parted, heading: string): void {
  const [section = ''] = sheet.sections.splice(at(sheet, heading), 1);
  const rest = sheet.sections.join('');
  for (const [, id = ''] of section.matchAll(/:value\[([^\]]+)\]/g)) {
    if (rest.includes(`:value[${id}]`)) continue;
    sheet.front = sheet.front.replace(new RegExp(`^ {2}${id}:\\n(?: {4}.*\\n)+`, 'm'), '');
  }
  // So goes a source that nothing else comes from.
  for (const [line, id] of sheet.front.matchAll(/^ {2}(\w+): \{ title:.*\n/gm))
    if (!new RegExp(`from: \\[?${id}\\b`).test(sheet.front))
      sheet.front = sheet.front.replace(line, '');
}

/** The figures as lines to read. */
export function kindFiguresText(figures: KindFigures): string {
  const { kind, onRight, wrong, told, noted, right, refused } = figures;
  return [
    `${kind}: ${onRight.length} errors and warnings on the right sheet`,
    `wrong orders told by an error or a warning: ${told} of ${wrong}; by a note at least: ${noted}`,
    `right but unusual orders refused: ${refused} of ${right}`,
  ].join('\n');
}
