import type {
  CommandOrder,
  DeskEvent,
  Done,
  EditionState,
  FileChecked,
  FoundLine,
  OpenedSheet,
  Places,
  Pushed,
  Refusing,
  RenamedHere,
  Saved,
  SheetContext,
  Update,
} from './model.ts';

/** The server said no, in words for a person. */
export class Refused extends Error {
  readonly status: number;
  readonly hint: string | null;

  constructor(status: number, { message, hint }: Refusing) {
    super(message);
    this.status = status;
    this.hint = hint;
  }
}

/** The server cannot be reached. */
export class Away extends Error {}

async function ask<T>(path: string, body?: unknown): Promise<T> {
  let response: Response;
  try {
    response = await fetch(
      path,
      body === undefined
        ? { credentials: 'same-origin' }
        : {
            method: 'POST',
            credentials: 'same-origin',
            headers: { 'Content-Type': 'application/json' },
            body: JSON.stringify(body),
          },
    );
  } catch {
    throw new Away('the desk cannot be reached');
  }
  const json: unknown = await response
    .json()
    .catch(() => ({ message: response.statusText, hint: null }));
  if (!response.ok) throw new Refused(response.status, json as Refusing);
  return json as T;
}

const named = (id: string) => encodeURIComponent(id);

/** What the page asks of its server; fails with `Refused` or `Away`. */
export const server = {
  edition: () => ask<EditionState>('edition'),
  sheet: (id: string) => ask<OpenedSheet>(`sheet/${named(id)}`),
  since: (id: string, version: number) =>
    ask<{ version: number; updates: readonly Update[] | null }>(
      `sheet/${named(id)}?from=${version}`,
    ),
  push: (id: string, version: number, updates: readonly Update[]) =>
    ask<Pushed>(`sheet/${named(id)}/push`, { version, updates }),
  save: (id: string) => ask<Saved>(`sheet/${named(id)}/save`, {}),
  places: (id: string, text: string, offset: number) =>
    ask<Places>(`sheet/${named(id)}/places`, { text, offset }),
  rename: (id: string, text: string, offset: number, to: string) =>
    ask<RenamedHere>(`sheet/${named(id)}/rename`, { text, offset, to }),
  check: (id: string, text: string) => ask<FileChecked>(`sheet/${named(id)}/check`, { text }),
  settle: (id: string, keep: 'mine' | 'file') => ask<object>(`sheet/${named(id)}/settle`, { keep }),
  context: (id: string, bases: readonly string[], pictures: readonly string[]) => {
    const query = new URLSearchParams([
      ...bases.map((base) => ['base', base]),
      ...pictures.map((picture) => ['picture', picture]),
    ]);
    return ask<SheetContext>(`context/${named(id)}?${query}`);
  },
  frame: (id: string, what: 'card' | 'chapter', text: string) =>
    ask<{ frame: string }>(`frame/${named(id)}`, { what, text }),
  order: (job: string, order: CommandOrder) => ask<Done>('order', { job, order }),
  address: () => ask<{ address: string }>('address', {}),
  find: (words: string) => ask<readonly FoundLine[]>(`find?${new URLSearchParams({ q: words })}`),
};

/** Listens to what the server tells; `onAway` when it falls silent, `onBack` when it is there again. */
export function listen(
  onEvent: (event: DeskEvent) => void,
  onAway: () => void,
  onBack: () => void,
): void {
  let away = false;
  const open = (): void => {
    const events = new EventSource('events');
    events.onopen = () => {
      if (away) onBack();
      away = false;
    };
    events.onmessage = ({ data }) => onEvent(JSON.parse(String(data)) as DeskEvent);
    events.onerror = () => {
      if (!away) onAway();
      away = true;
      // One that was refused would never try again by itself.
      events.close();
      setTimeout(open, 1000);
    };
  };
  open();
}
