import type { Concordance } from '../concordance/model.ts';
import type { Completion, DeskAction, DeskFinding, Hover, OutlineEntry } from '../desk/model.ts';
import type { Span } from '../text/index.ts';
import type { FormEdit, FormModel } from './form-model.ts';
import type { FileSort, SheetContext } from './model.ts';

/** Sorts of files that are no sheets. */
export type YamlSort = Exclude<FileSort, 'sheet'>;

/** A step of the work as the page lists it. */
export interface WorkLine {
  /** Null for what stands outside the numbered steps. */
  readonly number: number | null;
  readonly words: string;
  readonly span: Span;
  /** What of the unit it changed, as a reader says it: `Throttle: shut`. */
  readonly changes: readonly { readonly words: string; readonly doubtful: boolean }[];
}

/** One heading with its steps. */
export interface WorkGroup {
  readonly title: string;
  readonly span: Span;
  readonly stage: string | null;
  readonly steps: readonly WorkLine[];
}

/** A part and how it stands after a step. */
export interface PartLine {
  readonly label: string;
  readonly condition: string;
  readonly changed: boolean;
  readonly doubtful: boolean;
}

/** What a text was found to be. */
export interface Checked {
  readonly findings: readonly DeskFinding[];
  readonly title: string | null;
  readonly kind: string | null;
  readonly status: string | null;
  /** Names that it needs and the context lacks. */
  readonly lacking: { readonly bases: readonly string[]; readonly pictures: readonly string[] };
  /** How long reading and checking took, in milliseconds. */
  readonly took: number;
}

/** Questions that the page asks of the worker, and what it is answered; all of the text last sent. */
export interface Questions {
  readonly open: { ask: { context: SheetContext }; answer: null };
  readonly text: { ask: { text: string }; answer: Checked };
  readonly complete: { ask: { offset: number }; answer: readonly Completion[] };
  /** The same in a file that is no sheet; the text comes along. */
  readonly fileComplete: {
    ask: { sort: YamlSort; text: string; offset: number };
    answer: readonly Completion[];
  };
  readonly fileHover: {
    ask: { sort: YamlSort; text: string; offset: number };
    answer: Hover | null;
  };
  readonly hover: { ask: { offset: number }; answer: Hover | null };
  readonly actions: { ask: { span: Span }; answer: readonly DeskAction[] };
  readonly explain: { ask: { check: string }; answer: string | null };
  readonly work: {
    ask: { offset: number };
    answer: { groups: readonly WorkGroup[]; at: number | null; parts: readonly PartLine[] };
  };
  readonly sources: { ask: Record<string, never>; answer: Concordance | null };
  readonly outline: { ask: Record<string, never>; answer: readonly OutlineEntry[] };
  readonly definition: { ask: { offset: number }; answer: { file: string; span: Span } | null };
  readonly form: { ask: Record<string, never>; answer: FormModel | null };
  readonly formEdit: { ask: { edit: FormEdit }; answer: readonly { span: Span; text: string }[] };
  /** How long the bare parsers of Markdown and YAML take for the text: the floor that checking is measured against. */
  readonly bareParse: { ask: { text: string }; answer: number };
}

export type Question = keyof Questions;

/** A question on its way: the answer bears the same number. */
export type Asked = {
  [Q in Question]: { readonly n: number; readonly what: Q; readonly ask: Questions[Q]['ask'] };
}[Question];

export interface Answered {
  readonly n: number;
  readonly answer: unknown;
  /** A fault of the program; null for none. */
  readonly fault: string | null;
}
