import type { Finding } from '../../checks/index.ts';
import type { KindFeature } from '../../kinds/model.ts';
import { withEquivalents } from '../../sheet/index.ts';
import type { Fit, Named, Sheet } from '../../sheet/model.ts';

/** What stands at the head of a card or chapter; every field is text to print, null for unsaid. */
export interface SheetFace {
  readonly id: string;
  readonly title: string;
  /** `Carburetor`: the kind's own title. */
  readonly kind: string | null;
  readonly maker: string | null;
  readonly model: string | null;
  readonly partNumbers: string | null;
  /** `Two barrels, downdraft, pump`. */
  readonly features: string | null;
  /** One line a vehicle: `Wexcombe Six, 1948-1950`. */
  readonly fits: readonly string[];
  readonly revision: string | null;
  readonly date: string | null;
  /** `DRAFT` or `PROOF`; null for a sheet that is released. */
  readonly mark: string | null;
  /** Sizes (with equivalents) and threads of the unit itself, as written. */
  readonly measures: readonly { readonly label: string; readonly written: string }[];
}

/** The head of a sheet. */
export function sheetFace(sheet: Sheet): SheetFace {
  const { unit } = sheet;
  const maker = unit.maker?.value ?? null;
  const model = unit.model?.value ?? null;
  const named = [maker, model].filter((part) => part !== null).join(' ');
  const id = sheet.id?.value ?? fileName(sheet.file);
  return {
    id,
    title: sheet.title?.value ?? (named === '' ? id : named),
    kind: sheet.kind?.title ?? unit.kind?.value ?? null,
    maker,
    model,
    partNumbers: listed(unit.partNumbers.map((part) => part.value)),
    features: capital(listed(unit.features.map(featureLabel))),
    fits: sheet.fits.map(fitWords).filter((words) => words !== ''),
    revision: sheet.revision?.source ?? null,
    date: sheet.date?.value ?? null,
    mark: statusMark(sheet.status?.value ?? null),
    measures: [
      ...[...unit.sizes].map(([key, size]) => ({
        label: label(key),
        written: withEquivalents(size),
      })),
      ...(unit.jets ? [{ label: label('jets'), written: `numbered in ${unit.jets.value}` }] : []),
      ...[...unit.threads].map(([key, thread]) => ({ label: label(key), written: thread.value })),
    ],
  };
}

/** Whether a finding of the sheet keeps it from being printed as anything but a draft. */
export function hasError(findings: readonly Finding[]): boolean {
  return findings.some((finding) => finding.severity === 'error');
}

function statusMark(status: string | null): string | null {
  if (status === 'released') return null;
  return status === 'proof' ? 'PROOF' : 'DRAFT';
}

function fitWords(fit: Fit): string {
  const vehicle = [fit.marque, fit.model].filter((part) => part !== null).join(' ');
  return [vehicle, fit.years].filter((part) => part !== null && part !== '').join(', ');
}

function listed(items: readonly string[]): string | null {
  return items.length === 0 ? null : items.join(', ');
}

function capital(text: string | null): string | null {
  return text === null ? null : text.charAt(0).toUpperCase() + text.slice(1);
}

function label(key: string): string {
  return capital(key.replaceAll('-', ' ')) ?? key;
}

function fileName(path: string): string {
  return (path.split('/').at(-1) ?? path).replace(/\.md$/, '');
}

function featureLabel({ known, id }: Named<KindFeature>): string {
  const label = known?.label ?? id.replaceAll('-', ' ');
  return label.charAt(0).toLowerCase() + label.slice(1);
}
