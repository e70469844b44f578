import { type Extension, RangeSet, StateEffect, StateField } from '@codemirror/state';
import { Decoration, type DecorationSet, EditorView, GutterMarker, gutter } from '@codemirror/view';
import type { Severity } from '../checks/index.ts';
import type { DeskFinding } from '../desk/model.ts';

/** Puts other findings in place of those that are shown. */
export const setFindings = StateEffect.define<readonly DeskFinding[]>();

/** Signs of the three severities, as a proofreader's pencil makes them: told apart by form and color. */
export const signs: Readonly<Record<Severity, string>> = { error: '×', warning: '?', note: '–' };

const marks: Readonly<Record<Severity, Decoration>> = {
  error: Decoration.mark({ class: 'found found-error' }),
  warning: Decoration.mark({ class: 'found found-warning' }),
  note: Decoration.mark({ class: 'found found-note' }),
};

interface Shown {
  readonly findings: readonly DeskFinding[];
  readonly under: DecorationSet;
}

/** The findings of the sheet that stand, moved along with the text until the next are found. */
export const shownFindings = StateField.define<Shown>({
  create: () => ({ findings: [], under: Decoration.none }),
  update(shown, transaction) {
    for (const effect of transaction.effects) {
      if (effect.is(setFindings)) return shownFrom(effect.value, transaction.newDoc.length);
    }
    if (!transaction.docChanged) return shown;
    const { changes } = transaction;
    return {
      findings: shown.findings.map((finding) => ({
        ...finding,
        span: {
          start: changes.mapPos(finding.span.start, 1),
          end: Math.max(
            changes.mapPos(finding.span.start, 1),
            changes.mapPos(finding.span.end, -1),
          ),
        },
      })),
      under: shown.under.map(changes),
    };
  },
  provide: (field) => EditorView.decorations.from(field, ({ under }) => under),
});

function shownFrom(all: readonly DeskFinding[], length: number): Shown {
  const findings = all
    .filter(({ accepted }) => accepted === null)
    .map((finding) => {
      const start = Math.min(finding.span.start, length);
      return {
        ...finding,
        span: { start, end: Math.min(Math.max(finding.span.end, start), length) },
      };
    });
  const ranges = findings
    .filter(({ span }) => span.end > span.start)
    .map(({ span, severity }) => marks[severity].range(span.start, span.end));
  return { findings, under: Decoration.set(ranges, true) };
}

class Sign extends GutterMarker {
  readonly #severity: Severity;
  readonly #count: number;

  constructor(severity: Severity, count: number) {
    super();
    this.#severity = severity;
    this.#count = count;
  }

  override eq(other: Sign): boolean {
    return other.#severity === this.#severity && other.#count === this.#count;
  }

  override toDOM(): Node {
    const sign = document.createElement('span');
    sign.className = `sign sign-${this.#severity}`;
    sign.textContent = signs[this.#severity];
    sign.title = this.#count === 1 ? this.#severity : `${this.#count} findings`;
    return sign;
  }
}

const rank: Readonly<Record<Severity, number>> = { error: 0, warning: 1, note: 2 };

/** The margin: the gravest sign of each line; a click puts the cursor at its first finding. */
function margin(): Extension {
  return gutter({
    class: 'margin-signs',
    markers: (view) => {
      const lines = new Map<number, { severity: Severity; count: number }>();
      for (const { span, severity } of view.state.field(shownFindings).findings) {
        const from = view.state.doc.lineAt(Math.min(span.start, view.state.doc.length)).from;
        const known = lines.get(from);
        const graver = known === undefined || rank[severity] < rank[known.severity];
        lines.set(from, {
          severity: graver ? severity : known.severity,
          count: (known?.count ?? 0) + 1,
        });
      }
      const ranges = [...lines].sort(([a], [b]) => a - b);
      return RangeSet.of(
        ranges.map(([from, { severity, count }]) => new Sign(severity, count).range(from)),
      );
    },
    initialSpacer: () => new Sign('note', 1),
    domEventHandlers: {
      mousedown(view, line) {
        const here = view.state
          .field(shownFindings)
          .findings.find(({ span }) => span.start >= line.from && span.start <= line.to);
        if (here === undefined) return false;
        view.dispatch({ selection: { anchor: here.span.start } });
        view.focus();
        return true;
      },
    },
  });
}

export function findingMarks(): Extension {
  return [shownFindings, margin()];
}

/** Goes to the finding after the cursor, or before it, around the end; false where there is none. */
export function goToFinding(view: EditorView, way: 1 | -1): boolean {
  const { findings } = view.state.field(shownFindings);
  if (findings.length === 0) return false;
  const at = view.state.selection.main.head;
  const starts = findings.map(({ span }) => span.start).sort((a, b) => a - b);
  const next =
    way === 1
      ? (starts.find((start) => start > at) ?? starts[0])
      : (starts.filter((start) => start < at).at(-1) ?? starts.at(-1));
  if (next === undefined) return false;
  view.dispatch({ selection: { anchor: next }, scrollIntoView: true });
  return true;
}
