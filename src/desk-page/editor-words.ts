import { autocompletion, type Completion, type CompletionResult } from '@codemirror/autocomplete';
import type { Extension } from '@codemirror/state';
import { type EditorView, hoverTooltip } from '@codemirror/view';
import type {
  DeskAction,
  Completion as DeskCompletion,
  DeskFinding,
  Hover,
} from '../desk/model.ts';
import type { Span } from '../text/index.ts';
import { el, spoken } from './dom.ts';
import { shownFindings, signs } from './editor-findings.ts';
import type { Proofreader } from './proofreader.ts';

/** Completion and hover, asked of the proofreader. */
export function editorWords(proofreader: Proofreader): Extension {
  return [
    autocompletion({
      override: [
        async ({ state, pos, explicit }): Promise<CompletionResult | null> => {
          const before = state.doc.lineAt(pos).text.slice(0, pos - state.doc.lineAt(pos).from);
          // While a word is written it is offered by itself; on a blank place only when asked for.
          if (!explicit && !/[\w:[{-]$|[\w:,[-] $/.test(before)) return null;
          const found = await proofreader.ask('complete', { offset: pos }, state.doc.toString());
          return resultFrom(found, pos);
        },
      ],
      icons: false,
      maxRenderedOptions: 60,
      interactionDelay: 30,
      activateOnTypingDelay: 30,
    }),
    hoverTooltip(
      async (view, pos) => {
        const here = findingsAt(view, pos);
        const words = await proofreader.ask('hover', { offset: pos }, view.state.doc.toString());
        if (words === null && here.length === 0) return null;
        const [first] = here;
        const span = first?.span ?? words?.span;
        if (span === undefined) return null;
        return {
          pos: Math.min(span.start, pos),
          end: Math.max(span.end, pos),
          above: true,
          create: () => ({
            dom: el(
              'div',
              { class: 'said' },
              ...here.map((finding) => findingWords(finding)),
              words === null ? null : hoverWords(words),
            ),
          }),
        };
      },
      { hoverTime: 250 },
    ),
  ];
}

function resultFrom(found: readonly DeskCompletion[], pos: number): CompletionResult | null {
  const [first] = found;
  if (first === undefined) return null;
  const from = Math.min(first.edit.span.start, pos);
  return {
    from,
    to: Math.max(pos, from),
    options: found.slice(0, 300).map((each, index) => optionFrom(each, index)),
    filter: true,
  };
}

function optionFrom(offered: DeskCompletion, index: number): Completion {
  const { edit, blank, label, detail, explain } = offered;
  return {
    label,
    ...(detail === null ? {} : { detail }),
    ...(explain === null ? {} : { info: explain }),
    // The service has put the likeliest first.
    boost: -Math.min(index, 99),
    apply: (view, _, from, to) => {
      const grown = to - Math.max(edit.span.end, from);
      const end = Math.max(to, edit.span.end + Math.max(0, grown - (to - edit.span.end)));
      const anchor = edit.span.start + (blank?.start ?? edit.text.length);
      const head = edit.span.start + (blank?.end ?? edit.text.length);
      view.dispatch({
        changes: {
          from: edit.span.start,
          to: Math.min(end, view.state.doc.length),
          insert: edit.text,
        },
        selection: { anchor, head },
        scrollIntoView: true,
        userEvent: 'input.complete',
      });
    },
  };
}

/** The findings that a place touches. */
export function findingsAt(view: EditorView, at: number): readonly DeskFinding[] {
  return findingsIn(view, { start: at, end: at });
}

/** The findings that a stretch touches. */
function findingsIn(view: EditorView, { start, end }: Span): readonly DeskFinding[] {
  return view.state
    .field(shownFindings)
    .findings.filter(({ span }) => end >= span.start && start <= span.end);
}

/** A finding as a person reads it. */
export function findingWords({ severity, message, fix, related }: DeskFinding): HTMLElement {
  return el(
    'div',
    { class: `finding finding-${severity}` },
    el(
      'p',
      { class: 'what' },
      el('span', { class: 'sign', 'aria-hidden': 'true' }, signs[severity]),
      el('span', { class: 'grade' }, severity),
      ' ',
      ...spoken(message),
    ),
    fix === null ? null : el('p', { class: 'cure' }, ...spoken(fix)),
    ...related.slice(0, 3).map(({ label }) => el('p', { class: 'related' }, label)),
  );
}

function hoverWords({ title, words, rows }: Hover): HTMLElement {
  return el(
    'div',
    { class: 'meaning' },
    el('p', { class: 'title' }, title),
    ...words.map((each) => el('p', {}, ...spoken(each))),
    rows.length === 0
      ? null
      : el('dl', {}, ...rows.flatMap(([label, text]) => [el('dt', {}, label), el('dd', {}, text)])),
  );
}

/** Makes the edits of an action in this sheet, and puts the cursor where something is to be written yet. */
export function applyAction(view: EditorView, action: DeskAction, file: string): boolean {
  const own = action.edits.filter((each) => each.file === file).flatMap(({ edits }) => edits);
  if (own.length === 0 || action.edits.some((each) => each.file !== file)) return false;
  const changes = own.map(({ span, text }) => ({ from: span.start, to: span.end, insert: text }));
  view.dispatch({
    changes,
    ...(action.blank === null
      ? {}
      : { selection: { anchor: action.blank.start, head: action.blank.end } }),
    scrollIntoView: true,
    userEvent: 'input.cure',
  });
  return true;
}

/** What can be done at the cursor, as a list to choose from by keys; and what there is to say of it. */
export async function offerActions(
  view: EditorView,
  proofreader: Proofreader,
  file: string,
): Promise<boolean> {
  const { from, to, head } = view.state.selection.main;
  const text = view.state.doc.toString();
  // A sign in the margin is of the whole line, wherever on it the cursor stands.
  const line = view.state.doc.lineAt(head);
  const exact = findingsIn(view, { start: from, end: to });
  const span =
    exact.length > 0 || from !== to ? { start: from, end: to } : { start: line.from, end: line.to };
  const [found, words] = await Promise.all([
    proofreader.ask('actions', { span }, text),
    proofreader.ask('hover', { offset: head }, text),
  ]);
  const here = findingsIn(view, span);
  const box = el('dialog', { class: 'cures', 'aria-label': 'What can be done here' });
  const close = (): void => {
    box.close();
    box.remove();
    view.focus();
  };
  const choices = found.map((action) =>
    el(
      'button',
      {
        type: 'button',
        class: `cure-${action.kind}`,
        onclick: () => {
          close();
          applyAction(view, action, file);
        },
      },
      ...spoken(action.title),
      el('span', { class: 'sort' }, sorts[action.kind]),
    ),
  );
  box.append(
    ...here.map((finding) => findingWords(finding)),
    ...(words === null ? [] : [hoverWords(words)]),
    ...(choices.length === 0
      ? nothingToDo(here.length, words !== null)
      : [el('div', { class: 'choices' }, ...choices)]),
    el('button', { type: 'button', class: 'close', onclick: close }, 'Close'),
  );
  box.addEventListener('cancel', (event) => {
    event.preventDefault();
    close();
  });
  box.addEventListener('keydown', (event) => {
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (step === 0) return;
    const buttons = [...box.querySelectorAll('button')];
    const at = buttons.indexOf(document.activeElement as HTMLButtonElement);
    buttons[(at + step + buttons.length) % buttons.length]?.focus();
    event.preventDefault();
  });
  document.body.append(box);
  box.showModal();
  box.querySelector('button')?.focus();
  return true;
}

function nothingToDo(findings: number, explained: boolean): readonly HTMLElement[] {
  if (findings > 0) {
    return [el('p', { class: 'none' }, 'Nothing can be done of itself: mend the words.')];
  }
  return explained ? [] : [el('p', { class: 'none' }, 'Nothing is found on this line.')];
}

const sorts: Readonly<Record<DeskAction['kind'], string>> = {
  fix: 'certain: nothing else can be meant',
  suggested: 'likely: look whether it is what your source says; Ctrl Z takes it back',
  accept: 'it stays as it is, and the print says why',
};
