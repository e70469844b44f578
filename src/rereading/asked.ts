import { solvedKeys } from '../relations/index.ts';
import { isMeasured } from '../sheet/index.ts';
import type { Citation, PlacedSize, Setting, Sheet } from '../sheet/model.ts';
import type { Placed } from '../text/index.ts';
import type { Asked, AskedPart } from './model.ts';

/** The page of a citation that names none. */
export const noPage = 'no page';

/** A statement of a setting with all that are cited for it. */
export interface Stated {
  readonly setting: Setting;
  /** 0 is the figure; those that differ from it follow. */
  readonly statement: number;
  readonly from: readonly Citation[];
  readonly parts: readonly AskedPart[];
}

/** Every statement of a sheet that is a figure, or words in the place of one, in the sheet's order. */
export function statementsOf(sheet: Sheet): readonly Stated[] {
  return [...sheet.settings.values()].flatMap((setting) => {
    const own = ownParts(setting, sheet);
    const figure = own.some(({ role }) => role === 'figure')
      ? [{ setting, statement: 0, from: setting.from, parts: own }]
      : [];
    const others = setting.but.flatMap(({ value, from }, index) =>
      value === null
        ? []
        : [
            {
              setting,
              statement: index + 1,
              from: from === null ? [] : [from],
              parts: [sized(['value'], value, 'figure')],
            },
          ],
    );
    return [...figure, ...others];
  });
}

/** Whether a name is that of units that somebody measured, which cannot be read a second time. */
export function namesMeasured(name: string, sheet: Sheet): boolean {
  const source = sheet.sources.get(name);
  return source !== undefined && isMeasured(source);
}

/** What a sheet asks of its sources, statement by statement, in its own order; of units measured nothing. */
export function askedOf(sheet: Sheet): readonly Asked[] {
  const seen = new Map<string, number>();
  return statementsOf(sheet).flatMap(({ setting, statement, from, parts }) =>
    from
      .filter(({ id }) => !namesMeasured(id, sheet))
      .map((citation): Asked => {
        const page = citation.page ?? noPage;
        const name = setting.name.value;
        const place = JSON.stringify([citation.id, page, name]);
        const count = (seen.get(place) ?? 0) + 1;
        seen.set(place, count);
        const key = count === 1 ? name : `${name}/${count}`;
        return {
          key,
          setting,
          statement,
          source: citation.id,
          page,
          citation,
          parts: inOwnWords(parts, setting, citation),
        };
      }),
  );
}

/** Where a sheet lists what each source says, the figure as this one writes it. */
function inOwnWords(
  parts: readonly AskedPart[],
  { statements }: Setting,
  citation: Citation,
): readonly AskedPart[] {
  const own = statements.find(({ from }) => from === citation)?.value ?? null;
  if (own === null) return parts;
  return parts.map((part) => (part.path[0] === 'value' ? sized(part.path, own, part.role) : part));
}

function ownParts(setting: Setting, sheet: Sheet): readonly AskedPart[] {
  const { value, places, at, said, gauge, go, noGo, travel } = setting;
  const worked = solvedKeys(setting, sheet);
  const figures = [
    ...(value === null ? [] : [sized(['value'], value, 'figure')]),
    ...[...places].map(([place, size]) => sized(['places', place], size, 'figure')),
  ];
  const beside = [
    ...(gauge === null ? [] : [sized(['gauge'], gauge, 'beside')]),
    ...(go === null ? [] : [sized(['go'], go, 'beside')]),
    ...(noGo === null ? [] : [sized(['no-go'], noGo, 'beside')]),
    ...(travel === null ? [] : [sized(['travel'], travel, 'beside')]),
  ];
  const words = [...said].map(([key, text]) => spoken(key, text, worked.has(key)));
  return [...figures, ...(at === null ? [] : [spoken('at', at, false)]), ...words, ...beside];
}

function sized(path: readonly string[], size: PlacedSize, role: AskedPart['role']): AskedPart {
  return { path, role, text: size.text, size, span: size.span };
}

/** Words beside a figure; those that other figures come to need not stand in the paper. */
function spoken(key: string, { value, span }: Placed<string>, isWorked: boolean): AskedPart {
  return { path: [key], role: isWorked ? 'beside' : 'words', text: value, size: null, span };
}
