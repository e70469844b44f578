import { entriesOf, Fields, itemsOf, under } from '../sheet/index.ts';
import {
  lookup,
  type Placed,
  type PlacedNode,
  plainValue,
  readYaml,
  schemaWords,
} from '../text/index.ts';
import type {
  Answers,
  FoundMore,
  KeptVerdict,
  ReadingFault,
  SecondReading,
  Settled,
} from './model.ts';

/** A second reading, or null with the faults that keep it from being read. */
export interface ReadingRead {
  readonly reading: SecondReading | null;
  readonly faults: readonly ReadingFault[];
}

/** The compiled schema of a second reading, which is loaded only where there is one to read. */
export interface ReadingValidator {
  (data: unknown): boolean;
  errors?: Parameters<typeof schemaWords>[0];
}

/** Reads the text of a second reading. Every mistake comes back with its place; never throws. */
export function readReading(text: string, validate: ReadingValidator): ReadingRead {
  const base = text.startsWith('\ufeff') ? 1 : 0;
  const yaml = readYaml(text.slice(base), base);
  const faults: ReadingFault[] = yaml.problems.map(({ span, message, fix, related }) => ({
    span,
    message,
    fix,
    related: related === null ? [] : [related],
  }));
  const { root } = yaml;
  if (root === null || root.kind !== 'map') {
    if (faults.length === 0) faults.push(nothing(base));
    return { reading: null, faults };
  }
  if (yaml.sound && !validate(yaml.value)) {
    for (const { path, onKey, message, fix } of schemaWords(validate.errors, yaml.value)) {
      const span = lookup(root, path, onKey ? 'key' : 'value') ?? root.span;
      faults.push({ span, message, fix });
    }
  }
  if (faults.length > 0) return { reading: null, faults };
  const fields = new Fields(text, () => unread, noGauges, null);
  const said = (key: string) => filled(fields.text(under(root, key)));
  const [sheet, source] = [said('sheet'), said('source')];
  if (sheet === null || source === null) return { reading: null, faults: [nothing(base)] };
  const reading: SecondReading = {
    sheet,
    source,
    by: said('by'),
    date: said('date'),
    answers: answersIn(under(root, 'pages'), fields),
    found: itemsOf(under(root, 'found')).flatMap((item) => foundMore(item, fields)),
    read: plainList<KeptVerdict>(under(root, 'read')),
    settled: plainList<Settled>(under(root, 'settled')),
  };
  return { reading, faults: [] };
}

const unread = {
  ok: false,
  problem: {
    code: 'unreadable',
    message: '',
    fix: null,
    start: 0,
    end: 0,
    candidates: [],
    offered: 0,
  },
} as const;
const noGauges = { find: () => null, all: () => [] };

function nothing(at: number): ReadingFault {
  return {
    span: { start: at, end: at },
    message:
      'the second reading says nothing: at least the sheet, the source and its pages are needed',
    fix: 'write a blank one from the sheet: gaugeleaf reread and the name of the sheet',
  };
}

/** What the schema has let pass as it is. */
function plainList<T>(node: PlacedNode | undefined): readonly T[] {
  return node === undefined ? [] : ((plainValue(node) ?? []) as readonly T[]);
}

function answersIn(node: PlacedNode | undefined, fields: Fields): Answers[] {
  const all: Answers[] = [];
  for (const [page, { value: settings }] of entriesOf(node)) {
    for (const [key, { key: place, value }] of entriesOf(settings)) {
      const given = new Map<string, Placed<string>>();
      const short = filled(fields.text(value));
      if (short !== null) given.set('value', short);
      for (const [word, entry] of entriesOf(value)) {
        const text = filled(fields.text(entry.value));
        if (text !== null) given.set(word, text);
        for (const [inner, { value: below }] of entriesOf(entry.value)) {
          const deep = filled(fields.text(below));
          if (deep !== null) given.set(`${word}/${inner}`, deep);
        }
      }
      all.push({ page, key, span: place.span, given });
    }
  }
  return all;
}

function foundMore(node: PlacedNode, fields: Fields): FoundMore[] {
  const said = (key: string) => filled(fields.text(under(node, key)))?.value ?? null;
  const value = said('value');
  return value === null ? [] : [{ page: said('page'), what: said('what'), value, span: node.span }];
}

function filled(text: Placed<string> | null): Placed<string> | null {
  return text === null || text.value.trim() === '' ? null : text;
}
