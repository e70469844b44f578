#!/usr/bin/env node
import { writeSync } from 'node:fs';
import nodeModule from 'node:module';
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { causeInWords } from '../project/index.ts';
import { cachedCore, keepCache } from './cached-code.ts';
import type { Io, Output } from './io.ts';

/** What the program is called with as a thread of its own; in a thread it has no other arguments. */
const helperWord = '--check-helper';

/** Of a helper's heap what is new, in MiB: a quarter of that costs 7 % more time, twice as much saves nothing. */
const youngMb = 64;

const argv = process.argv.slice(2);
const helps = argv[0] === helperWord;
const checks = argv[0] === 'check' || helps;

// A command that is over in a fraction of a second pays for V8's optimizing compiler and never gets
// it back: a quarter of the whole time of checking one sheet. Long work switches it on again.
if (!helps) {
  setFlagsFromString('--no-opt');
  // What is new on the heap starts with 1 MiB and doubles when it is full and much of it is still in use:
  // a sheet is cleared away ten times over. Growing in one go saves a twentieth of the time of one sheet.
  if (process.versions.v8.startsWith('11.')) setFlagsFromString('--semi-space-growth-factor=16');
}

/**
 * Ends where what is written cannot be taken: a full disk, a reader that closed the pipe. That is no fault of the
 * program's, and half an output no success, whoever reads it.
 */
function giveUp(error: unknown): never {
  try {
    writeSync(2, `gaugeleaf: what it writes cannot be taken: ${causeInWords(error)}\n`);
  } catch {
    // Then nobody hears it, and the status has to do.
  }
  process.exit(2);
}

for (const stream of helps ? [] : [process.stdout, process.stderr]) stream.on('error', giveUp);

/** A stream whose faults end the program; those of a file are thrown at the one who writes. */
function ending(stream: NodeJS.WriteStream): Output {
  return {
    write(chunk) {
      try {
        return stream.write(chunk);
      } catch (error) {
        return giveUp(error);
      }
    },
    isTTY: stream.isTTY,
    get columns() {
      return stream.columns;
    },
  };
}

// Nobody listens to signals while something is worked out, so that the system ends the program at once, be
// it in the midst of a long reckoning: a listener is called only between two pieces of work. What is left
// is nothing (a file is whole or not there), a file `.partial` that the next run takes away, and the folder of a
// browser, which goes by itself (`src/project/browser/lodging.ts`). Only who waits for the user listens.
const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

const io: Io = {
  stdout: ending(process.stdout),
  stderr: ending(process.stderr),
  // Few commands read anything from it, and to open it costs.
  get stdin() {
    return process.stdin;
  },
  env: process.env,
  cwd: process.cwd(),
  today: () => {
    const now = new Date();
    const two = (number: number) => String(number).padStart(2, '0');
    return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  },
  untilInterrupted: () => {
    let end: () => void = () => {};
    const interrupted = new Promise<void>((resolve) => {
      end = resolve;
    });
    for (const signal of signals) process.on(signal, end);
    return {
      interrupted,
      stop() {
        for (const signal of signals) process.off(signal, end);
      },
    };
  },
  expectLongWork: () => {
    setFlagsFromString('--opt');
    // Left to itself V8 optimizes whatever is called often for a moment: of the processor's time for a
    // thousand sheets a third, and in each helper anew. Node 22 and later have another way of choosing, and do
    // not know the flag.
    if (process.versions.v8.startsWith('11.')) setFlagsFromString('--interrupt-budget=700000');
  },
  async startHelper(task) {
    const { Worker } = await import('node:worker_threads');
    return new Worker(new URL(import.meta.url), {
      argv: [helperWord],
      execArgv: [],
      workerData: task,
      resourceLimits: { maxYoungGenerationSizeMb: youngMb },
    });
  },
  remembers: true,
};

const core = checks ? cachedCore() : null;
if (core === null) await keepModules();
const checking = checks ? (core ?? (await import('./quick-check.ts'))) : null;
const quick = helps ? null : (checking?.quickCheck(argv, io) ?? null);
const threads = helps ? await import('node:worker_threads') : null;
if (threads?.parentPort && checking !== null) {
  checking.helpCheck(threads.parentPort, threads.workerData);
} else if (quick !== null) {
  process.exitCode = await quick;
  if (process.env.GAUGELEAF_KEEP_CACHE === '1') await keepCache();
} else {
  const { run } = await import('./run.ts');
  process.exitCode = await run(argv, io);
}

/**
 * Lets Node keep what it compiles of the modules, from Node 22 on; earlier ones have nothing of the
 * sort. In the user's own folder: Node's usual one is open to everybody on the machine.
 */
async function keepModules(): Promise<void> {
  const { enableCompileCache } = nodeModule as {
    enableCompileCache?: (folder: string) => unknown;
  };
  if (enableCompileCache === undefined) return;
  const { userCache } = await import('../project/index.ts');
  enableCompileCache(join(userCache(process.env, process.platform), 'modules'));
}
