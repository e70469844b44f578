import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import type { Finding, Severity } from '../../src/checks/define.ts';
import { examineText } from '../../src/project/examine-file.ts';
import { openProject, type Project } from '../../src/project/project.ts';
import type { Sheet } from '../../src/sheet/model.ts';

/** One planted mistake, as its writer put it down before the program was run. */
export interface Mistake {
  readonly name: string;
  readonly class: string;
  readonly edit: readonly { readonly from: string; readonly to: string }[];
  readonly knowable: boolean;
  readonly at: string | readonly string[];
  readonly entry?: string;
  readonly severity: Severity;
  readonly truth?: string;
  readonly why: string;
}

export interface MistakeOutcome {
  readonly sheet: string;
  readonly mistake: Mistake;
  /** Where the program spoke: on the line, elsewhere in the setting's entry or its steps, or not. */
  readonly found: 'line' | 'entry' | 'missed';
  /** Whether what it said there is as grave as the writer asked. */
  readonly graveEnough: boolean;
  /** Findings that the mistake brought besides the first. */
  readonly further: number;
  /** The place of the true text among the cures offered, from 1; null where it is not offered. */
  readonly truthAt: number | null;
  readonly said: readonly string[];
}

export interface SheetOutcome {
  readonly sheet: string;
  readonly findings: readonly string[];
  readonly errors: number;
  readonly warnings: number;
}

export interface TrialOutcome {
  readonly sheets: readonly SheetOutcome[];
  readonly mistakes: readonly MistakeOutcome[];
}

const ranks: Readonly<Record<Severity, number>> = { note: 0, warning: 1, error: 2 };

/** Runs the trial of a folder: every right sheet as it is, then with each mistake by itself. */
export function runTrial(folder: URL): TrialOutcome {
  const root = fileURLToPath(folder);
  const project = openProject(root, root);
  const names = readdirSync(join(root, 'sheets'))
    .filter((name) => name.endsWith('.md'))
    .sort();
  const sheets: SheetOutcome[] = [];
  const mistakes: MistakeOutcome[] = [];
  for (const name of names) {
    const id = name.slice(0, -3);
    const path = join(root, 'sheets', name);
    const text = readFileSync(path, 'utf8');
    const right = examined(project, path, text);
    sheets.push({
      sheet: id,
      findings: right.findings.map((one) => told(one, right.sheet)),
      errors: right.findings.filter(({ severity }) => severity === 'error').length,
      warnings: right.findings.filter(({ severity }) => severity === 'warning').length,
    });
    const known = new Set(right.findings.map(sameness));
    const list = parse(readFileSync(join(root, 'mistakes', `${id}.yaml`), 'utf8')) as Mistake[];
    for (const mistake of list) {
      const altered = applied(text, mistake, id);
      const { sheet, findings } = examined(project, path, altered);
      const fresh = findings.filter((one) => !known.has(sameness(one)));
      mistakes.push(judged(id, mistake, altered, sheet, fresh));
    }
  }
  return { sheets, mistakes };
}

function examined(project: Project, path: string, text: string) {
  return examineText(project, path, project.show(path), text);
}

/** What makes two findings the same although lines have moved. */
function sameness({ check, message }: Finding): string {
  return `${check} ${message}`;
}

function applied(text: string, { edit, name }: Mistake, sheet: string): string {
  return edit.reduce((before, { from, to }) => {
    const parts = before.split(from);
    if (parts.length !== 2)
      throw new Error(`${sheet}: ${name}: ${parts.length - 1} times: ${from}`);
    return parts.join(to);
  }, text);
}

function judged(
  id: string,
  mistake: Mistake,
  text: string,
  sheet: Sheet,
  fresh: readonly Finding[],
): MistakeOutcome {
  const marked = [mistake.at].flat().flatMap((part) => linesOf(text, part));
  const around = mistake.entry === undefined ? [] : entryLines(text, mistake.entry);
  const lineAt = (offset: number) => sheet.lines.place(offset).line;
  const onLine = fresh.filter(({ span }) => marked.includes(lineAt(span.start)));
  const onEntry = fresh.filter(
    ({ span, related }) =>
      around.includes(lineAt(span.start)) ||
      related.some((one) => [...marked, ...around].includes(lineAt(one.span.start))),
  );
  const there = onLine.length > 0 ? onLine : onEntry;
  return {
    sheet: id,
    mistake,
    found: onLine.length > 0 ? 'line' : onEntry.length > 0 ? 'entry' : 'missed',
    graveEnough: there.some(({ severity }) => ranks[severity] >= ranks[mistake.severity]),
    further: Math.max(0, fresh.length - 1),
    truthAt: mistake.truth === undefined ? null : placeOfTruth(mistake.truth, fresh),
    said: fresh.map((one) => told(one, sheet)),
  };
}

/** The lines, from 1, on which a text stands. */
function linesOf(text: string, part: string): readonly number[] {
  const start = text.indexOf(part);
  if (start < 0) throw new Error(`\`${part}\` does not stand in the altered sheet`);
  const first = text.slice(0, start).split('\n').length;
  return part
    .trimEnd()
    .split('\n')
    .map((_, index) => first + index);
}

/** The lines of a setting's entry in the front matter, and of the steps that print it. */
function entryLines(text: string, entry: string): readonly number[] {
  const lines = text.split('\n');
  const found: number[] = [];
  const begin = lines.findIndex((line) => line.startsWith(`  ${entry}:`));
  if (begin >= 0) {
    found.push(begin + 1);
    for (let next = begin + 1; /^ {3,}\S/.test(lines[next] ?? ''); next++) found.push(next + 1);
  }
  lines.forEach((line, index) => {
    if (line.includes(`:value[${entry}]`)) found.push(index + 1);
  });
  return found;
}

/** The cures that a finding offers, one after the other as a reader meets them. */
function curesOf({ fix, message }: Finding): readonly string[] {
  return [...(fix ?? '').split(/;|,? or (?=[^a-z]|`|No\. )/), message];
}

function placeOfTruth(truth: string, fresh: readonly Finding[]): number | null {
  const wanted = plain(truth);
  const places = fresh.flatMap((finding) => {
    const at = curesOf(finding).findIndex((cure) => plain(cure).includes(wanted));
    return at < 0 || at >= curesOf(finding).length - 1 ? [] : [at + 1];
  });
  return places.length === 0 ? null : Math.min(...places);
}

/** A text without what marks its form, and with one space between words. */
function plain(text: string): string {
  const signs = text.replaceAll('`', '').replaceAll('×', 'x').replaceAll('·', ' ');
  return ` ${signs.replace(/[\s ]+/g, ' ')} `.replace(/ (0?)\./g, ' 0.').trim();
}

function told(finding: Finding, sheet: Sheet): string {
  const { line, column } = sheet.lines.place(finding.span.start);
  const { severity, check, message, fix } = finding;
  return `${line}:${column} ${severity} ${check}: ${message}${fix === null ? '' : ` / ${fix}`}`;
}

export interface Figures {
  readonly sheets: number;
  readonly errorsOnRight: number;
  readonly warningsOnRight: number;
  readonly knowable: number;
  readonly line: number;
  readonly entry: number;
  readonly missed: number;
  readonly truths: number;
  readonly truthNamed: number;
  readonly furtherEach: number;
}

/** The figures of a trial; what could not be known is left out of what could be missed. */
export function figuresOf({ sheets, mistakes }: TrialOutcome): Figures {
  const knowable = mistakes.filter(({ mistake }) => mistake.knowable);
  const count = (found: MistakeOutcome['found']) =>
    knowable.filter((one) => one.found === found).length;
  const truths = knowable.filter(({ mistake }) => mistake.truth !== undefined);
  const total = (numbers: readonly number[]) => numbers.reduce((sum, one) => sum + one, 0);
  return {
    sheets: sheets.length,
    errorsOnRight: total(sheets.map(({ errors }) => errors)),
    warningsOnRight: total(sheets.map(({ warnings }) => warnings)),
    knowable: knowable.length,
    line: count('line'),
    entry: count('entry'),
    missed: count('missed'),
    truths: truths.length,
    truthNamed: truths.filter(({ truthAt }) => truthAt !== null && truthAt <= 2).length,
    furtherEach: total(knowable.map(({ further }) => further)) / Math.max(1, knowable.length),
  };
}
