import type { Kind } from '../kinds/model.ts';
import type { JetNumbering } from '../quantity/index.ts';
import type { PlacedNode } from '../text/index.ts';
import { entriesOf, type Fields, under } from './fields.ts';
import type { ListedReadings, NamedRecord, PlacedSize, Source } from './model.ts';
import { settingsMeant } from './names.ts';

/** What a bench record tells of the unit as it was left. */
export interface RecordTexts {
  /** As reports show it. */
  readonly file: string;
  /** By the setting's name as the record has it: the reading as written. */
  readonly left: readonly (readonly [setting: string, text: string])[];
}

/** Looks for a bench record beside a sheet by the name that the sheet has for it; null where there is none. */
export type RecordBook = (name: string) => RecordTexts | null;

/** What readings are read by. */
export interface ReadingsBy {
  readonly kind: Kind | null;
  readonly jets: JetNumbering | null;
  readonly records: RecordBook | null;
}

/** The readings and records of one source, each reading a size like any other. */
export function readMeasured(
  node: PlacedNode | undefined,
  fields: Fields,
  by: ReadingsBy,
): Pick<Source, 'readings' | 'records'> {
  const entries = entriesOf(under(node, 'readings'));
  const meant = settingsMeant(entries.keys(), by.kind);
  const readings = [...entries].map(([name, { key, value }]): ListedReadings => {
    const { id = name, known = null } = meant.get(name) ?? {};
    const jets = known?.jet === true ? by.jets : undefined;
    return {
      name: { value: name, span: key.span, source: name },
      id,
      known,
      jets,
      sizes: fields.sizes(value, known?.dimensions, jets),
    };
  });
  const records = fields.texts(under(node, 'records')).map((name): NamedRecord => {
    const texts = by.records?.(name.value) ?? null;
    const sizes = new Map<string, PlacedSize>();
    for (const [setting, text] of texts?.left ?? []) {
      const known = by.kind?.settingNamed(setting) ?? null;
      const jets = known?.jet === true ? by.jets : undefined;
      const node = { kind: 'scalar', text, value: text, span: name.span, quoted: false } as const;
      const size = fields.size(node, known?.dimensions, jets);
      if (size) sizes.set(known?.name ?? setting, size);
    }
    return { name, file: texts?.file ?? null, sizes };
  });
  return { readings, records };
}
