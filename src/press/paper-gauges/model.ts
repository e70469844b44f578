import { wantedOf } from '../../conformance/index.ts';
import { formatDecimal } from '../../quantity/index.ts';
import type { Rational } from '../../quantity/model.ts';
import { settingLabel } from '../../sheet/index.ts';
import type { Setting, Sheet } from '../../sheet/model.ts';
import { type SheetFace, settingRows, sheetFace } from '../matter/index.ts';
import { type Margins, type PaperSize, papers } from '../orders/index.ts';
import type { EditionFacts, Paper } from '../orders/model.ts';
import { drawGauge, drawProofBars } from './draw.ts';
import { judgePaper } from './rule.ts';

/** Everything a page of paper gauges prints, as plain data: what `paper-gauges.hbs` is given. */
export interface PaperGaugesModel {
  readonly face: SheetFace;
  readonly club: string | null;
  readonly language: string;
  readonly paper: PaperSize;
  readonly margins: Margins;
  readonly draft: boolean;
  readonly bars: { readonly along: string; readonly down: string };
  /** Each a whole SVG, at its true size. */
  readonly gauges: readonly { readonly svg: string; readonly label: string }[];
  /** Whether one of them is held beside a travel. */
  readonly hasTravel: boolean;
  /** Lengths that paper will not do for, by reason: `no limits are stated` and the settings' labels. */
  readonly refused: readonly { readonly why: string; readonly settings: string }[];
}

/** All sides alike: nothing is bound, and desk printers reach this far. */
const margins: Margins = { topMm: 10, bottomMm: 10, innerMm: 10, outerMm: 10 };

/** The paper gauges of a sheet, in the order of its settings in the work. */
export function paperGaugesModel(
  sheet: Sheet,
  edition: EditionFacts | null,
  { paper, draft }: { readonly paper: Paper; readonly draft: boolean },
): PaperGaugesModel {
  const face = sheetFace(sheet);
  const gauges: { svg: string; label: string }[] = [];
  const refused = new Map<string, string[]>();
  let hasTravel = false;
  // The rows know the order of the work and the words for where a setting is measured.
  for (const row of settingRows(sheet, [])) {
    const setting = sheet.settings.get(row.name);
    if (setting === undefined) continue;
    const measured = setting.known?.measured ?? null;
    for (const place of placesOf(setting)) {
      const wanted = wantedOf(setting, place);
      if (wanted?.statement?.dimension !== 'length') continue;
      const { low, high, text } = wanted;
      const label = place === null ? row.label : `${settingLabel(setting)}, ${place}`;
      const verdict = judgePaper({ low, high }, measured);
      if (!verdict.ok) {
        refused.set(verdict.why, [...(refused.get(verdict.why) ?? []), label]);
        continue;
      }
      const { goMm, noGoMm, errorMm } = verdict;
      if (measured === 'travel') hasTravel = true;
      const svg = drawGauge({
        goMm: goMm?.valueOf() ?? null,
        noGoMm: noGoMm?.valueOf() ?? null,
        goText: goMm === null ? '' : formatDecimal(goMm, 2),
        noGoText: noGoMm === null ? '' : formatDecimal(noGoMm, 2),
        setting: label,
        written: wanted.limitsFrom === null ? text : `${text} (${wanted.limitsFrom})`,
        words: [
          ...(row.where === null ? [] : [row.where]),
          `Limits ${limitWords(low, high)}, paper ± ${formatDecimal(errorMm, 2, 'up')}`,
          endsWords(goMm, noGoMm),
          titleWords(face),
        ],
      });
      gauges.push({ svg, label });
    }
  }
  return {
    face,
    club: edition?.club ?? null,
    language: edition?.language ?? 'en',
    paper: papers[paper],
    margins,
    draft,
    bars: { along: drawProofBars(false), down: drawProofBars(true) },
    gauges,
    hasTravel,
    refused: [...refused].map(([why, settings]) => ({ why, settings: settings.join('; ') })),
  };
}

function placesOf(setting: Setting): readonly (string | null)[] {
  const places: (string | null)[] = [...setting.places.keys()];
  return setting.value === null && places.length > 0 ? places : [null, ...places];
}

function titleWords({ title, revision, mark }: SheetFace): string {
  const facts = [
    title,
    ...(revision === null ? [] : [`revision ${revision}`]),
    ...(mark === null ? [] : [mark]),
  ];
  return facts.join(', ');
}

/** Inward, so that nothing is told that the sheet refuses. */
function limitWords(low: Rational | null, high: Rational | null): string {
  const lower = low === null ? null : formatDecimal(low, 2, 'up');
  const upper = high === null ? null : formatDecimal(high, 2, 'down');
  if (lower !== null && upper !== null) return `${lower}–${upper} mm`;
  return lower === null ? `${upper} mm max` : `${lower} mm min`;
}

function endsWords(goMm: Rational | null, noGoMm: Rational | null): string {
  return [
    ...(goMm === null ? [] : [`GO ${formatDecimal(goMm, 2)} mm`]),
    ...(noGoMm === null ? [] : [`NO-GO ${formatDecimal(noGoMm, 2)} mm`]),
  ].join(', ');
}
