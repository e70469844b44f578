import type { DeskFinding } from '../desk/model.ts';
import { counted, el, fill, spoken } from './dom.ts';
import { signs } from './editor-findings.ts';
import type { EditionFinding, EditionState, LiveSheet, SheetLine } from './model.ts';

/** What was found on the sheet at hand, and between the sheets and around them. */
export class EditionView {
  readonly element = el('div', { class: 'edition-view' });
  readonly #own = el('section', { 'aria-label': 'On this sheet' });
  readonly #all = el('section', { 'aria-label': 'In the edition' });
  readonly #go: (offset: number) => void;
  readonly #open: (id: string, at?: { readonly line: number; readonly column: number }) => void;
  #drawn = '';
  #state: EditionState | null = null;
  #live: LiveSheet | null = null;

  constructor(
    go: (offset: number) => void,
    open: (id: string, at?: { readonly line: number; readonly column: number }) => void,
  ) {
    this.#go = go;
    this.#open = open;
    this.element.append(this.#own, this.#all);
  }

  sheet(findings: readonly DeskFinding[]): void {
    const key = JSON.stringify(findings);
    if (key === this.#drawn) return;
    this.#drawn = key;
    const open = findings.filter(({ accepted }) => accepted === null);
    const kept = findings.filter(({ accepted }) => accepted !== null);
    fill(
      this.#own,
      el('h2', {}, 'On this sheet'),
      open.length === 0 ? el('p', { class: 'aside' }, 'Nothing is open.') : null,
      list(
        open.map((each) =>
          this.#line(each.severity, each.message, each.fix, () => this.#go(each.span.start)),
        ),
      ),
      kept.length === 0 ? null : el('h2', {}, 'Kept, with the reason'),
      list(
        kept.map((each) =>
          this.#line(each.severity, each.message, each.accepted, () => this.#go(each.span.start)),
        ),
      ),
    );
  }

  edition(state: EditionState): void {
    this.#state = state;
    this.#draw();
  }

  /** What was just found on the sheet that is open: newer than what its file says. */
  live(live: LiveSheet): void {
    const before = JSON.stringify(this.#live);
    this.#live = live;
    if (JSON.stringify(live) !== before) this.#draw();
  }

  #draw(): void {
    if (this.#state === null) return;
    const { findings } = this.#state;
    const live = this.#live;
    const sheets = this.#state.sheets.map(
      (sheet): SheetLine =>
        live?.id === sheet.id
          ? { ...sheet, counts: live.counts, title: live.title ?? sheet.title }
          : sheet,
    );
    // Of the file that is open what stands in it now is told above.
    const between = findings.filter(
      ({ finding }) =>
        finding.accepted === null && !(live?.id.includes('.') && finding.file.endsWith(live.id)),
    );
    const open = sheets.filter(
      ({ counts }) => counts !== null && counts.errors + counts.warnings > 0,
    );
    fill(
      this.#all,
      el('h2', {}, 'In the edition'),
      between.length + open.length === 0 ? el('p', { class: 'aside' }, 'Nothing is open.') : null,
      list([
        ...between.map((each) => this.#between(each)),
        ...open.map(({ id, title, counts }) => {
          const { errors, warnings } = counts ?? { errors: 0, warnings: 0 };
          const severity = errors > 0 ? 'error' : 'warning';
          const said = [
            errors > 0 ? counted(errors, 'error') : null,
            warnings > 0 ? counted(warnings, 'warning') : null,
          ].filter((each) => each !== null);
          const words = `${title}: ${said.join(', ')}`;
          return this.#line(severity, words, null, () => this.#open(id));
        }),
      ]),
    );
  }

  #between({ sheet, finding }: EditionFinding): HTMLElement {
    const { severity, message, fix, file, line } = finding;
    const words = `${message} (${file}, line ${line})`;
    const own = this.#state?.files.find((each) => file.endsWith(each.id));
    const id = sheet ?? own?.id ?? null;
    return this.#line(severity, words, fix, id === null ? null : () => this.#open(id, finding));
  }

  #line(
    severity: 'error' | 'warning' | 'note',
    message: string,
    cure: string | null,
    go: (() => void) | null,
  ): HTMLElement {
    const words = [
      el('span', { class: `sign sign-${severity}`, 'aria-hidden': 'true' }, signs[severity]),
      el('span', { class: 'for-ears' }, `${severity}: `),
      ...spoken(message),
    ];
    return el(
      'li',
      { class: `finding-${severity}` },
      go === null
        ? el('p', {}, ...words)
        : el('button', { type: 'button', class: 'plain', onclick: go }, ...words),
      cure === null ? null : el('p', { class: 'cure' }, ...spoken(cure)),
    );
  }
}

function list(lines: readonly HTMLElement[]): HTMLElement | null {
  return lines.length === 0 ? null : el('ul', { class: 'found-list' }, ...lines);
}
