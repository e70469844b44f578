import type { Kind } from '../../kinds/model.ts';
import type { GaugeBook } from '../../quantity/model.ts';
import type { SharedSources } from '../../sheet/index.ts';
import type { FileRegion } from '../../text/index.ts';
import type { CheckGroup, MessageTemplate, Severity } from '../define.ts';
import type { SheetFacts } from './facts.ts';

/** What the checks across sheets may know besides the facts. */
export interface AcrossContext {
  readonly gauges: GaugeBook;
  readonly kinds: ReadonlyMap<string, Kind>;
  /** Which system the edition says a bare `SWG` means; null if it does not say. */
  readonly wireGauge: string | null;
  /** What the project's `sources.yaml` describes; absent or null where there is none. */
  readonly sharedSources?: SharedSources | null;
}

/** One thing that is wrong between sheets; places are resolved, for no sheet is kept. */
export interface AcrossFinding {
  readonly check: string;
  readonly severity: Severity;
  readonly at: FileRegion;
  readonly message: string;
  readonly fix: string | null;
  readonly compared: readonly [string, string] | null;
  /** The places in the other sheets. */
  readonly related: readonly { readonly at: FileRegion; readonly label: string }[];
  /** The reason of an editor, where one of the sheets concerned accepts it. */
  readonly accepted: string | null;
}

/** What `run` hands in for each finding. */
export interface AcrossReport<M extends string> {
  readonly message: M;
  /** The sheet it stands in, and the place there. */
  readonly sheet: SheetFacts;
  readonly at: FileRegion;
  /** The other sheets concerned, which may accept it too, each with its place. */
  readonly others: readonly {
    readonly sheet: SheetFacts;
    readonly at: FileRegion;
    readonly label: string;
  }[];
  readonly values: Readonly<Record<string, string>>;
  readonly compared?: readonly [string, string];
  /** What an acceptance calls it: a setting, a part number, another sheet. */
  readonly subject: string;
}

/** An example that is documentation and test at once: fragments of several sheets. */
export interface AcrossExample {
  readonly name: string;
  /** By the sheet's id; a fragment is completed to the clean sheet of `test/checks/examples.ts`. */
  readonly sheets: Readonly<
    Record<string, { readonly settings?: string; readonly front?: string }>
  >;
  /** The findings of this check, in order; empty for an example that is right. */
  readonly expect: readonly {
    /** The sheet's id, and the text under the finding there. */
    readonly in: string;
    readonly at: string;
    readonly message: string;
    readonly fix: string | null;
    readonly severity?: Severity;
    /** Every other place: the sheet's id, and the text there. */
    readonly see: readonly (readonly [sheet: string, text: string])[];
  }[];
}

/** A check that looks at all sheets of a project together. */
export interface AcrossCheck<M extends string = string> {
  readonly id: string;
  readonly severity: Severity;
  readonly group: CheckGroup & 'across';
  /** One line: what is wrong. */
  readonly summary: string;
  /** What harm it does and when an editor may accept it. */
  readonly explain: string;
  readonly messages: Readonly<Record<M, MessageTemplate>>;
  /** Pure; the sheets are in the order they were read. */
  readonly run: (
    sheets: readonly SheetFacts[],
    context: AcrossContext,
    report: (finding: AcrossReport<M>) => void,
  ) => void;
  readonly examples: readonly AcrossExample[];
}

/** Declares a check across sheets; the message names are inferred from its table. */
export function defineAcrossCheck<M extends string, const I extends string = string>(
  check: AcrossCheck<M> & { readonly id: I },
): AcrossCheck & { readonly id: I } {
  return check as unknown as AcrossCheck & { readonly id: I };
}
