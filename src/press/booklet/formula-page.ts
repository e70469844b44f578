import { gaugeBook } from '../../gauges/index.ts';
import { workedNumbers } from '../../relations/index.ts';
import type { Relation } from '../../relations/model.ts';
import type { SheetToPrint } from '../orders/model.ts';
import type { Chapter } from './chapter.ts';
import type { ChapterPlace } from './where-worked.ts';

/** A formula that figures of the edition were worked with. */
export interface FormulaLine {
  readonly title: string;
  readonly formula: string;
  readonly source: string;
  /** What must be so for it to hold, in one text. */
  readonly assumptions: string;
  readonly usedBy: readonly ChapterPlace[];
}

/** The formulas of all worked figures that the chapters show, in the order of the alphabet. */
export function formulaPage(
  sheets: readonly SheetToPrint[],
  chapters: readonly Chapter[],
  altitude: string | null,
): readonly FormulaLine[] {
  const facts = { gauges: gaugeBook(), wireGauge: null, altitude };
  const used = new Map<string, { relation: Relation; usedBy: ChapterPlace[] }>();
  for (const [index, { sheet }] of sheets.entries()) {
    const chapter = chapters[index];
    if (!chapter) continue;
    const relations = new Set(workedNumbers(sheet, facts).figures.map((each) => each.relation));
    for (const relation of relations) {
      const line = used.get(relation.id) ?? { relation, usedBy: [] };
      used.set(relation.id, line);
      line.usedBy.push({ number: chapter.number, anchor: chapter.anchor });
    }
  }
  return [...used.values()]
    .sort(({ relation: { title: one } }, { relation: { title: two } }) => (one < two ? -1 : 1))
    .map(({ relation: { title, formula, source, assumptions }, usedBy }) => ({
      title,
      formula,
      source: capital(spelled(source.replace(/[.\s]+$/, ''))),
      assumptions: spelled(assumptions.map((each) => `${each.replace(/[.\s]+$/, '')}.`).join(' ')),
      usedBy,
    }));
}

/** Signs that the fonts of the built-in templates lack; in a formula the lettering sees to them. */
const spellings: readonly (readonly [string, string])[] = [['∝', 'varies as']];

function spelled(formula: string): string {
  return spellings.reduce((text, [sign, word]) => text.replaceAll(sign, word), formula);
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
