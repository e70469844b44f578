import { chosenFeatures, chosenName, kindOfFeatures } from '../import/index.ts';
import type { Kind } from '../kinds/model.ts';
import { namedKind, type Project, Refusal } from '../project/index.ts';
import { chosen } from './chosen.ts';
import type { Io } from './io.ts';
import { type Ask, talking } from './talk.ts';

/** What `draft` was told on the command line; what is missing is asked for on a terminal. */
export interface DraftOptions {
  readonly kind?: string;
  readonly maker?: string;
  readonly model?: string;
  readonly features?: string;
  readonly date?: string;
  readonly out?: string;
  /** A list of units to draft sheets from; what follows belongs to it. */
  readonly from?: string;
  /** Where the mapping of the list lies; beside the list unless it is said. */
  readonly mapping?: string;
  /** Goes on with the mapping that was proposed. */
  readonly yes?: boolean;
  readonly dryRun?: boolean;
  /** A folder to make an example project in; a title and a date stand beside it. */
  readonly club?: string;
  readonly program?: string;
  /** Of a new folder: the edition and example sheets alone. */
  readonly plain?: boolean;
  /** A sheet that the new one is a variant of; a title and a name stand beside it. */
  readonly basedOn?: string;
  /** The name of a kind of the project's own; a title stands beside it. */
  readonly newKind?: string;
  readonly title?: string;
}

export interface DraftAnswers {
  readonly kind: Kind;
  readonly maker: string;
  readonly model: string;
  readonly features: readonly string[];
}

/**
 * Everything a draft needs: from the options, and on a terminal by asking for the rest, again where
 * an answer will not do. Fails with `Refusal` where something is missing and nobody can be asked.
 */
export async function draftAnswers(
  options: DraftOptions,
  project: Pick<Project, 'kinds' | 'kindFaults'>,
  io: Io,
): Promise<DraftAnswers> {
  const { kinds } = project;
  const only = options.kind ?? kindOfFeatures(options.features, kinds);
  const given = { ...options, kind: only };
  const missing = (['kind', 'maker', 'model', 'features'] as const).filter(
    (key) => given[key] === undefined,
  );
  const asks = io.stdin.isTTY === true && missing.length > 0;
  if (!asks && missing.length > 0) {
    const left = missing.map((key) => `--${key}`).join(', ');
    throw new Refusal(
      `a new sheet needs ${left}`,
      'for example: gaugeleaf draft --kind carburetor --maker Orlo --model T71 --features two-barrel,downdraft,pump',
    );
  }
  const answers = async (talk: Ask | null): Promise<DraftAnswers> => {
    const ask: <T>(
      given: string | undefined,
      question: string,
      read: (text: string) => T,
    ) => Promise<T> = async (given, question, read) =>
      given !== undefined || talk === null ? read(given ?? '') : talk(question, read);
    const known = [...kinds.keys()].join(', ');
    const kind = await ask(only, `Kind of unit (${known}): `, (text) => namedKind(text, project));
    const maker = await ask(options.maker, 'Maker: ', (text) => chosen(chosenName(text, 'maker')));
    const model = await ask(options.model, 'Model: ', (text) => chosen(chosenName(text, 'model')));
    if (talk !== null && options.features === undefined) io.stderr.write(featureList(kind));
    const features = await ask(options.features, 'Features, parted by commas: ', (text) =>
      chosen(chosenFeatures(text, kind)),
    );
    return { kind, maker, model, features };
  };
  return asks ? talking(io, answers) : answers(null);
}

function featureList(kind: Kind): string {
  const width = Math.max(...[...kind.features.keys()].map((name) => name.length));
  const lines = [...kind.features.values()].map(
    ({ name, explain }) => `  ${name.padEnd(width)}  ${explain}`,
  );
  return `${lines.join('\n')}\n`;
}
