import { createInterface } from 'node:readline';
import type { GaugeAdvice, MadePair } from '../../gauges/index.ts';
import { Refusal } from '../../project/refusal.ts';
import { paint, visible } from '../../report/index.ts';
import { type Io, say, usesColor } from '../io.ts';
import type { ExitStatus } from '../run.ts';
import { exactLength, namedLength, type SizeFacts, sizeFacts } from '../size-facts.ts';
import { sizeText } from '../size-text.ts';

export interface SizeOptions {
  readonly json?: boolean;
  readonly swg?: 'imperial' | 'us-steel';
}

/** Fewer sizes than this are done before any preparation would pay. */
const many = 200;

/**
 * `gaugeleaf size`: each size on its own, in the order given; lines of standard input where none is
 * given. 1 where one of them is no size.
 */
export async function size(
  sizes: readonly string[],
  options: SizeOptions,
  io: Io,
): Promise<ExitStatus> {
  if (sizes.length === 0 && io.stdin.isTTY === true) {
    throw new Refusal('no size was given', 'for example: gaugeleaf size "No. 29 drill"');
  }
  const ink = paint(usesColor(io, io.stdout));
  let bad = false;
  let first = true;
  let count = 0;
  for await (const input of sizes.length > 0 ? sizes : lines(io)) {
    count += 1;
    if (count === many) io.expectLongWork?.();
    const answer = sizeFacts(input, options.swg ?? null);
    if (options.json === true) {
      io.stdout.write(
        `${answer.ok ? factsJson(input, answer.facts) : problemJson(input, answer.problem)}\n`,
      );
    } else if (answer.ok) {
      io.stdout.write(`${first ? '' : '\n'}${sizeText(answer.facts, ink)}`);
      first = false;
    } else {
      const { message, fix, candidates } = answer.problem;
      say(io, `gaugeleaf: ${visible(message)}`);
      if (fix !== null) say(io, `           ${visible(fix)}`);
      else if (candidates.length > 0) say(io, `           perhaps ${candidates.join(', or ')}`);
    }
    bad ||= !answer.ok;
  }
  return bad ? 1 : 0;
}

async function* lines(io: Io): AsyncGenerator<string> {
  for await (const line of createInterface({ input: io.stdin, crlfDelay: Infinity })) {
    const text = line.replace(/^\ufeff/, '').trim();
    if (text !== '') yield text;
  }
}

function problemJson(
  input: string,
  problem: { message: string; fix: string | null; candidates: readonly string[] },
): string {
  const { message, fix, candidates } = problem;
  return JSON.stringify({
    input,
    error: message,
    fix: fix ?? undefined,
    candidates: candidates.length > 0 ? candidates : undefined,
  });
}

function factsJson(input: string, facts: SizeFacts): string {
  const { statement, exact, low, high, neighbors, pair } = facts;
  return JSON.stringify({
    input,
    inch: exact?.inch ?? null,
    mm: exact?.mm ?? null,
    names: facts.names.map((gauge) => gauge.label),
    neighbors: {
      below: neighbors?.below ? namedLength(neighbors.below) : null,
      above: neighbors?.above ? namedLength(neighbors.above) : null,
    },
    dimension: statement.dimension,
    form: statement.form,
    low: low ?? undefined,
    high: high ?? undefined,
    go: pair?.go ? namedLength(pair.go) : undefined,
    'no-go': pair?.noGo ? namedLength(pair.noGo) : undefined,
    made: facts.made === null ? undefined : madeJson(facts.made),
    kit: facts.advice === null ? undefined : kitJson(facts.advice),
    also: facts.others.length > 0 ? facts.others : undefined,
    ambiguous: statement.ambiguous.length > 0 ? statement.ambiguous.map(namedLength) : undefined,
  });
}

function madeJson({ go, noGo }: MadePair): object {
  const ends = ({ low, high }: MadePair['go']) => ({
    low: exactLength(low),
    high: exactLength(high),
  });
  return { go: ends(go), 'no-go': ends(noGo) };
}

/** What of an ordinary kit measures it, nearest first; where nothing does, a stack or the nearest. */
function kitJson({ fits, pair, stack, nearest, text }: GaugeAdvice): object {
  const none = fits.length === 0;
  const side = (each: GaugeAdvice['nearest']['below']) => each && namedLength(each.gauge);
  return {
    text,
    fits: fits.map(({ gauge }) => gauge.label),
    go: pair?.go.gauge.label,
    'no-go': pair?.noGo.gauge.label,
    stack: stack
      ? {
          leaves: stack.leaves.map(({ gauge }) => gauge.label),
          ...exactLength(stack.mm),
          fits: stack.fits,
        }
      : undefined,
    nearest: none ? { below: side(nearest.below), above: side(nearest.above) } : undefined,
  };
}
