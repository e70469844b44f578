import { assessRecord, readRecord, reasonFor, verdictWord } from '../../src/conformance/index.ts';
import type { AcceptanceRule } from '../../src/conformance/model.ts';
import { gaugeBook } from '../../src/gauges/index.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import { recordPlace } from '../../src/project/record-place.ts';
import { readSheet } from '../../src/sheet/index.ts';
import { LineIndex } from '../../src/text/span.ts';

const kinds = builtInKinds();
const gauges = gaugeBook();

/** What became of a record: verdicts and reasons by setting, and faults with their places. */
export interface Outcome {
  /** `float-level left`: `conforms: 0.01 in inside ...`. */
  readonly verdicts: Readonly<Record<string, string>>;
  /** `2 <words it points at> invalid: message | fix`. */
  readonly faults: readonly string[];
  readonly missing: readonly string[];
}

/** Judges records by a sheet that has these settings (YAML, indented by two). */
export function judgedBy(settings: string, rule: AcceptanceRule = 'guarded') {
  const sheet = readSheet(
    `---\ngaugeleaf: 1\nsheet: x\nunit: { kind: carburetor }\nrevision: 2\nsettings:\n${settings}\n---\n`,
    'sheets/x.md',
    { kinds, gauges, wireGauge: null },
  );
  return (record: string): Outcome => {
    const text = `gaugeleaf-record: 1\nsheet: x\nserial: 1\nby: A\ndate: 2026-11-14\n${record}`;
    const lines = new LineIndex(text);
    const read = readRecord(text, gauges);
    const assessed = read.record
      ? assessRecord(
          read.record,
          sheet,
          rule,
          { gauges },
          recordPlace(read.record, kinds.get('carburetor') ?? null, { gauges }),
        )
      : null;
    const verdicts: Record<string, string> = {};
    for (const { setting, place, wanted, found, left } of assessed?.entries ?? []) {
      const name = place === null ? setting.name.value : `${setting.name.value} ${place}`;
      for (const [when, one] of [
        ['found', found],
        ['left', left],
      ] as const) {
        if (one !== null)
          verdicts[`${name} ${when}`] = `${verdictWord(one)}: ${reasonFor(one, wanted.text)}`;
      }
    }
    return {
      verdicts,
      faults: [...read.faults, ...(assessed?.faults ?? [])].map(({ kind, span, message, fix }) => {
        const { line } = lines.place(span.start);
        // The five lines in front are the same in every record.
        return `${line - 5} <${text.slice(span.start, span.end)}> ${kind}: ${message} | ${fix}`;
      }),
      missing: assessed?.missing.map((setting) => setting.name.value) ?? [],
    };
  };
}
