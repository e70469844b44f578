import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { parse } from 'yaml';
import { allChecks, type CheckContext, type Finding } from '../../../src/checks/index.ts';
import { examine } from '../../../src/checks/list.ts';
import { runChecks } from '../../../src/checks/run.ts';
import { gaugeBook } from '../../../src/gauges/index.ts';
import { builtInKinds } from '../../../src/kinds/index.ts';
import { readSheet } from '../../../src/sheet/index.ts';
import { casesToTry } from '../../suite/part.ts';

/** What ought to be said of a change. */
type Ruling = 'wrong' | 'usual' | 'harmless';

interface Verdict {
  readonly verdict: Ruling;
  readonly about?: readonly string[];
}

interface Verdicts {
  readonly swaps?: readonly (Verdict & { readonly a: string; readonly b: string })[];
  readonly moves?: readonly (Verdict & {
    readonly heading: string;
    readonly before?: string;
    readonly after?: string;
  })[];
  readonly removals?: readonly (Verdict & { readonly step: string })[];
  readonly blunders?: readonly (Verdict & {
    readonly name: string;
    readonly plain?: boolean;
    readonly edit: readonly { readonly from: string; readonly to: string }[];
  })[];
}

/** How often out of how many. */
interface Share {
  count: number;
  of: number;
}

/** What a trial of a folder came to; `misses` name every case that was not met. */
export interface TrialFigures {
  sheets: number;
  /** Errors on sheets as they stand, marked and plain. */
  readonly rightErrors: string[];
  readonly rightWarnings: string[];
  /** Harmless changes with a new error; usual ones with a new error or warning; marked and plain. */
  readonly harmless: Share;
  readonly usual: Share;
  /** Wrong changes of marked sheets that are told for the right reason, and of plain ones noted. */
  readonly caught: Share;
  readonly noted: Share;
  readonly misses: string[];
}

const context: CheckContext = {
  gauges: gaugeBook(),
  kinds: builtInKinds(),
  wireGauge: 'imperial',
  picture: null,
};

/** Tries every sheet of a folder, `sheets/*.md` with `verdicts/*.yaml`, as it stands and without its marks. */
export function tryFolder(folder: string): TrialFigures {
  const figures: TrialFigures = {
    sheets: 0,
    rightErrors: [],
    rightWarnings: [],
    harmless: { count: 0, of: 0 },
    usual: { count: 0, of: 0 },
    caught: { count: 0, of: 0 },
    noted: { count: 0, of: 0 },
    misses: [],
  };
  const files = readdirSync(join(folder, 'sheets')).filter((name) => name.endsWith('.md'));
  for (const file of casesToTry(files.sort(), 3)) {
    const text = readFileSync(join(folder, 'sheets', file), 'utf8');
    const id = basename(file, '.md');
    const verdicts = parse(
      readFileSync(join(folder, 'verdicts', `${id}.yaml`), 'utf8'),
    ) as Verdicts;
    figures.sheets++;
    trySheet(id, text, verdicts, figures);
  }
  return figures;
}

function trySheet(id: string, text: string, verdicts: Verdicts, figures: TrialFigures): void {
  for (const isPlain of [false, true]) {
    const voice = isPlain ? 'plain' : 'marked';
    const shown = (changed: string): string => (isPlain ? withoutMarks(changed) : changed);
    const right = findings(shown(text), id);
    for (const finding of examine(shown(text), `sheets/${id}.md`, context).findings) {
      if (finding.accepted !== null) continue;
      const told = `${id} ${voice}: ${said(finding)}`;
      if (finding.severity === 'error') figures.rightErrors.push(told);
      else if (finding.severity === 'warning') figures.rightWarnings.push(told);
    }
    for (const { what, changed, verdict, about = [], plain } of changes(text, verdicts)) {
      if (isPlain && plain === false) continue;
      if (changed === null || changed === text) {
        figures.misses.push(`${id}: nothing to change for ${what}`);
        continue;
      }
      const fresh = newOf(findings(shown(changed), id), right);
      const grave = fresh.filter(({ severity }) => severity !== 'note');
      const note = (why: string): void => {
        const list = fresh.map((each) => `      ${said(each)}`).join('\n');
        figures.misses.push(`${id} ${voice}, ${verdict}: ${what}: ${why}\n${list}`);
      };
      if (verdict === 'harmless') {
        figures.harmless.of++;
        if (fresh.some(({ severity }) => severity === 'error')) {
          figures.harmless.count++;
          note('a new error');
        }
      } else if (verdict === 'usual') {
        figures.usual.of++;
        if (grave.length > 0) {
          figures.usual.count++;
          note('more than a note');
        }
      } else if (isPlain) {
        figures.noted.of++;
        if (fresh.some((each) => isAbout(each, about))) figures.noted.count++;
        else note('not noted');
      } else {
        figures.caught.of++;
        if (grave.some((each) => isAbout(each, about))) figures.caught.count++;
        else note(`not caught (${about.join(', ')})`);
      }
    }
  }
}

function said({ severity, check, message }: Finding): string {
  return `${severity} ${check}: ${message}`;
}

/** A change of order is seen by what is said of the order; a right sheet is held to everything. */
const orderChecks = allChecks.filter(
  ({ group, id }) => group === 'order' || id === 'setting-unused',
);

function findings(text: string, id: string): readonly Finding[] {
  const sheet = readSheet(text, `sheets/${id}.md`, context);
  return runChecks(orderChecks, sheet, context).filter(({ accepted }) => accepted === null);
}

/** Findings that the sheet as it stands has not, each as often as it is more. */
function newOf(found: readonly Finding[], right: readonly Finding[]): readonly Finding[] {
  const left = new Map<string, number>();
  for (const each of right) left.set(said(each), (left.get(said(each)) ?? 0) + 1);
  return found.filter((each) => {
    const count = left.get(said(each)) ?? 0;
    left.set(said(each), count - 1);
    return count <= 0;
  });
}

const plainly = (text: string): string => text.toLowerCase().replace(/[^a-z0-9]+/g, ' ');

function isAbout({ message, fix, subject }: Finding, about: readonly string[]): boolean {
  const words = plainly(`${message} ${fix ?? ''} ${subject ?? ''}`);
  return about.some((each) => words.includes(plainly(each).trim()));
}

function withoutMarks(text: string): string {
  return text.replace(/[ \t]*:state\[[^\]]*\]/g, '');
}

interface Change extends Verdict {
  readonly what: string;
  readonly changed: string | null;
  readonly plain?: boolean;
}

function* changes(text: string, verdicts: Verdicts): Generator<Change> {
  const sections = text.trimEnd().split(/^(?=## )/m);
  const titled = (heading: string): number =>
    sections.findIndex((each) => each.startsWith('## ') && title(each) === plainTitle(heading));
  const joined = (order: readonly string[]): string =>
    `${order.map((each) => each.trimEnd()).join('\n\n')}\n`;
  for (const { a, b, ...verdict } of verdicts.swaps ?? []) {
    const [one, two] = [titled(a), titled(b)];
    const order = [...sections];
    [order[one], order[two]] = [sections[two] ?? '', sections[one] ?? ''];
    yield {
      ...verdict,
      what: `${b} before ${a}`,
      changed: one < 1 || two < 1 ? null : joined(order),
    };
  }
  for (const { heading, before, after, ...verdict } of verdicts.moves ?? []) {
    const from = titled(heading);
    const beside = titled(before ?? after ?? '');
    const order = [...sections];
    const [section = ''] = order.splice(from, 1);
    const at = order.indexOf(sections[beside] ?? '') + (before === undefined ? 1 : 0);
    order.splice(at, 0, section);
    const what = `${heading} moved ${before === undefined ? 'after' : 'before'} ${before ?? after}`;
    yield { ...verdict, what, changed: from < 1 || beside < 1 ? null : joined(order) };
  }
  for (const { step, ...verdict } of verdicts.removals ?? []) {
    yield { ...verdict, what: `without “${step}”`, changed: withoutStep(text, step) };
  }
  for (const { name, edit, ...verdict } of verdicts.blunders ?? []) {
    const changed = edit.reduce<string | null>(
      (now, { from, to }) => (now?.includes(from) ? now.replace(from, () => to) : null),
      text,
    );
    yield { ...verdict, what: name, changed };
  }
}

/** The sheet without a numbered step, found by its words with or without its marks. */
function withoutStep(text: string, step: string): string | null {
  const start = text.indexOf('\n---\n') + 5;
  const words = (each: string): string =>
    withoutMarks(each)
      .replace(/^\d+\.\s+/, '')
      .replace(/\s+/g, ' ')
      .trim();
  for (const found of text.slice(start).matchAll(/^\d+\. .*\n(?: {2,}.*\n)*/gm)) {
    if (words(found[0]) !== words(step)) continue;
    const at = start + found.index;
    return text.slice(0, at) + text.slice(at + found[0].length);
  }
  return null;
}

function title(section: string): string {
  return plainTitle(section.split('\n')[0] ?? '');
}

function plainTitle(heading: string): string {
  return heading
    .replace(/^##\s*/, '')
    .replace(/\s*\{#[^}]*\}\s*$/, '')
    .trim();
}

/** The figures as lines to read. */
export function figuresText(figures: TrialFigures): string {
  const share = ({ count, of }: Share): string =>
    `${count} of ${of} (${of === 0 ? '-' : ((100 * count) / of).toFixed(1)} %)`;
  return [
    `${figures.sheets} right sheets, marked and plain: ${figures.rightErrors.length} errors, ${figures.rightWarnings.length} warnings`,
    `harmless changes with a new error: ${share(figures.harmless)}`,
    `usual changes with an error or warning: ${share(figures.usual)}`,
    `wrong changes caught for the right reason, marked: ${share(figures.caught)}`,
    `wrong changes noted, plain: ${share(figures.noted)}`,
  ].join('\n');
}
