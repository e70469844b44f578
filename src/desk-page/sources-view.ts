import type { Concordance, Said } from '../concordance/model.ts';
import { el, fill } from './dom.ts';

/** What each source says of each setting, those that differ marked. */
export class SourcesView {
  readonly element = el('div', {
    class: 'sources-view',
    tabindex: '0',
    role: 'region',
    'aria-label': 'What the sources say',
  });

  show(found: Concordance | null): void {
    if (found === null || found.rows.length === 0) {
      fill(this.element, el('p', { class: 'aside' }, 'No source is cited yet.'));
      return;
    }
    fill(
      this.element,
      el(
        'table',
        {},
        el(
          'thead',
          {},
          el(
            'tr',
            {},
            el('th', { scope: 'col' }, 'Setting'),
            ...found.sources.map(({ name, title, facts }) =>
              el(
                'th',
                { scope: 'col' },
                name ?? 'no source',
                el('span', { class: 'facts' }, [title, facts].filter(Boolean).join(', ')),
              ),
            ),
          ),
        ),
        el(
          'tbody',
          {},
          ...found.rows.map((row) =>
            el(
              'tr',
              { class: row.differs ? 'differs' : null },
              el('th', { scope: 'row' }, row.label, el('span', { class: 'facts' }, row.figure)),
              ...row.cells.map((cell) => el('td', {}, ...cell.map(said))),
            ),
          ),
        ),
      ),
    );
  }
}

const standing: Readonly<Record<Said['standing'], string>> = {
  figure: 'is the figure',
  agrees: 'agrees',
  differs: 'differs',
  unread: 'cannot be read',
};

function said({ written, page, standing: how, difference, ruling, note }: Said): HTMLElement {
  const beside = [page, standing[how], difference, ruling, note].filter((each) => each !== null);
  return el(
    'p',
    // What an editor has ruled on is no longer open.
    { class: how === 'differs' && ruling !== null ? 'said-ruled' : `said-${how}` },
    written ?? 'the same',
    el('span', { class: 'facts' }, beside.join('; ')),
  );
}
