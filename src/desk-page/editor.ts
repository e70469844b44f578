import { closeBrackets, completionKeymap } from '@codemirror/autocomplete';
import { defaultKeymap, history, historyKeymap } from '@codemirror/commands';
import { markdown } from '@codemirror/lang-markdown';
import { yaml, yamlFrontmatter } from '@codemirror/lang-yaml';
import { codeFolding, foldKeymap, HighlightStyle, syntaxHighlighting } from '@codemirror/language';
import { highlightSelectionMatches, search, searchKeymap } from '@codemirror/search';
import { EditorState, type Extension } from '@codemirror/state';
import {
  Decoration,
  type DecorationSet,
  drawSelection,
  EditorView,
  highlightActiveLine,
  highlightSpecialChars,
  keymap,
  lineNumbers,
  MatchDecorator,
  ViewPlugin,
  type ViewUpdate,
} from '@codemirror/view';
import { tags } from '@lezer/highlight';
import { findingMarks, goToFinding } from './editor-findings.ts';
import { hangingLines } from './editor-hang.ts';

/** What an editor is made with besides its text. */
export interface EditorParts {
  readonly extensions: readonly Extension[];
  readonly locked: boolean;
  /** Whether it is YAML throughout, and no sheet. */
  readonly isYaml: boolean;
  readonly onText: (text: string) => void;
  readonly onCursor: (offset: number) => void;
  readonly onSave: () => void;
  readonly onCures: (view: EditorView) => void;
  readonly onName: (view: EditorView, what: 'definition' | 'uses' | 'rename') => void;
}

/** How marks of the sheet look: values in figures' weight, states in slanted type. */
const words = HighlightStyle.define([
  { tag: tags.heading, class: 'w-heading' },
  { tag: [tags.propertyName, tags.definition(tags.propertyName)], class: 'w-key' },
  { tag: tags.comment, class: 'w-remark' },
  { tag: tags.emphasis, class: 'w-slanted' },
  { tag: tags.strong, class: 'w-strong' },
  {
    tag: [tags.meta, tags.processingInstruction, tags.punctuation, tags.separator],
    class: 'w-sign',
  },
]);

/** Indentation in a type whose blanks are narrow is drawn as wide as it is deep. */
const indents = decorate(/^ +/gm, 'indent');
const ownMarks = decorate(/:(?:value|state)\[[^\]\n]*\]|^:::.*$/gm, 'own-mark');

function decorate(regexp: RegExp, name: string): Extension {
  const matcher = new MatchDecorator({ regexp, decoration: Decoration.mark({ class: name }) });
  return ViewPlugin.fromClass(
    class {
      decorations: DecorationSet;
      constructor(view: EditorView) {
        this.decorations = matcher.createDeco(view);
      }
      update(update: ViewUpdate): void {
        this.decorations = matcher.updateDeco(update, this.decorations);
      }
    },
    { decorations: (plugin) => plugin.decorations },
  );
}

/** The state of an editor for one sheet. */
export function editorState(text: string, parts: EditorParts, nonce: string): EditorState {
  return EditorState.create({
    doc: text,
    extensions: [
      EditorView.cspNonce.of(nonce),
      // A line ends at `\n` alone, so that every offset is one of the file's own text.
      EditorState.lineSeparator.of('\n'),
      EditorState.readOnly.of(parts.locked),
      lineNumbers(),
      findingMarks(),
      highlightSpecialChars(),
      history(),
      drawSelection(),
      closeBrackets(),
      codeFolding(),
      search({ top: true }),
      highlightActiveLine(),
      highlightSelectionMatches(),
      EditorView.lineWrapping,
      hangingLines(),
      EditorView.contentAttributes.of({
        'aria-label': parts.isYaml ? 'Text of the file' : 'Text of the sheet',
        spellcheck: 'false',
        tabindex: '0',
      }),
      parts.isYaml ? yaml() : yamlFrontmatter({ content: markdown() }),
      syntaxHighlighting(words),
      indents,
      ownMarks,
      ...parts.extensions,
      keymap.of([
        { key: 'Mod-s', preventDefault: true, run: () => done(parts.onSave) },
        { key: 'Alt-Enter', run: (view) => done(() => parts.onCures(view)) },
        { key: 'Mod-.', run: (view) => done(() => parts.onCures(view)) },
        { key: 'F2', run: (view) => done(() => parts.onName(view, 'rename')) },
        { key: 'F12', run: (view) => done(() => parts.onName(view, 'definition')) },
        { key: 'Shift-F12', run: (view) => done(() => parts.onName(view, 'uses')) },
        { key: 'F8', run: (view) => goToFinding(view, 1) },
        { key: 'Shift-F8', run: (view) => goToFinding(view, -1) },
        { key: 'Alt-ArrowUp', run: (view) => moveStep(view, -1) },
        { key: 'Alt-ArrowDown', run: (view) => moveStep(view, 1) },
        ...completionKeymap,
        ...searchKeymap,
        ...historyKeymap,
        ...foldKeymap,
        ...defaultKeymap,
      ]),
      EditorView.updateListener.of((update) => {
        if (update.docChanged) parts.onText(update.state.doc.toString());
        if (update.docChanged || update.selectionSet) {
          parts.onCursor(update.state.selection.main.head);
        }
      }),
    ],
  });
}

function done(work: () => void): boolean {
  work();
  return true;
}

/**
 * Moves the numbered step at the cursor before or behind its neighbor, and numbers both as their places
 * were; false where there is no step or no neighbor of it.
 */
export function moveStep(view: EditorView, way: 1 | -1): boolean {
  const { state } = view;
  const steps = stepsAround(state);
  const at = state.selection.main.head;
  const index = steps.findIndex(({ from, to }) => at >= from && at <= to);
  const here = steps[index];
  const other = steps[index + way];
  if (here === undefined || other === undefined) return false;
  const [first, second] = way === 1 ? [here, other] : [other, here];
  const a = state.sliceDoc(first.from, first.to);
  const b = state.sliceDoc(second.from, second.to);
  const between = state.sliceDoc(first.to, second.from);
  const insert = renumbered(b, first.number) + between + renumbered(a, second.number);
  const moved =
    way === 1 ? first.from + renumbered(b, first.number).length + between.length : first.from;
  view.dispatch({
    changes: { from: first.from, to: second.to, insert },
    selection: { anchor: Math.min(moved + (at - here.from), first.from + insert.length) },
    scrollIntoView: true,
    userEvent: 'move.step',
  });
  return true;
}

interface StepLines {
  readonly from: number;
  readonly to: number;
  readonly number: string;
}

function renumbered(step: string, number: string): string {
  return step.replace(/^\d+/, number);
}

/** The numbered steps of the list that the cursor stands in: lines that begin with a figure, and what is indented below. */
function stepsAround(state: EditorState): readonly StepLines[] {
  const steps: StepLines[] = [];
  const { doc } = state;
  const cursor = doc.lineAt(state.selection.main.head).number;
  let start = cursor;
  while (start > 1 && !/^#/.test(doc.line(start).text)) start -= 1;
  for (let number = start; number <= doc.lines; number += 1) {
    const line = doc.line(number);
    if (number > start && /^#/.test(line.text)) break;
    const numbered = /^(\d+)[.)] /.exec(line.text);
    const last = steps.at(-1);
    if (numbered) steps.push({ from: line.from, to: line.to, number: numbered[1] ?? '1' });
    else if (last !== undefined && /^\s+\S/.test(line.text)) {
      steps[steps.length - 1] = { ...last, to: line.to };
    }
  }
  return steps;
}
