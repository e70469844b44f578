import { createInterface } from 'node:readline';
import { sizeFacts } from '../../gauges/index.ts';
import { Refusal } from '../../project/index.ts';
import type { WireGauge } from '../../quantity/index.ts';
import { paint, sizeJson, sizeText, unreadSizeJson } from '../../report/index.ts';
import { visible } from '../../text/index.ts';
import { type Io, say, usesColor } from '../io.ts';
import type { ExitStatus } from '../run.ts';

export interface SizeOptions {
  readonly json?: boolean;
  readonly swg?: WireGauge;
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
        `${answer.ok ? sizeJson(input, answer.facts) : unreadSizeJson(input, answer.problem)}\n`,
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
