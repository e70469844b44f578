import { agree } from '../quantity/index.ts';
import { differs } from '../sheet/index.ts';
import type { Citation, Dissent, PlacedSize, Setting, Sheet } from '../sheet/model.ts';
import { capitalized } from '../text/index.ts';
import type { Concordance, ConcordanceRow, ConcordanceSource, Said } from './model.ts';

/** One thing said, still with the name of its source; null for a source that is not named. */
interface Attributed {
  readonly source: string | null;
  readonly said: Said;
}

/**
 * Sets what the sources of a sheet say side by side, setting by setting in the sheet's own order.
 * A source that the sheet cites and does not list has a column too; what no source is named for
 * stands in a column of its own, whose name is null.
 */
export function concordanceOf(sheet: Sheet): Concordance {
  const table = [...sheet.settings.values()].map((setting) => ({
    setting,
    said: attributed(setting),
  }));
  const cited = new Set(table.flatMap(({ said }) => said.map(({ source }) => source)));
  const names: (string | null)[] = [...sheet.sources.keys()].filter((name) => cited.has(name));
  for (const name of cited) if (name !== null && !names.includes(name)) names.push(name);
  if (cited.has(null)) names.push(null);
  return {
    sheet: sheet.id?.value ?? sheet.file,
    title: sheet.title?.value ?? '',
    sources: names.map((name) => sourceNamed(name, sheet)),
    rows: table.map(({ setting, said }) => rowOf(setting, said, names)),
  };
}

/** The rows that more than one source speaks to: where there is nothing to compare, none. */
export function comparedRows({ rows }: Concordance): readonly ConcordanceRow[] {
  return rows.filter(({ cells }) => cells.reduce((sum, cell) => sum + cell.length, 0) > 1);
}

function sourceNamed(name: string | null, sheet: Sheet): ConcordanceSource {
  const source = name === null ? undefined : sheet.sources.get(name);
  const units = source?.units?.value ?? null;
  const facts = [
    source?.kind?.value,
    source?.year?.source,
    units === null ? undefined : `${units} ${units === 1 ? 'unit' : 'units'}`,
  ];
  return {
    name,
    title: source?.title?.value ?? null,
    facts: facts.filter((fact) => fact !== undefined).join(', '),
  };
}

function rowOf(
  setting: Setting,
  said: readonly Attributed[],
  names: readonly (string | null)[],
): ConcordanceRow {
  const name = setting.id;
  const words = name.replaceAll('-', ' ');
  return {
    setting: name,
    label: setting.known?.label ?? capitalized(words),
    figure: figureText(setting),
    cells: names.map((each) => said.filter(({ source }) => source === each).map((one) => one.said)),
    differs: said.some((one) => one.said.standing === 'differs'),
  };
}

function attributed(setting: Setting): Attributed[] {
  const { value, statements, from, but } = setting;
  const found: Attributed[] = [];
  const listed = new Set<Citation | PlacedSize | null>();
  for (const { value: size, from: citation, note } of statements) {
    listed.add(citation);
    if (size === null) continue;
    listed.add(size);
    const dissent = but.find((each) => each.value === size);
    if (dissent) found.push(dissenting(dissent, value, note?.value ?? null));
    else {
      const standing = size === value ? 'figure' : size.reading.ok ? 'agrees' : 'unread';
      found.push(
        attribute(citation, { ...plain, written: size.text, standing, note: note?.value ?? null }),
      );
    }
  }
  // The first that is cited beside the figure wrote it; of the others it is only known that they agree.
  let isWritten = found.some(({ said }) => said.standing === 'figure');
  for (const citation of from) {
    if (listed.has(citation)) continue;
    const first = !isWritten;
    isWritten = true;
    found.push(
      attribute(citation, {
        ...plain,
        written: first ? figureText(setting) : null,
        standing: first ? 'figure' : 'agrees',
      }),
    );
  }
  for (const dissent of but) {
    if (!listed.has(dissent.value)) found.push(dissenting(dissent, value, null));
  }
  return found;
}

const plain = { page: null, difference: null, ruling: null, note: null } as const;

function attribute(citation: Citation | null, said: Said): Attributed {
  return {
    source: citation?.id ?? null,
    said: { ...said, page: citation?.page ?? null },
  };
}

function dissenting(
  { value, from, ruling }: Dissent,
  figure: PlacedSize | null,
  note: string | null,
): Attributed {
  const isRead = value?.reading.ok === true;
  // What stands under `but:` and is the same size after all does not differ.
  const same = value !== null && isRead && figure?.reading.ok && !differs(figure, value);
  return attribute(from, {
    written: value?.text ?? null,
    page: null,
    standing: same ? 'agrees' : isRead ? 'differs' : 'unread',
    difference: same ? null : differenceOf(figure, value),
    ruling: ruling?.value.trim() || null,
    note,
  });
}

/** How much more or less than the figure, in the dissent's own unit; null where that is no amount. */
function differenceOf(figure: PlacedSize | null, other: PlacedSize | null): string | null {
  if (!figure?.reading.ok || !other?.reading.ok) return null;
  const found = agree(figure.reading.statement, other.reading.statement, { gauges: null });
  const { verdict } = found;
  if (verdict === 'disagrees' || verdict === 'within-tolerance') return found.difference;
  return verdict === 'incomparable' ? null : 'other limits';
}

function figureText({ value, places }: Setting): string {
  const texts = value === null ? [] : [value.text];
  for (const [place, size] of places) texts.push(`${place} ${size.text}`);
  return texts.join(', ');
}
