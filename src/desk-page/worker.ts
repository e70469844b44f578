import { concordanceOf } from '../concordance/index.ts';
import {
  actions,
  completions,
  definition,
  explained,
  fileCompletions,
  fileHover,
  findings,
  hover,
  openDocument,
  outline,
  stateAfter,
} from '../desk/index.ts';
import type { DeskDocument, DeskProject } from '../desk/model.ts';
import { bareParse } from './bare-parse.ts';
import { formEdit } from './form-edit.ts';
import { formModel } from './form-fields.ts';
import type { SheetContext } from './model.ts';
import { workGroups } from './work-groups.ts';
import { type Lacking, projectFrom } from './worker-context.ts';
import type { Answered, Asked, Checked, Question, Questions } from './worker-model.ts';

/**
 * The worker of the page: holds the one sheet that is written at, reads and checks it as the command does,
 * and answers what the page asks of it. Everything is of the text that was sent last.
 */

const lacking: Lacking = { bases: new Set(), pictures: new Set() };
let project: DeskProject | null = null;
let context: SheetContext | null = null;
let text = '';
let held: DeskDocument | null = null;

function current(): DeskDocument {
  if (project === null || context === null) throw new Error('no sheet is open');
  held ??= openDocument(text, context.file, project);
  return held;
}

function checked(): Checked {
  const start = performance.now();
  const document = current();
  const found = findings(document);
  const { sheet } = document;
  return {
    findings: found,
    title: sheet.title?.value ?? null,
    kind: sheet.kind?.name ?? null,
    status: sheet.status?.value ?? null,
    lacking: { bases: [...lacking.bases], pictures: [...lacking.pictures] },
    took: performance.now() - start,
  };
}

type Answers = { [Q in Question]: (ask: Questions[Q]['ask']) => Questions[Q]['answer'] };

const answers: Answers = {
  open(ask) {
    lacking.bases.clear();
    lacking.pictures.clear();
    context = ask.context;
    project = projectFrom(ask.context, lacking);
    held = null;
    return null;
  },
  text(ask) {
    text = ask.text;
    held = null;
    return checked();
  },
  complete: ({ offset }) => completions(current(), offset),
  fileComplete: ({ sort, text: written, offset }) => fileCompletions(sort, written, offset),
  fileHover: ({ sort, text: written, offset }) => fileHover(sort, written, offset),
  hover: ({ offset }) => hover(current(), offset),
  actions: ({ span }) => actions(current(), span),
  explain: ({ check }) => explained(check),
  work({ offset }) {
    const state = stateAfter(current(), offset);
    return {
      groups: workGroups(current()),
      at: state?.span.start ?? null,
      parts: state?.parts ?? [],
    };
  },
  sources() {
    const { sheet } = current();
    return sheet.settings.size === 0 ? null : concordanceOf(sheet);
  },
  outline: () => outline(current()),
  definition: ({ offset }) => definition(current(), offset),
  form: () => formModel(current()),
  formEdit({ edit }) {
    const { sheet } = current();
    const { front, frontMatter } = sheet;
    if (front === null || frontMatter === null) return [];
    return formEdit(current().text, front, frontMatter, edit) ?? [];
  },
  bareParse: (ask) => bareParse(ask.text),
};

/** A worker's own side of its channel: what the types of a page know only of windows. */
const channel = self as unknown as {
  onmessage: ((event: { data: Asked }) => void) | null;
  postMessage(answer: Answered): void;
};

channel.onmessage = ({ data: { n, what, ask } }) => {
  try {
    const answer = (answers[what] as (ask: unknown) => unknown)(ask);
    channel.postMessage({ n, answer, fault: null });
  } catch (error) {
    const fault = error instanceof Error ? (error.stack ?? error.message) : String(error);
    channel.postMessage({ n, answer: null, fault });
  }
};
