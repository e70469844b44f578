import { levelName } from '../kinds/index.ts';
import type { Kind, KindSetting } from '../kinds/model.ts';
import { featureSaid, featureWords, yesOrNo } from './feature-words.ts';
import { type HeadGuess, headParts } from './head-words.ts';
import type { Cell, Table } from './list-model.ts';
import { targetText } from './mapping.ts';
import { cellText, readCell, saysNothing } from './read-cell.ts';
import { isUsual, usualForms } from './usual-size.ts';
import type { SizeTools } from './written-size.ts';

/** So many values below a head are looked at. */
const LOOKED_AT = 200;

/** Where the heads of a list of units stand, and of which kind they are. */
export interface HeadsPlace {
  readonly table: Table;
  /** The row of heads, 1-based. */
  readonly heads: number;
  readonly kind: Kind;
}

/**
 * What a head was taken for, held against the values below it: `Fast idle` over 1400 is a speed and
 * over 22 SWG a gap, `Pump` over yes and no says whether there is one. A guess that most values speak
 * against gives way to the one that they bear out, and is not sure any more where there is none.
 */
export function againstValues(
  guess: HeadGuess,
  column: number,
  { table, heads, kind }: HeadsPlace,
  tools: SizeTools,
): HeadGuess {
  const head = table.rows.find(({ row }) => row === heads)?.cells.get(column)?.text ?? '';
  const values = valuesBelow(table, heads, column);
  const isMost = (test: (cell: Cell) => boolean) => values.filter(test).length * 2 > values.length;
  if (values.length === 0 || !isOpen(guess)) return guess;
  const bearsOut = (setting: KindSetting) =>
    isMost((cell) => isSizeOf(cell, setting, guess.unit, tools));
  const named = guess.to.to === 'value' ? kind.settings.get(guess.to.setting) : undefined;
  if (named !== undefined && bearsOut(named)) return guess;
  if (guess.to.to === 'feature' && isMost(isAnswer)) return guess;
  const feature = kind.featureNamed(head);
  if (feature !== null && isMost(isAnswer)) {
    return likely({ to: 'feature', feature: feature.name }, 'the values below are yes and no');
  }
  // A head that states its setting and the unit of it means that, whatever stands below.
  const isPlain = guess.confidence === 'sure' && guess.unit !== null;
  const kin = isPlain ? [] : kinOf(head, kind).filter(bearsOut);
  const [only, ...more] = kin;
  if (only !== undefined && more.length === 0) {
    const because = `the values below are sizes of ${only.name}`;
    return { ...likely({ to: 'value', setting: only.name }, because), unit: guess.unit };
  }
  if (only !== undefined) {
    const names = kin.map(({ name }) => name).join(' or ');
    const because = `by the values below it could be ${names}`;
    return { to: { to: 'nothing' }, unit: null, confidence: 'none', because };
  }
  const isFeature = (cell: Cell) =>
    featureWords(cellText(cell)).every((word) => featureSaid(word, head, kind) !== null);
  if (isMost(isFeature))
    return likely({ to: 'field', field: 'features' }, 'the values below say it');
  if (named === undefined) return guess;
  const odd = values.filter((cell) => !isSizeOf(cell, named, guess.unit, tools)).length;
  const because = `${guess.because}; ${odd} of ${values.length} values below are no size of it`;
  return { ...guess, confidence: 'likely', because };
}

/** Whether a cell says yes or no. */
function isAnswer(cell: Cell): boolean {
  return yesOrNo(cellText(cell)) !== null;
}

/** Whether the values have a say: not where a head plainly names what is no size. */
function isOpen({ to, confidence }: HeadGuess): boolean {
  return to.to === 'value' || to.to === 'feature' || confidence !== 'sure';
}

function valuesBelow(table: Table, heads: number, column: number): readonly Cell[] {
  return table.rows
    .filter(({ row, hidden }) => row > heads && !hidden)
    .map(({ cells }) => cells.get(column) ?? null)
    .filter((cell): cell is Cell => cell !== null && !saysNothing(cell))
    .slice(0, LOOKED_AT);
}

/**
 * Whether a cell holds a usual size of a setting, or a bare number that some unit makes one; words
 * are one only where the setting is stated in nothing else.
 */
function isSizeOf(
  cell: Cell,
  setting: KindSetting,
  unit: string | null,
  tools: SizeTools,
): boolean {
  const read = readCell(cell, setting, unit, tools);
  if (read.is === 'size') {
    const isWord = read.statement.condition !== null;
    return isWord ? setting.usual.length === 0 : isUsual(read.statement, setting) !== false;
  }
  // What a spreadsheet spoiled, or a footnote marks, is told by its cell and speaks against nothing.
  if (read.is === 'slip' && read.code !== 'no-unit') {
    return !['dimension', 'unreadable'].includes(read.code);
  }
  return unit === null && usualForms(cellText(cell), setting, tools).length > 0;
}

/** The settings that have all words of a head in one of their names: `Pump` is any of a pump. */
function kinOf(head: string, kind: Kind): readonly KindSetting[] {
  const forms = [...headParts(head)].map(({ name }) => levelName(name).split('-'));
  // A table has a row for each station, and no column of a list holds that.
  const figures = [...kind.settings.values()].filter(({ curve }) => curve === null);
  return figures.filter(({ name, label, aliases }) =>
    [name, label, ...aliases].some((each) => {
      const words = levelName(each).split('-');
      return forms.some((form) => form.every((word) => words.includes(word)));
    }),
  );
}

function likely(to: HeadGuess['to'], because: string): HeadGuess {
  return { to, unit: null, confidence: 'likely', because: `${because}: ${targetText(to)}` };
}
