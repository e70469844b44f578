import { gaugeBook } from '../../gauges/index.ts';
import { workedNumbers } from '../../relations/index.ts';
import type { Relation } from '../../relations/model.ts';
import { settingLabel, settingNamed } from '../../sheet/index.ts';
import type { Sheet } from '../../sheet/model.ts';
import type { PageLink, WorkedUnit } from './model.ts';

/** A formula that figures of the edition were worked by. */
export interface CitedFormula {
  readonly id: string;
  readonly title: string;
  readonly formula: string;
  readonly source: string;
  readonly assumptions: readonly string[];
  readonly range: string;
}

/** A unit whose figures are worked: its sheet, its page, and where on it each setting stands. */
export interface UnitToWork {
  readonly sheet: Sheet;
  readonly page: PageLink;
  /** The id of its part of the page of worked numbers. */
  readonly id: string;
  /** By the setting's name on the sheet. */
  readonly settingIds: ReadonlyMap<string, string>;
}

/**
 * What is worked from the figures of an edition and stated by no source, by unit, with the formulas
 * it was worked by. A unit that nothing is worked for is left out.
 */
export function workedModel(
  units: readonly UnitToWork[],
  altitude: string | null,
): { readonly units: readonly WorkedUnit[]; readonly formulas: readonly CitedFormula[] } {
  const used = new Map<string, Relation>();
  const worked = units.map((unit) => workedUnit(unit, altitude, used));
  return {
    units: worked.filter(({ figures, proved }) => figures.length > 0 || proved !== null),
    formulas: [...used.values()]
      .map(cited)
      .sort((first, second) => (first.id < second.id ? -1 : first.id > second.id ? 1 : 0)),
  };
}

function workedUnit(
  { sheet, page, id, settingIds }: UnitToWork,
  altitude: string | null,
  used: Map<string, Relation>,
): WorkedUnit {
  const facts = { gauges: gaugeBook(), wireGauge: null, altitude };
  const { figures, verdicts } = workedNumbers(sheet, facts);
  const agreed = verdicts.filter((verdict) => verdict.kind === 'agrees');
  for (const { relation } of figures) used.set(relation.id, relation);
  for (const { proof } of agreed) used.set(proof.instance.relation.id, proof.instance.relation);
  const places = new Set(agreed.map(({ place }) => place.id));
  return {
    ...page,
    id,
    proved: provedWords(places.size),
    figures: figures.map(({ of, at: place, label, text, told, relation }) => {
      const setting = settingNamed(of, sheet);
      const at = setting === null ? undefined : settingIds.get(setting.name.value);
      return {
        setting: setting === null ? of : settingLabel(setting),
        href: at === undefined ? page.href : `${page.href}#${at}`,
        label,
        place,
        text: text.text,
        told,
        formula: { href: `#${formulaId(relation)}`, label: relation.title },
      };
    }),
  };
}

function provedWords(count: number): string | null {
  if (count === 0) return null;
  if (count === 1) return 'One stated figure was worked again from the others, and agrees.';
  return `${count} stated figures were worked again from the others, and agree.`;
}

function formulaId({ id }: Relation): string {
  return `formula-${id}`;
}

function cited(relation: Relation): CitedFormula {
  const { title, formula, source, assumptions, range } = relation;
  return { id: formulaId(relation), title, formula, source, assumptions, range };
}
