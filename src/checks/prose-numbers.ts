import type { Kind } from '../kinds/model.ts';
import { scanStatements } from '../quantity/index.ts';
import type { GaugeBook, Sense, Statement } from '../quantity/model.ts';
import { operationIn, settingNamed } from '../sheet/index.ts';
import type { Operation, PlacedSize, Setting, Sheet } from '../sheet/model.ts';
import { oncePer, type Span } from '../text/index.ts';
import type { CheckContext } from './define.ts';
import { isAside, type Told } from './prose-asides.ts';
import { sentenceAround } from './prose-sentence.ts';
import { standing } from './prose-standing.ts';

/** A size typed in the prose, and the size of the front matter that it is or should be. */
export interface ProseNumber {
  readonly span: Span;
  readonly statement: Statement;
  /**
   * `typed`: it is a setting's own size; `near`: it stands beside a setting of its dimension and
   * is another size; `stray`: nothing on the sheet is that size.
   */
  readonly standing: 'typed' | 'near' | 'stray';
  readonly setting: Setting | null;
  /** What it is held against; null for a stray. */
  readonly against: { readonly size: PlacedSize; readonly statement: Statement } | null;
  /** Whether it is written just as the setting's value or one of its `also` is. */
  readonly verbatim: boolean;
  /** Whether the sentence names the setting or stands under its heading: without, no mark belongs there. */
  readonly meant: boolean;
  /** Of one that is `near` a setting, another setting whose own size it is; null where there is none. */
  readonly elsewhere: Setting | null;
}

/**
 * Every size in the prose of the work that is no tool's, no step's and no part number's, with how
 * it stands to the settings. Read once a sheet; three checks share it.
 */
export function proseNumbers(sheet: Sheet, context: CheckContext): readonly ProseNumber[] {
  return readProse(sheet)(context.gauges);
}

const readProse = oncePer((sheet: Sheet) =>
  oncePer((gauges: GaugeBook): readonly ProseNumber[] => {
    const { kind } = sheet;
    const numbers: ProseNumber[] = [];
    if (kind === null) return numbers;
    const beside = new Map<number, readonly Setting[]>();
    for (const prose of sheet.prose) {
      const operation =
        prose.operation === null ? null : (sheet.operations[prose.operation] ?? null);
      for (const found of scanStatements(prose.text, { gauges })) {
        const span = { start: prose.span.start + found.start, end: prose.span.start + found.end };
        const sentence = sentenceAround(sheet.text, prose.block, span);
        const near = operation ? settingsBeside(operation, sheet, beside) : [];
        const sense = found.statement.sense ?? senseBefore(sentence.before, operation, kind);
        const statement = { ...found.statement, sense };
        if (statement.dimension === 'turns' && !isSet(sense, sentence, operation, kind)) continue;
        const told: Told = {
          statement,
          ...sentence,
          near,
          printedAfter: isPrinted({ start: span.end, end: prose.block.end }, near, sheet),
          printedBeside: isPrinted(prose.block, near, sheet),
          inStep:
            sentence.row || (operation?.steps.some((step) => holds(step.span, span)) ?? false),
        };
        if (isAside(told, sheet, kind)) continue;
        const number = standing(span, told, sheet);
        if (number && !(found.worded && number.standing === 'stray')) numbers.push(number);
      }
    }
    return numbers;
  }),
);

function holds(outer: Span, inner: Span): boolean {
  return outer.start <= inner.start && inner.end <= outer.end;
}

/** Where the engine runs, a screw is turned from wherever it stands, and no count is a setting. */
function countsFromSeat(operation: Operation | null, kind: Kind): boolean {
  const stage = operationIn(kind, operation)?.stage;
  return stage === 'bench' || stage === 'before-start';
}

const WAY =
  /\b(out|in|down|up)(?: by| about| exactly| again| alike| both| for| of it| to| further)*(?: ?[:,])? ?$/;
const OPENED =
  /\b(?:open(?:s|ed|ing)?|unscrew(?:s|ed|ing)?|back(?:s|ed|ing)?(?: \p{L}+)? off|opened up)\b(?! (?:the throttle|the choke|wide))[^,;:]*$/u;

/** `back it out 1-1/2 turns`, `open it 1-3/4 turns`: the way said before the count. */
function senseBefore(before: string, operation: Operation | null, kind: Kind): Sense | null {
  if (!countsFromSeat(operation, kind)) return null;
  const near = before.slice(-60);
  const way = WAY.exec(near)?.[1];
  if (way !== undefined) return way as Sense;
  return OPENED.test(near) ? 'out' : null;
}

const TURNED = /\b(?:turn|give|screw|bring|set|rotate|wind|adjust|move|run)s?\b[^;:]*$/;
const UNDONE =
  /\b(?:loosen|slacken|undo|unlock|ease|crack|release|tighten|wiggle|rock|work|lock ?nut|clamp|union|bolts?|cover screws?)\b[^;:]*$/;

/** Whether a count of turns can be a setting: with its way, or where something is turned from its datum. */
function isSet(
  sense: Sense | null,
  { before }: { readonly before: string },
  operation: Operation | null,
  kind: Kind,
): boolean {
  if (UNDONE.test(before)) return false;
  return sense !== null || (countsFromSeat(operation, kind) && TURNED.test(before));
}

/** Whether a stretch of the text prints one of some settings. */
function isPrinted(within: Span, near: readonly Setting[], sheet: Sheet): boolean {
  return sheet.values.some(
    ({ span, setting }) => setting !== null && near.includes(setting) && holds(within, span),
  );
}

/** The settings that an operation makes, and those that its own steps print. */
function settingsBeside(
  operation: Operation,
  sheet: Sheet,
  cache: Map<number, readonly Setting[]>,
): readonly Setting[] {
  const before = cache.get(operation.index);
  if (before) return before;
  const beside = new Set<Setting>();
  for (const name of operation.known?.settings ?? []) {
    const setting = settingNamed(name, sheet);
    if (setting) beside.add(setting);
  }
  for (const use of sheet.values) {
    if (use.operation === operation.index && use.setting) beside.add(use.setting);
  }
  const settings = [...beside];
  cache.set(operation.index, settings);
  return settings;
}
