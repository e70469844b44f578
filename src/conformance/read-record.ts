import validate from '../generated/validate-record.js';
import { readStatement } from '../quantity/index.ts';
import type { GaugeBook } from '../quantity/model.ts';
import { entriesOf, Fields, under } from '../sheet/index.ts';
import {
  lookup,
  type Placed,
  type PlacedEntry,
  type PlacedNode,
  readYaml,
  schemaWords,
} from '../text/index.ts';
import type {
  BenchRecord,
  RecordEntry,
  RecordFault,
  WrittenGauge,
  WrittenReading,
} from './record.ts';

/** A record, or null with the faults that keep it from being read. */
export interface RecordRead {
  readonly record: BenchRecord | null;
  readonly faults: readonly RecordFault[];
}

/** Reads the text of a bench record. Every mistake comes back with its place; never throws. */
export function readRecord(text: string, gauges: GaugeBook): RecordRead {
  const base = text.startsWith('\ufeff') ? 1 : 0;
  const yaml = readYaml(text.slice(base), base);
  const faults: RecordFault[] = yaml.problems.map(({ span, message, fix, related }) => ({
    kind: 'invalid',
    span,
    message,
    fix,
    related: related === null ? [] : [related],
  }));
  if (yaml.root === null || yaml.root.kind !== 'map') {
    if (faults.length === 0) faults.push(nothing(base));
    return { record: null, faults };
  }
  if (yaml.sound && !validate(yaml.value)) {
    for (const { path, onKey, message, fix } of schemaWords(validate.errors, yaml.value)) {
      const span = lookup(yaml.root, path, onKey ? 'key' : 'value') ?? yaml.root.span;
      faults.push({ kind: 'invalid', span, message, fix });
    }
  }
  if (faults.length > 0) return { record: null, faults };
  const fields = new Fields(text, readStatement, gauges, null);
  const said = (key: string) => filled(fields.text(under(yaml.root, key)));
  const sheet = said('sheet');
  if (sheet === null) return { record: null, faults: [nothing(base)] };
  return {
    record: {
      sheet,
      revision: fields.number(under(yaml.root, 'revision')),
      serial: said('serial'),
      by: said('by'),
      date: said('date'),
      place: said('place'),
      altitude: said('altitude'),
      barometer: said('barometer'),
      temperature: said('temperature'),
      entries: readEntries(under(yaml.root, 'settings'), fields),
    },
    faults: [],
  };
}

function nothing(at: number): RecordFault {
  return {
    kind: 'invalid',
    span: { start: at, end: at },
    message: 'the record says nothing: at least the sheet and its readings are needed',
    fix: 'write a blank one from the sheet: gaugeleaf record and the name of the sheet',
  };
}

function readEntries(node: PlacedNode | undefined, fields: Fields): RecordEntry[] {
  const entries: RecordEntry[] = [];
  for (const [name, { key, value }] of entriesOf(node)) {
    const setting: Placed<string> = { value: name, span: key.span, source: name };
    const whole = readEntry(setting, null, value, fields);
    const places = [...entriesOf(under(value, 'places'))];
    const hasOwn = whole.found !== null || whole.left !== null;
    if (places.length === 0 || hasOwn) entries.push(whole);
    for (const [place, entry] of places) {
      entries.push(placeEntry(whole, place, entry, fields));
    }
  }
  return entries;
}

/** A place's own words count before those that stand for all the places of the setting. */
function placeEntry(
  whole: RecordEntry,
  name: string,
  { key, value }: PlacedEntry,
  fields: Fields,
): RecordEntry {
  const place: Placed<string> = { value: name, span: key.span, source: name };
  const own = readEntry(whole.setting, place, value, fields);
  return {
    ...own,
    gauge: own.gauge ?? whole.gauge,
    uncertainty: own.uncertainty ?? whole.uncertainty,
  };
}

function readEntry(
  setting: Placed<string>,
  place: Placed<string> | null,
  node: PlacedNode,
  fields: Fields,
): RecordEntry {
  const said = (key: string) => filled(fields.text(under(node, key)));
  return {
    setting,
    place,
    wanted: said('wanted'),
    found: readReading(under(node, 'found'), fields),
    left: readReading(under(node, 'left'), fields),
    gauge: said('with'),
    uncertainty: said('uncertainty'),
  };
}

function readReading(node: PlacedNode | undefined, fields: Fields): WrittenReading | null {
  if (node?.kind === 'map') {
    const go = readGauge(under(node, 'go'), fields);
    const noGo = readGauge(under(node, 'no-go'), fields);
    return { form: 'go-no-go', span: node.span, go, noGo };
  }
  const text = filled(fields.text(node));
  if (text === null) return null;
  if (/^as found$/i.test(text.value.trim())) return { form: 'as-found', span: text.span };
  return { form: 'size', text };
}

function readGauge(node: PlacedNode | undefined, fields: Fields): WrittenGauge | null {
  if (node?.kind === 'scalar' && typeof node.value === 'boolean') {
    return { wentIn: node.value, span: node.span };
  }
  const text = fields.text(node);
  return text === null ? null : { text };
}

function filled(text: Placed<string> | null): Placed<string> | null {
  return text === null || text.value.trim() === '' ? null : text;
}
