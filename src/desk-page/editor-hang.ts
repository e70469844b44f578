import { type Extension, RangeSetBuilder } from '@codemirror/state';
import { Decoration, type DecorationSet, EditorView, ViewPlugin } from '@codemirror/view';

/** Deeper lines hang as these do. */
const deepest = 16;

/** How wide an indent's blank and a letter of a list's number are drawn, in letter heights. */
const blankWidth = 0.57;
const numberWidth = 0.5;

/** A line that is too long goes on below its own words, and not at the edge of the page. */
export function hangingLines(): Extension {
  return [
    EditorView.baseTheme(
      Object.fromEntries(
        Array.from({ length: deepest + 1 }, (_, blanks) =>
          Array.from({ length: 5 }, (_, number) => {
            const width = `${(blanks * blankWidth + number * numberWidth).toFixed(2)}em`;
            return [
              `.cm-line.${hangClass(blanks, number)}`,
              { paddingLeft: `calc(6px + ${width})`, textIndent: `-${width}` },
            ] as const;
          }),
        ).flat(),
      ),
    ),
    ViewPlugin.define(
      (view) => ({
        decorations: hanging(view),
        update({ docChanged, viewportChanged, view: now }) {
          if (docChanged || viewportChanged) this.decorations = hanging(now);
        },
      }),
      { decorations: ({ decorations }) => decorations },
    ),
  ];
}

function hangClass(blanks: number, number: number): string {
  return `hang-${blanks}-${number}`;
}

function hanging({ state, visibleRanges }: EditorView): DecorationSet {
  const made = new RangeSetBuilder<Decoration>();
  for (const { from, to } of visibleRanges) {
    for (let at = from; at <= to; ) {
      const line = state.doc.lineAt(at);
      const [, blanks = '', number = ''] = /^( *)((?:-|\d{1,3}[.)]) +)?/.exec(line.text) ?? [];
      const name = hangClass(Math.min(blanks.length, deepest), Math.min(number.length, 4));
      if (blanks.length + number.length > 0)
        made.add(line.from, line.from, Decoration.line({ class: name }));
      at = line.to + 1;
    }
  }
  return made.finish();
}
