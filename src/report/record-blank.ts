import { stringify } from 'yaml';
import { limitsIn, limitsText, wantedOf } from '../conformance/index.ts';
import { principal } from '../quantity/index.ts';
import { gaugeWords, settingLabel, tasksOf, whereWords } from '../sheet/index.ts';
import type { Setting, Sheet } from '../sheet/model.ts';
import { visible } from '../text/index.ts';

/** What a blank record is written for. */
export interface BlankRecord {
  readonly sheet: Sheet;
  /** The sheet's name, as its file has it. */
  readonly id: string;
  /** Null leaves it to be filled in. */
  readonly serial: string | null;
  /** The way from the record to the schema that editors use. */
  readonly schema: string;
}

/**
 * The text of a record with every setting of the sheet in working order: what is wanted, between
 * which limits and where, as comments, and blanks for what is read.
 */
export function blankRecord({ sheet, id, serial, schema }: BlankRecord): string {
  const out = [
    `# yaml-language-server: $schema=${schema}`,
    `# Bench record: ${comment(sheet.title?.value ?? id)}`,
    '#',
    '# found, left: what the gauge told before the work and after it. A size with its unit (0.205 in),',
    "#   a gauge (13/64 drill), the sheet's own words (parallel), or gauges that went in and did not:",
    '#   { go: 3/16 drill, no-go: 7/32 drill }. `left: as found` where nothing was changed.',
    '# with, uncertainty: what it was measured with, and how far that is to be trusted either side',
    "#   (k = 2). Without the latter an ordinary instrument's is taken.",
    '# Take out what was not looked at. Then: gaugeleaf record and the name of this file.',
    'gaugeleaf-record: 1',
    `sheet: ${scalar(id)}`,
    ...(sheet.revision === null ? [] : [`revision: ${sheet.revision.value}`]),
    serial === null ? 'serial:' : `serial: ${scalar(serial)}`,
    'by:',
    'date: # year-month-day',
    'place:',
    'altitude: # such as 1200 ft: vacuums are carried to it',
    'barometer: # in the shop, such as 28.6 inHg; counts before the altitude',
    'temperature:',
    'settings:',
  ];
  for (const { number, setting } of tasksOf(sheet).settings) {
    const [where, gauge] = [whereWords(setting), gaugeWords(setting)];
    const head = settingLabel(setting) + (where === null ? '' : `: ${where}`);
    out.push(`  # ${number}  ${comment(head)}`);
    if (gauge !== null) out.push(`  #    gauge on the sheet: ${comment(gauge)}`);
    out.push(`  ${scalar(setting.name.value)}:`, ...settingLines(setting));
  }
  return `${out.join('\n')}\n`;
}

function settingLines(setting: Setting): string[] {
  const shared = ['    with:', '    uncertainty:'];
  const readings = (place: string | null, indent: string) => [
    `${indent}wanted: ${wantedLine(setting, place)}`,
    `${indent}found:`,
    `${indent}left:`,
  ];
  const places = placesOf(setting);
  if (places.length === 0) return [...readings(null, '    '), ...shared];
  const lines = [...shared, '    places:'];
  for (const place of places) {
    lines.push(`      ${scalar(place)}:`, ...readings(place, '        '));
  }
  return lines;
}

/** The places of a setting, or the stations of a table: others between them may be added by hand. */
function placesOf({ places, rows }: Setting): readonly string[] {
  return rows.length > 0 ? rows.flatMap(({ station }) => station?.text ?? []) : [...places.keys()];
}

/** `13/64 ± 1/64 in # 0.1875 in to 0.21875 in`; says where no limits are stated. */
function wantedLine(setting: Setting, place: string | null): string {
  const wanted = wantedOf(setting, place);
  if (wanted === null || wanted.text === '—') return '';
  const { statement, text, limitsFrom } = wanted;
  const written = scalar(text);
  if (statement === null || statement.condition !== null) return written;
  const amount = principal(statement) ?? statement.low?.amount ?? statement.high?.amount ?? null;
  if (amount === null) return written;
  const said = limitsText(limitsIn(wanted, amount.unit), amount.unit);
  const from = limitsFrom === null ? '' : ` (${comment(limitsFrom)})`;
  return `${written} # ${said === null ? 'no limits stated' : `${said}${from}`}`;
}

/** A text as a YAML scalar on one line, with quotes only where it needs them. */
function scalar(text: string): string {
  return stringify(visible(text), { lineWidth: 0 }).trimEnd();
}

function comment(text: string): string {
  return visible(text);
}
