import type { Operation, Setting, Sheet } from './model.ts';

/** A setting with the number that it goes by wherever it is printed. */
export interface NumberedSetting {
  /**
   * The number of the task that makes it, `5`; with a small letter where that makes several, `5a`. A
   * capital letter, `A`, where no task makes it.
   */
  readonly number: string;
  /** The number of that task; null where no task makes it. */
  readonly task: number | null;
  readonly setting: Setting;
}

/** One task of a sheet: an operation that is work. */
export interface Task {
  /** Counted from 1 in the order of work; headings that are no work do not count. */
  readonly number: number;
  readonly operation: Operation;
  /** The settings that it makes, in the order that its steps print them. */
  readonly settings: readonly NumberedSetting[];
}

/** The work of a sheet under the numbers that every print calls it by. */
export interface Tasks {
  /** In the order of work. */
  readonly tasks: readonly Task[];
  /** All settings in that order; those that no task makes stand last, in the order of the sheet. */
  readonly settings: readonly NumberedSetting[];
  /** The number of the task that an operation is; null for one that is no work. By the operation's index. */
  numberOf(operation: number): number | null;
}

/**
 * Numbers the tasks and settings of a sheet. A setting belongs to the first task that the kind says makes
 * it, else to the first whose steps print it: a later one that makes it again has a number of its own,
 * and the setting keeps the first.
 */
export function tasksOf(sheet: Sheet): Tasks {
  const work = sheet.operations.filter((operation) => isWork(operation, sheet));
  const numbers = new Map(work.map((operation, at) => [operation.index, at + 1]));
  const made = new Map<number, Setting[]>();
  const loose: Setting[] = [];
  for (const setting of sheet.settings.values()) {
    const maker = makerOf(setting, work, sheet);
    if (maker === null) loose.push(setting);
    else made.set(maker.index, [...(made.get(maker.index) ?? []), setting]);
  }
  const tasks = work.map((operation, at): Task => {
    const settings = inStepOrder(made.get(operation.index) ?? [], operation, sheet);
    const number = at + 1;
    return {
      number,
      operation,
      settings: settings.map((setting, place) => ({
        number: settings.length === 1 ? `${number}` : `${number}${lettersFor(place)}`,
        task: number,
        setting,
      })),
    };
  });
  const unmade = loose.map((setting, at) => ({
    number: lettersFor(at).toUpperCase(),
    task: null,
    setting,
  }));
  return {
    tasks,
    settings: [...tasks.flatMap(({ settings }) => settings), ...unmade],
    numberOf: (operation) => numbers.get(operation) ?? null,
  };
}

/** `a`, `b` ... `z`, `aa`, by an index from 0. */
export function lettersFor(index: number): string {
  const letter = String.fromCharCode(97 + (index % 26));
  return index < 26 ? letter : lettersFor(Math.floor(index / 26) - 1) + letter;
}

/** What the kind knows as work, and what it does not know or calls none but which has steps all the same. */
function isWork({ index, known, steps }: Operation, sheet: Sheet): boolean {
  if (known !== null && known.stage !== 'any') return true;
  return steps.length > 0 || sheet.values.some(({ operation }) => operation === index);
}

function makerOf(setting: Setting, work: readonly Operation[], sheet: Sheet): Operation | null {
  const makes = work.find(({ known }) => known?.settings.some((name) => name === setting.id));
  if (makes !== undefined) return makes;
  const printed = new Set(
    sheet.values.filter((use) => use.setting === setting).map(({ operation }) => operation),
  );
  return work.find(({ index }) => printed.has(index)) ?? null;
}

/** As the steps print them, then as the kind lists them, then as the sheet does. */
function inStepOrder(
  settings: readonly Setting[],
  { index, known }: Operation,
  sheet: Sheet,
): readonly Setting[] {
  const ordered = new Set<Setting>();
  for (const use of sheet.values) {
    if (use.operation === index && use.setting && settings.includes(use.setting)) {
      ordered.add(use.setting);
    }
  }
  for (const name of known?.settings ?? []) {
    for (const setting of settings) if (setting.id === name) ordered.add(setting);
  }
  for (const setting of settings) ordered.add(setting);
  return [...ordered];
}
