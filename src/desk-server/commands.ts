import { basename, isAbsolute, join } from 'node:path';
import type { CommandOrder, Done } from '../desk-page/model.ts';
import { fileId, ownFiles, Refusal } from '../project/index.ts';
import type { Desk } from './desk.ts';

/** What a command came to. */
export interface Outcome {
  readonly status: number;
  readonly out: string;
  readonly talk: string;
}

/** Carries out a command line, as a shell in the project's folder would; `onTalk` is told of its progress. */
export type RunCommand = (
  argv: readonly string[],
  cwd: string,
  onTalk: (line: string) => void,
) => Promise<Outcome>;

/** Commands that the page asks for: the same as on the command line, one at a time. */
export class Commands {
  readonly #desk: Desk;
  readonly #run: RunCommand;
  #last: Promise<unknown> = Promise.resolve();

  constructor(desk: Desk, run: RunCommand) {
    this.#desk = desk;
    this.#run = run;
  }

  /** `job` is the page's own name for it, which talk of progress bears. */
  carryOut(job: string, order: CommandOrder): Promise<Done> {
    const next = this.#last.then(() => this.#now(job, order));
    this.#last = next.catch(() => undefined);
    return next;
  }

  async #now(job: string, order: CommandOrder): Promise<Done> {
    const { root } = this.#desk.project;
    const argv = this.#argvOf(order);
    const { status, out, talk } = await this.#run(argv, root, (line) =>
      this.#desk.tell({ is: 'talk', job, line }),
    );
    this.#desk.look();
    const written = out.split('\n').filter((line) => line !== '');
    const made = written.find((path) => /\.md$/i.test(path));
    const kind = order.do === 'new-kind' ? written.find((path) => this.#isOwn(path)) : undefined;
    return {
      status,
      out,
      talk,
      sheet: made === undefined ? (kind ?? null) : fileId(made),
      prints: written
        .filter((path) => isPrint(path, root))
        .map((path) => `print/${encodeURIComponent(basename(path))}`),
    };
  }

  /** Whether a path, seen from the project's folder, is that of a kind, the edition or shared sources. */
  #isOwn(path: string): boolean {
    return ownFiles(this.#desk.project).some(({ id }) => id === path);
  }

  #argvOf(order: CommandOrder): readonly string[] {
    switch (order.do) {
      case 'print-card':
        return ['card', this.#desk.pathOf(order.sheet), ...(order.proof ? ['--proof'] : [])];
      case 'print-booklet':
        return ['booklet', ...(order.proof ? ['--proof'] : [])];
      case 'new-sheet':
        // Joined by `=`: a value that begins with a hyphen is no option.
        return [
          'draft',
          `--kind=${text(order.kind, 'kind')}`,
          `--maker=${text(order.maker, 'maker')}`,
          `--model=${text(order.model, 'model')}`,
          `--features=${(order.features ?? []).map((each) => text(each, 'feature')).join(',')}`,
        ];
      case 'new-variant':
        return [
          'draft',
          `--based-on=${this.#desk.pathOf(order.base)}`,
          `--out=${join(this.#desk.project.root, 'sheets', `${plainName(order.name)}.md`)}`,
          `--title=${text(order.title, 'title')}`,
        ];
      case 'new-kind':
        return [
          'draft',
          `--new-kind=${plainName(order.name)}`,
          `--title=${text(order.title, 'title')}`,
        ];
      case 'new-club':
        return ['draft', '--club=.', '--plain', `--title=${text(order.title, 'title')}`];
      case 'show-kind':
        return ['kind', plainName(order.name)];
      default:
        throw new Refusal('nobody here knows this order');
    }
  }
}

function text(value: unknown, what: string): string {
  if (typeof value !== 'string' || value.length > 200) {
    throw new Refusal(`the ${what} is to be a name of at most 200 letters`);
  }
  return value;
}

/** A name that can be no path. */
function plainName(value: unknown): string {
  const name = text(value, 'name');
  if (/^[a-z0-9]+(?:-[a-z0-9]+)*$/.test(name)) return name;
  throw new Refusal(`${name} cannot be a name`, 'small letters, digits and hyphens only');
}

function isPrint(path: string, root: string): boolean {
  const whole = isAbsolute(path) ? path : join(root, path);
  return /\.pdf$/i.test(path) && whole.startsWith(join(root, 'print'));
}
