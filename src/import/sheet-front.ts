import type { Kind } from '../kinds/model.ts';
import { scalar } from '../text/index.ts';
import type { GivenSetting, ListedUnit, NamedPaper } from './listed-unit.ts';

/** What stands where a figure or words are still to come; the check `blank-to-fill` finds it. */
export const blank = 'fill in';

/** What is known of the unit of a new sheet. */
export interface GivenFacts {
  readonly unit: ListedUnit;
  /** Where all of it comes from, most often a list: what the sheet cites it by, and what it is. */
  readonly source: {
    readonly name: string;
    readonly title: string;
    readonly kind: string | null;
    readonly year: string | null;
  };
}

/** The lines of `unit:` below its features, and of `fits:`. */
export function givenUnitLines({ unit }: GivenFacts): string[] {
  const lines: string[] = [];
  if (unit.partNumbers.length > 0) {
    lines.push(`  part-numbers: [${unit.partNumbers.map(scalar).join(', ')}]`);
  }
  for (const [key, text] of unit.facts) lines.push(`  ${key}: ${sizeScalar(text)}`);
  if (unit.fits === null) return lines;
  const { marque, model, years } = unit.fits;
  const parts = [`marque: ${scalar(marque)}`];
  if (model !== null) parts.push(`model: ${scalar(model)}`);
  if (years !== null) parts.push(`years: ${scalar(years)}`);
  lines.push('fits:', `  - { ${parts.join(', ')} }`);
  return lines;
}

/** The lines of `sources:`: the list itself with the unit's rows, and the papers that its rows name. */
export function givenSourceLines(given: GivenFacts): string[] {
  const { unit, source } = given;
  const parts = [`title: ${scalar(source.title)}`];
  if (source.kind !== null) parts.push(`kind: ${scalar(source.kind)}`);
  if (source.year !== null) parts.push(`year: ${yearScalar(source.year)}`);
  const note = noteOf(unit);
  if (note !== null) parts.push(`note: ${scalar(note)}`);
  const lines = [`  ${source.name}: { ${parts.join(', ')} }`];
  for (const [name, { title, year }] of papersOf(unit)) {
    const more = year === null ? '' : `, year: ${yearScalar(year)}`;
    lines.push(`  ${name}: { title: ${scalar(title)}${more} }`);
  }
  return lines;
}

/** The lines of one setting that the list gives; `null` is one that it says nothing of. */
export function givenSettingLines(
  name: string,
  setting: GivenSetting | null,
  kind: Kind,
  given: GivenFacts,
): string[] {
  const why = setting?.unread ?? null;
  const remark = why === null ? '' : ` # ${[setting?.cell, why].filter(Boolean).join(': ')}`;
  const lines = [
    `  ${name}:`,
    `    value: ${setting?.value == null ? blank : sizeScalar(setting.value)}`,
  ];
  lines[1] += remark.replace(/\s+/g, ' ').replace(/^ ?#/, ' #');
  if (setting !== null && setting.also.length > 0) {
    lines.push(`    also: [${setting.also.map(sizeScalar).join(', ')}]`);
  }
  for (const key of kind.settings.get(name)?.mustSay ?? []) {
    const instead = kind.settings.get(name)?.saidBy.get(key) ?? [];
    if (setting?.says.has(key) || instead.some((each) => setting?.says.has(each))) continue;
    lines.push(`    ${key}: ${blank}`);
  }
  for (const [key, said] of setting?.says ?? []) lines.push(`    ${key}: ${scalar(said)}`);
  const { name: list } = given.source;
  const cited = [setting?.cell ? `${list} ${setting.cell}` : list];
  const paper = setting?.paper ?? null;
  if (paper !== null) {
    const found = [...papersOf(given.unit)].find(([, each]) => samePaper(each, paper));
    if (found) cited.unshift(paper.page === null ? found[0] : `${found[0]} ${paper.page}`);
  }
  const [first = '', ...more] = cited.map(scalar);
  lines.push(`    from: ${more.length === 0 ? first : `[${[first, ...more].join(', ')}]`}`);
  return lines;
}

/** The rows of a unit and what the list remarks there; null where it has neither. */
function noteOf({ rows, note }: ListedUnit): string | null {
  if (rows.length === 0) return note;
  const where = `${rows.length === 1 ? 'row' : 'rows'} ${rows.join(', ')}`;
  return note === null ? where : `${where}: ${note}`;
}

/** The papers that settings rest on, each once, under short names. */
function papersOf(unit: ListedUnit): ReadonlyMap<string, NamedPaper> {
  const papers = new Map<string, NamedPaper>();
  for (const { paper } of unit.settings.values()) {
    if (paper === null || [...papers.values()].some((each) => samePaper(each, paper))) continue;
    papers.set(`s${papers.size + 1}`, paper);
  }
  return papers;
}

function samePaper(a: NamedPaper, b: NamedPaper): boolean {
  return a.title === b.title && a.year === b.year;
}

/** A size without quotes where nothing in it can be misread: `13/64 in`. */
function sizeScalar(text: string): string {
  return /^\d[\d./-]*(?: [\w./±°-]+)+$/.test(text) ? text : scalar(text);
}

function yearScalar(year: string): string {
  return /^\d{4}$/.test(year) ? year : scalar(year);
}
