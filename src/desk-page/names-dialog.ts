import type { EditorView } from '@codemirror/view';
import { counted, el, fill } from './dom.ts';
import type { NamedPlace } from './model.ts';
import { server } from './server.ts';

/** What the names of a sheet ask of the page. */
export interface NamesEvents {
  readonly open: (sheet: string, start: number) => void;
  readonly say: (words: string) => void;
}

const nothing = 'There is no name of a setting, source or sheet at the cursor.';

function asked(view: EditorView): readonly [text: string, offset: number] {
  return [view.state.doc.toString(), view.state.selection.main.head];
}

/** Goes to where the name at the cursor is described. */
export async function goToDefinition(
  view: EditorView,
  id: string,
  { open, say }: NamesEvents,
): Promise<void> {
  const { definition } = await server.places(id, ...asked(view));
  if (definition === null || definition.sheet === null) say(nothing);
  else open(definition.sheet, definition.start);
}

/** Lists all places that have the name at the cursor. */
export async function showUses(
  view: EditorView,
  id: string,
  { open, say }: NamesEvents,
): Promise<void> {
  const { uses } = await server.places(id, ...asked(view));
  if (uses.length === 0) {
    say(nothing);
    return;
  }
  const box = named('Where it is used', view, [
    el('p', {}, `${counted(uses.length, 'place')}:`),
    el('ul', { class: 'found-list' }, ...uses.map((use) => line(use))),
    el('button', { type: 'button', class: 'close', onclick: () => box.close() }, 'Close'),
  ]);
  function line({ sheet, file, line: number, words, start }: NamedPlace): HTMLElement {
    const go = (): void => {
      box.close();
      if (sheet !== null) open(sheet, start);
    };
    return el(
      'li',
      {},
      el('button', { type: 'button', class: 'plain', onclick: go }, words),
      el('span', { class: 'facts' }, `${file}, line ${number}`),
    );
  }
}

/** Gives the name at the cursor another one, wherever the project has it. */
export async function askName(view: EditorView, id: string, { say }: NamesEvents): Promise<void> {
  const [text, offset] = asked(view);
  const { name, uses } = await server.places(id, text, offset);
  if (name === null) {
    say(
      uses.length === 0
        ? nothing
        : 'This name comes from the kind or from sources.yaml, and is the same on every sheet.',
    );
    return;
  }
  const place = el('div', { class: 'outcome', role: 'status' });
  const entry = el('input', {
    type: 'text',
    id: 'another-name',
    value: name,
    required: true,
    autocomplete: 'off',
    spellcheck: 'false',
  });
  const form = el(
    'form',
    {},
    el(
      'p',
      { class: 'field' },
      el('label', { for: 'another-name' }, `Another name for ${name}`),
      entry,
    ),
    el('p', {}, `It stands in ${counted(uses.length, 'place')}, and is changed in all of them.`),
    place,
    el(
      'p',
      { class: 'deeds' },
      el('button', { type: 'submit', class: 'main' }, 'Change it'),
      el('button', { type: 'button', class: 'close', onclick: () => box.close() }, 'Close'),
    ),
  );
  const box = named('Another name', view, [form]);
  entry.select();
  form.addEventListener('submit', async (event) => {
    event.preventDefault();
    const made = await server.rename(id, text, offset, entry.value);
    if (!made.ok) {
      fill(place, el('p', { class: 'not-done' }, made.message));
      return;
    }
    box.close();
    if (view.state.doc.toString() !== text) {
      say('The text has changed meanwhile: ask again.');
      return;
    }
    view.dispatch({
      changes: made.edits.map(({ span, text: insert }) => ({
        from: span.start,
        to: span.end,
        insert,
      })),
      userEvent: 'input.name',
    });
    const elsewhere = made.others === 0 ? '' : `, and in ${counted(made.others, 'other sheet')}`;
    say(`It is ${entry.value} now, here${elsewhere}.`);
  });
}

function named(
  title: string,
  view: EditorView,
  content: readonly (Node | string)[],
): HTMLDialogElement {
  const box = el('dialog', { 'aria-label': title }, el('h2', {}, title), ...content);
  box.addEventListener('close', () => {
    box.remove();
    view.focus();
  });
  document.body.append(box);
  box.showModal();
  return box;
}
