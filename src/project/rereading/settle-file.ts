import type { Finding } from '../../checks/index.ts';
import { applyEdits } from '../../report/index.ts';
import { differing, settleEdits } from '../../rereading/index.ts';
import type { Asked, Compared, Comparison, Settled, SettledFor } from '../../rereading/model.ts';
import { ownText, settingNamed } from '../../sheet/index.ts';
import { examineText } from '../examine-file.ts';
import type { Project } from '../project.ts';
import { Refusal } from '../refusal.ts';
import { writeWhole } from '../write-whole.ts';
import { type ComparedReading, compareWith } from './compare-file.ts';
import { keepReading } from './keep-reading.ts';

/** What somebody decided. */
export interface Settling {
  /** A setting of the reading, with the page in front where it is asked for on several: `float-level`. */
  readonly name: string;
  readonly for: SettledFor;
  readonly by: string;
  readonly why: string;
  /** What the page says, where neither had it right. */
  readonly third: string | null;
}

/** What came of settling. */
export interface SettledFile {
  readonly settled: Settled;
  readonly compared: Comparison;
  /** Findings that the sheet has now and had not before. */
  readonly fresh: readonly Finding[];
  readonly changed: boolean;
}

/**
 * Settles one difference: writes the sheet where its figure was wrong, and then the reading's file. Before
 * anything is written the sheet that would come of it is read and checked, and has to say just that. Fails
 * with `Refusal`, and nothing written.
 */
export function settleFile(
  project: Project,
  { compared, file, examined }: ComparedReading,
  settling: Settling,
): SettledFile {
  const one = wanted(compared, settling.name, examined.sheet);
  const wrong = differing(one);
  if (wrong.length === 0) {
    throw new Refusal(
      `${one.asked.key} does not differ: it is ${one.verdict}`,
      'only what differs, or was not found on its page, is settled',
    );
  }
  let now: Pick<typeof examined, 'sheet' | 'findings'> = examined;
  let told = compared;
  const before = ownText(examined.sheet);
  if (settling.for !== 'first') {
    const edits = settleEdits(examined.sheet, one, settling.third);
    if (!edits.ok) throw new Refusal(edits.message, edits.fix);
    const text = applyEdits(before, edits.edits);
    now = examineText(project, examined.path, examined.sheet.file, text);
    told = compareWith(project, compared.reading, { sheet: now.sheet, path: examined.path });
    const after = told.compared.find(
      ({ asked }) => asked.key === one.asked.key && asked.page === one.asked.page,
    );
    const isSame = settling.third !== null || (after && differing(after).length === 0);
    const isRead = isSame && after && isFigure(after.asked);
    if (now.sheet.problems.length > examined.sheet.problems.length || !after || !isRead) {
      const words = settling.third ?? wrong[0]?.answer?.value ?? '';
      throw new Refusal(
        `${words} cannot be written into the sheet as ${one.asked.key}: read back, it is not that figure`,
        'correct the sheet by hand, and compare again',
      );
    }
  }
  const after =
    told.compared.find(
      ({ asked }) => asked.key === one.asked.key && asked.page === one.asked.page,
    ) ?? one;
  const words = (tell: (part: (typeof wrong)[number]) => string) => wrong.map(tell).join('; ');
  const settled: Settled = {
    page: one.asked.page,
    setting: one.asked.key,
    for: settling.for,
    first: words(({ part }) => part.text),
    second: words(({ answer }) => answer?.value ?? ''),
    by: settling.by,
    why: settling.why,
    sheet: after.sheet,
    answer: after.answer,
  };
  const text = ownText(now.sheet);
  const log = [...compared.reading.settled, settled];
  const reading = { ...compared.reading, settled: log };
  told = compareWith(project, reading, { sheet: now.sheet, path: examined.path });
  if (text !== before) writeWhole(examined.path, text, { within: project.root, was: before });
  keepReading(file, told, log);
  return {
    settled,
    compared: told,
    fresh: now.findings.filter((finding) => !examined.findings.some(isLike(finding))),
    changed: text !== before,
  };
}

/** Whether its figures read as sizes, or as words where the kind has words for it. */
function isFigure({ setting, parts }: Asked): boolean {
  const mayBeWords = setting.known?.dimensions.includes('condition') ?? true;
  return parts.every(
    ({ size, role }) =>
      size === null ||
      role !== 'figure' ||
      (size.reading.ok && (mayBeWords || size.reading.statement.condition === null)),
  );
}

function isLike({ check, message }: Finding): (other: Finding) => boolean {
  return (other) => other.check === check && other.message === message;
}

/** The statement that somebody means: by its name in the file, or by any name of the setting. */
function wanted(
  { compared }: Comparison,
  name: string,
  sheet: Parameters<typeof settingNamed>[1],
): Compared {
  const [page, key] = name.includes(':')
    ? [name.slice(0, name.indexOf(':')).trim(), name.slice(name.indexOf(':') + 1).trim()]
    : [null, name.trim()];
  const setting = settingNamed(key, sheet);
  const found = compared.filter(
    ({ asked }) =>
      (asked.key === key || asked.setting === setting) && (page === null || asked.page === page),
  );
  const apart = found.filter((each) => differing(each).length > 0);
  const [one, other] = apart.length > 0 ? apart : found;
  if (one === undefined) {
    const open = compared.filter((each) => differing(each).length > 0 && each.settled === null);
    throw new Refusal(
      `this reading has no ${name}`,
      open.length === 0
        ? 'nothing differs that is not settled'
        : `what differs: ${open.map(({ asked }) => asked.key).join(', ')}`,
    );
  }
  if (apart.length > 1 && other) {
    throw new Refusal(
      `${name} differs on ${one.asked.page} and on ${other.asked.page}`,
      `name the page too: --settle "${one.asked.page}: ${one.asked.key}=first"`,
    );
  }
  return one;
}
