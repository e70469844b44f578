import { basename } from 'node:path';
import { createInterface } from 'node:readline/promises';
import { kindNamed, levelName } from '../kinds/index.ts';
import type { Kind } from '../kinds/model.ts';
import type { Project } from '../project/project.ts';
import { Refusal } from '../project/refusal.ts';
import { nearestName } from '../text/nearest-name.ts';
import type { Io } from './io.ts';

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
  /** A folder to make an example project in; only a date stands beside it. */
  readonly club?: string;
  readonly program?: string;
}

export interface DraftAnswers {
  readonly kind: Kind;
  readonly maker: string;
  readonly model: string;
  readonly features: readonly string[];
}

/**
 * The kind that was named. Fails with `Refusal`, listing those there are, or saying that the file of
 * this one cannot be used.
 */
export function kindAnswer(
  text: string,
  { kinds, kindFaults }: Pick<Project, 'kinds' | 'kindFaults'>,
): Kind {
  const kind = kindNamed(text, kinds);
  if (kind !== null) return kind;
  const stem = (file: string) => basename(file).replace(/\.ya?ml$/i, '');
  const faulty = kindFaults.find(({ file }) => levelName(stem(file)) === levelName(text));
  if (faulty !== undefined) {
    throw new Refusal(
      `${faulty.file} describes the kind ${text.trim()}, and cannot be used as it is`,
      `gaugeleaf check ${faulty.file} says what is wrong with it`,
    );
  }
  const near = nearestName(levelName(text), kinds.keys());
  const all = [...kinds.keys()].join(', ');
  throw new Refusal(
    `there is no kind of unit called ${text.trim() || 'nothing at all'}`,
    near === null ? `the kinds are: ${all}` : `perhaps ${near} was meant; the kinds are: ${all}`,
  );
}

/**
 * The features of a list parted by commas, by their names in the kind, each once and in the kind's
 * order. Fails with `Refusal` for an unknown one, for two that cannot stand together and where one
 * of a set is needed.
 */
export function featuresAnswer(text: string, kind: Kind): readonly string[] {
  const chosen = new Set<string>();
  for (const part of text.split(',')) {
    const word = part.trim();
    if (word === '') continue;
    const feature = kind.featureNamed(word);
    if (feature === null) {
      const near = nearestName(word, kind.features.keys());
      throw new Refusal(
        `a ${kind.name} has no feature called ${word}`,
        near === null
          ? `the features are: ${[...kind.features.keys()].join(', ')}`
          : `perhaps ${near} was meant`,
      );
    }
    chosen.add(feature.name);
  }
  for (const name of chosen) {
    const other = kind.features.get(name)?.excludes.find((each) => chosen.has(each));
    if (other !== undefined) {
      throw new Refusal(`a ${kind.name} cannot be ${name} and ${other} at once`, 'leave one out');
    }
  }
  for (const set of kind.oneOf) {
    if (!set.some((name) => chosen.has(name))) {
      throw new Refusal(`one of these features is needed: ${set.join(', ')}`);
    }
  }
  return [...kind.features.keys()].filter((name) => chosen.has(name));
}

/** A name that has to be said. Fails with `Refusal` where it is empty or has line ends. */
export function nameAnswer(text: string, what: string): string {
  const name = text.trim();
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are refused here.
  if (name === '' || name.length > 100 || /[\u0000-\u001f\u007f]/.test(name)) {
    throw new Refusal(`the ${what} has to be a name of at most 100 letters on one line`);
  }
  return name;
}

/**
 * The one kind there is, or the one whose features the most of the given ones are; undefined where
 * the features fit several kinds alike, or none.
 */
function kindOfFeatures(
  features: string | undefined,
  kinds: ReadonlyMap<string, Kind>,
): string | undefined {
  if (kinds.size === 1) return [...kinds.keys()][0];
  const words = (features ?? '').split(',').map((word) => word.trim());
  const known = [...kinds.values()].map((kind) => ({
    name: kind.name,
    count: words.filter((word) => word !== '' && kind.featureNamed(word) !== null).length,
  }));
  const most = Math.max(...known.map(({ count }) => count));
  const best = known.filter(({ count }) => count === most);
  return most > 0 && best.length === 1 ? best[0]?.name : undefined;
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
  const talk = asks
    ? createInterface({
        input: io.stdin,
        output: io.stderr as NodeJS.WritableStream,
        terminal: io.stderr.isTTY === true,
      })
    : null;
  // The end of the input, or an interrupt, would otherwise leave the question open for ever.
  const gone = new AbortController();
  talk?.once('close', () => gone.abort());
  try {
    const ask = async <T>(
      given: string | undefined,
      question: string,
      read: (text: string) => T,
    ) => {
      if (given !== undefined || talk === null) return read(given ?? '');
      for (;;) {
        try {
          return read(await talk.question(question, { signal: gone.signal }));
        } catch (error) {
          if (gone.signal.aborted) throw new Refusal('no answer was given; nothing was written');
          if (!(error instanceof Refusal)) throw error;
          io.stderr.write(`${error.message}${error.hint === null ? '' : `; ${error.hint}`}\n`);
        }
      }
    };
    const known = [...kinds.keys()].join(', ');
    const kind = await ask(only, `Kind of unit (${known}): `, (text) => kindAnswer(text, project));
    const maker = await ask(options.maker, 'Maker: ', (text) => nameAnswer(text, 'maker'));
    const model = await ask(options.model, 'Model: ', (text) => nameAnswer(text, 'model'));
    if (talk !== null && options.features === undefined) io.stderr.write(featureList(kind));
    const features = await ask(options.features, 'Features, parted by commas: ', (text) =>
      featuresAnswer(text, kind),
    );
    return { kind, maker, model, features };
  } finally {
    talk?.close();
  }
}

function featureList(kind: Kind): string {
  const width = Math.max(...[...kind.features.keys()].map((name) => name.length));
  const lines = [...kind.features.values()].map(
    ({ name, explain }) => `  ${name.padEnd(width)}  ${explain}`,
  );
  return `${lines.join('\n')}\n`;
}
