import { el, fill } from './dom.ts';
import type { CommandOrder, Done, EditionState, KindLine } from './model.ts';
import { Refused, server } from './server.ts';

/** A dialog that is closed by its button, by Escape, or when it has done what it is for. */
function dialog(title: string, ...content: readonly (Node | string)[]): HTMLDialogElement {
  const box = el(
    'dialog',
    { class: 'order', 'aria-label': title },
    el('h2', {}, title),
    ...content,
  );
  box.addEventListener('close', () => box.remove());
  document.body.append(box);
  box.showModal();
  return box;
}

let jobs = 0;
const listeners = new Map<string, (line: string) => void>();

/** Tells an order that is carried out how far it has come. */
export function talked(job: string, line: string): void {
  listeners.get(job)?.(line);
}

/** Carries out an order and shows what it says, line by line, in `place`. */
async function carryOut(order: CommandOrder, place: HTMLElement): Promise<Done | null> {
  jobs += 1;
  const job = `job-${jobs}-${performance.now()}`;
  const now = el('p', { class: 'progress' }, 'Begun …');
  fill(place, now);
  listeners.set(job, (line) => {
    now.textContent = line;
  });
  try {
    const done = await server.order(job, order);
    const words =
      done.talk.trim() === ''
        ? []
        : [el('pre', { class: 'talk', tabindex: '0' }, done.talk.trim())];
    fill(
      place,
      el(
        'p',
        { class: done.status === 0 ? 'done' : 'not-done' },
        done.status === 0 ? 'Done.' : 'It was not done.',
      ),
      ...words,
      ...done.prints.map((print) =>
        el(
          'p',
          {},
          el(
            'a',
            { href: print, target: '_blank', rel: 'noopener' },
            decodeURIComponent(print.replace('print/', '')),
          ),
        ),
      ),
    );
    return done;
  } catch (error) {
    fill(
      place,
      el('p', { class: 'not-done' }, error instanceof Error ? error.message : String(error)),
      error instanceof Refused && error.hint !== null ? el('p', {}, error.hint) : null,
    );
    return null;
  } finally {
    listeners.delete(job);
  }
}

function closer(box: () => HTMLDialogElement): HTMLElement {
  return el('button', { type: 'button', class: 'close', onclick: () => box().close() }, 'Close');
}

/** Prints a card or the booklet; what is unsaved is saved by `first`. */
export function printDialog(
  what: { readonly sheet: string; readonly title: string } | null,
  first: () => Promise<boolean>,
): void {
  const place = el('div', { class: 'outcome', role: 'status' });
  const proof = el('input', { type: 'checkbox', id: 'print-proof' });
  const start = el('button', { type: 'button', class: 'main' }, 'Print');
  const box = dialog(
    what === null ? 'Print the booklet' : `Print the card of ${what.title}`,
    el('p', {}, 'It is printed from the saved files, into the folder print.'),
    el(
      'p',
      {},
      proof,
      el(
        'label',
        { for: 'print-proof' },
        ' As a proof, in spite of findings, with DRAFT across every page',
      ),
    ),
    place,
    el(
      'p',
      { class: 'deeds' },
      start,
      closer(() => box),
    ),
  );
  start.addEventListener('click', async () => {
    start.disabled = true;
    if (await first()) {
      await carryOut(
        what === null
          ? { do: 'print-booklet', proof: proof.checked }
          : { do: 'print-card', sheet: what.sheet, proof: proof.checked },
        place,
      );
    } else
      fill(
        place,
        el('p', { class: 'not-done' }, 'The sheet could not be saved, so nothing was printed.'),
      );
    start.disabled = false;
  });
}

/** A new sheet for a kind and its features, or a variant of one that is there, or a kind of one's own. */
export function newSheetDialog(
  state: EditionState,
  current: string | null,
  opened: (id: string) => void,
): void {
  const place = el('div', { class: 'outcome', role: 'status' });
  const what = el(
    'select',
    { id: 'new-what' },
    el('option', { value: 'new-sheet' }, 'a unit of its own'),
    el('option', { value: 'new-variant' }, 'a variant of a sheet that is there'),
    el('option', { value: 'new-kind' }, 'a kind of unit of our own'),
  );
  const fields = el('div', { class: 'fields' });
  let order: Fields['order'] = () => '';
  const draw = (): void => {
    const made =
      what.value === 'new-sheet'
        ? unitFields(state.kinds)
        : what.value === 'new-variant'
          ? variantFields(state, current)
          : kindFields();
    order = made.order;
    fill(fields, ...made.fields);
  };
  const start = el('button', { type: 'submit', class: 'main' }, 'Begin it');
  const form = el(
    'form',
    {},
    labeled('What is it for?', what),
    fields,
    place,
    el(
      'p',
      { class: 'deeds' },
      start,
      closer(() => box),
    ),
  );
  const box = dialog('A new sheet', form);
  what.addEventListener('change', draw);
  draw();
  // What was refused is no longer what stands there.
  form.addEventListener('input', () => fill(place));
  form.addEventListener('submit', async (event) => {
    event.preventDefault();
    const wanted = order();
    if (typeof wanted === 'string') {
      fill(place, el('p', { class: 'not-done' }, wanted));
      return;
    }
    start.disabled = true;
    const done = await carryOut(wanted, place);
    start.disabled = false;
    if (done?.status === 0 && done.sheet !== null) {
      box.close();
      opened(done.sheet);
    }
  });
}

/** The few words that a folder is begun with. */
export function beginDialog({ folder }: EditionState, begun: () => void): void {
  const place = el('div', { class: 'outcome', role: 'status' });
  const title = entry('begin-title', 'Wexcombe Register: adjustment sheets');
  const start = el('button', { type: 'submit', class: 'main' }, 'Begin it');
  const form = el(
    'form',
    {},
    el(
      'p',
      {},
      `The folder ${folder} is empty. An edition and an invented example sheet of every kind of unit are laid into it, to look at and to take out again.`,
    ),
    labeled('What is your booklet called?', title),
    place,
    el('p', { class: 'deeds' }, start),
  );
  const box = dialog('Begin your folder', form);
  form.addEventListener('submit', async (event) => {
    event.preventDefault();
    start.disabled = true;
    const done = await carryOut({ do: 'new-club', title: title.value }, place);
    start.disabled = false;
    if (done?.status !== 0) return;
    box.close();
    begun();
  });
}

/** Its headings and lines: a name, and what is said of it. */
function referenceLines(out: string): HTMLElement[] {
  const sections: HTMLElement[] = [];
  for (const line of out.split('\n')) {
    const [, name, words = ''] = /^ +(\S+(?: \S+)*)(?: {2,}(.*))?$/.exec(line) ?? [];
    const list = sections.at(-1);
    if (name === undefined || list === undefined) {
      if (line.trim() !== '') sections.push(el('h3', {}, line.trim()), el('dl', {}));
    } else list.append(el('dt', {}, name), el('dd', {}, words));
  }
  return sections;
}

/** What a kind of unit knows, as `gaugeleaf kind` tells it. */
export function kindDialog(name: string, title: string): void {
  const place = el('div', { class: 'outcome', role: 'status' });
  const box = dialog(
    title,
    place,
    el(
      'p',
      { class: 'deeds' },
      closer(() => box),
    ),
  );
  box.classList.add('reference');
  const show = async (): Promise<void> => {
    const done = await carryOut({ do: 'show-kind', name }, place);
    if (done !== null && done.status === 0)
      fill(
        place,
        el('div', { class: 'reference-lines', tabindex: '0' }, ...referenceLines(done.out)),
      );
  };
  void show();
}

interface Fields {
  readonly fields: readonly HTMLElement[];
  /** What is to be carried out, or what has to be said first. */
  readonly order: () => CommandOrder | string;
}

function labeled(label: string, entry: HTMLElement): HTMLElement {
  return el('p', { class: 'field' }, el('label', { for: entry.id }, label), entry);
}

function entry(id: string, placeholder: string): HTMLInputElement {
  return el('input', {
    id,
    type: 'text',
    required: true,
    maxlength: 100,
    placeholder,
    autocomplete: 'off',
  });
}

function unitFields(kinds: readonly KindLine[]): Fields {
  const kind = el(
    'select',
    { id: 'new-kind' },
    ...kinds.map(({ name, title }) => el('option', { value: name }, title)),
  );
  const maker = entry('new-maker', 'Orlo');
  const model = entry('new-model', 'T71');
  const features = el('fieldset', { class: 'flags' });
  const draw = (): void => {
    const found = kinds.find(({ name }) => name === kind.value);
    fill(
      features,
      el('legend', {}, 'What it has'),
      ...(found?.features ?? []).map(({ name, label }) =>
        el('label', {}, el('input', { type: 'checkbox', value: name }), label),
      ),
    );
  };
  kind.addEventListener('change', draw);
  draw();
  return {
    fields: [labeled('Kind', kind), labeled('Maker', maker), labeled('Model', model), features],
    order: () => {
      const chosen = [...features.querySelectorAll('input')]
        .filter(({ checked }) => checked)
        .map(({ value }) => value);
      const found = kinds.find(({ name }) => name === kind.value);
      const open = found?.oneOf.find((names) => !names.some((name) => chosen.includes(name)));
      if (open !== undefined) {
        const labels = open.map(
          (name) => found?.features.find((each) => each.name === name)?.label ?? name,
        );
        return `Tick at least one of these: ${labels.join(', ')}`;
      }
      return {
        do: 'new-sheet',
        kind: kind.value,
        maker: maker.value,
        model: model.value,
        features: chosen,
      };
    },
  };
}

function variantFields({ sheets }: EditionState, current: string | null): Fields {
  const base = el(
    'select',
    { id: 'new-base' },
    ...sheets.map(({ id, title }) => el('option', { value: id }, title)),
  );
  if (current !== null) base.value = current;
  const name = entry('new-name', 'orlo-t72-wexcombe-six');
  name.pattern = '[a-z0-9]+(-[a-z0-9]+)*';
  const title = entry('new-title', 'Orlo T72 two-barrel, Wexcombe Six');
  return {
    fields: [labeled('Based on', base), labeled('Name of its file', name), labeled('Title', title)],
    order: () => ({ do: 'new-variant', base: base.value, name: name.value, title: title.value }),
  };
}

function kindFields(): Fields {
  const name = entry('new-name', 'vacuum-pump');
  name.pattern = '[a-z0-9]+(-[a-z0-9]+)*';
  const title = entry('new-title', 'Vacuum pump');
  return {
    fields: [labeled('Name', name), labeled('Title', title)],
    order: () => ({ do: 'new-kind', name: name.value, title: title.value }),
  };
}
