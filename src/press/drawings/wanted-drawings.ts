import type { Operation, Sheet } from '../../sheet/model.ts';
import { type Choice, nearestName } from '../../text/index.ts';
import { type DrawingOptions, type RankedDrawing, rankedDrawings } from './operation-drawings.ts';

/**
 * The drawings of a sheet, or of the operation that somebody asks for by any of its names; otherwise why
 * there are none. Those that the kind ranks first come first.
 */
export function wantedDrawings(
  sheet: Sheet,
  wanted: string | null,
  options: DrawingOptions,
): Choice<readonly RankedDrawing[]> {
  const known = sheet.operations.filter((operation) => operation.known !== null);
  const chosen = wanted === null ? known : operationsNamed(wanted, known, sheet);
  if (wanted !== null && chosen.length === 0) return noOperation(wanted, known);
  const names = new Set(chosen.map((operation) => operation.known?.name));
  const drawings = rankedDrawings(sheet, options).filter(({ operation }) =>
    names.has(operation.known?.name),
  );
  if (drawings.length > 0) return { ok: true, value: drawings };
  return {
    ok: false,
    message: `${sheet.file} has nothing to draw${wanted === null ? '' : ` for ${wanted}`}`,
    fix: 'a drawing needs its sizes as numbers, and beside them where and how they are measured (`at`, first of all)',
  };
}

function operationsNamed(
  wanted: string,
  operations: readonly Operation[],
  { kind }: Sheet,
): readonly Operation[] {
  const name = kind?.operationNamed(wanted)?.name ?? wanted;
  return operations.filter(({ known }) => known?.name === name);
}

function noOperation(wanted: string, operations: readonly Operation[]): Choice<never> {
  const names = operations.flatMap(({ known }) => known?.name ?? []);
  const near = nearestName(wanted, names);
  return {
    ok: false,
    message: `the sheet has no operation ${wanted}`,
    fix: near === null ? `it has ${[...new Set(names)].join(', ')}` : `did you mean ${near}?`,
  };
}
