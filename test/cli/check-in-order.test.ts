import { EventEmitter } from 'node:events';
import { beforeAll, describe, expect, test } from 'vitest';
import { helpCheck } from '../../src/cli/check-helper.ts';
import { checkInOrder } from '../../src/cli/check-in-order.ts';
import type { Helper, Io } from '../../src/cli/io.ts';
import { Projects, partFolder, targetsOf } from '../../src/project/index.ts';
import { cleanSheet, folderWith } from '../project/folder.ts';

/** A few more than are worth help. */
const count = 52;

function folder(): string {
  const sheets = Array.from({ length: count }, (_, index) => {
    const id = `s${String(index).padStart(3, '0')}`;
    const text = cleanSheet(id);
    return [`sheets/${id}.md`, index % 7 === 0 ? text.replace('13/64 in #', '13/46 in #') : text];
  });
  return folderWith({
    'edition.yaml': 'gaugeleaf-edition: 1\ntitle: T\n',
    ...Object.fromEntries(sheets),
  });
}

/** Stands for a thread: does its work in this one, at the next turn, unless `fault` says otherwise. */
class Stand extends EventEmitter {
  readonly #heard = new EventEmitter();
  isEnded = false;

  constructor(task: unknown, fault: (batches: number) => boolean) {
    super();
    let batches = 0;
    const port = {
      on: (_: 'message', listener: (batch: never) => void) =>
        this.#heard.on('message', listener as (batch: unknown) => void),
      postMessage: (word: unknown) => {
        if (!this.isEnded) this.emit('message', structuredClone(word));
      },
    };
    this.#heard.on('message', () => {
      batches += 1;
    });
    setImmediate(() => {
      if (fault(0)) this.#die();
      else helpCheck(port, task as never);
    });
    this.postMessage = (batch) => {
      setImmediate(() => {
        if (fault(batches + 1)) this.#die();
        else this.#heard.emit('message', batch);
      });
    };
  }

  postMessage: (batch: unknown) => void;

  #die(): void {
    this.isEnded = true;
    this.emit('error', new Error('out of memory'));
    this.emit('exit', 1);
  }

  async terminate(): Promise<void> {
    this.isEnded = true;
    this.emit('exit', 1);
  }
}

interface Around {
  readonly helpers?: string;
  readonly start?: (task: unknown, index: number) => Stand;
  readonly kept?: string;
}

async function outcome(root: string, { helpers = '2', start, kept }: Around = {}) {
  const started: Stand[] = [];
  const silent = { write: () => true };
  const io = {
    stdout: silent,
    stderr: silent,
    env: { GAUGELEAF_HELPERS: helpers },
    cwd: root,
    ...(start === undefined
      ? {}
      : {
          startHelper: async (task: unknown) => {
            const helper = start(task, started.length);
            started.push(helper);
            return helper as unknown as Helper;
          },
        }),
  } as unknown as Io;
  const { sheets } = targetsOf([], new Projects(root), root);
  const keeping = kept === undefined ? null : { store: partFolder(kept), folder: kept };
  const found = [];
  let most = 0;
  const progress = (done: number) => {
    most = Math.max(most, done);
  };
  for await (const checked of checkInOrder(sheets, { keeping, kept: null }, io, progress))
    found.push(checked);
  return { found, started, most };
}

const steady = () => false;

let alone: readonly unknown[] = [];

beforeAll(async () => {
  alone = (await outcome(folder())).found;
});

describe('many sheets', () => {
  test('are told in their order, as one after the other', async () => {
    const root = folder();
    const helped = await outcome(root, { start: (task) => new Stand(task, steady) });
    expect(alone).toHaveLength(count);
    expect(helped.found).toEqual(alone);
    expect(helped.started).toHaveLength(2);
    // None is left behind.
    expect(helped.started.every(({ isEnded }) => isEnded)).toBe(true);
    expect(helped.most).toBeLessThanOrEqual(count);
  });

  test.each<[string, (task: unknown, index: number) => Stand]>([
    [
      'cannot be started',
      () => {
        throw new Error('no thread to be had');
      },
    ],
    ['ends before it is ready', (task) => new Stand(task, (batches) => batches === 0)],
    ['ends in its second batch', (task) => new Stand(task, (batches) => batches === 2)],
    [
      'ends where the other goes on',
      (task, index) => new Stand(task, (batches) => index === 0 && batches === 3),
    ],
  ])('are told the same where a helper %s', async (_, start) => {
    const root = folder();
    expect((await outcome(root, { start })).found).toEqual(alone);
  });

  test('call no helper where there are few that nobody knows', async () => {
    const root = folder();
    const kept = folderWith();
    const start = (task: unknown) => new Stand(task, steady);
    const first = await outcome(root, { start, kept });
    const again = await outcome(root, { start, kept });
    expect(first.started).toHaveLength(2);
    expect(again.started).toHaveLength(0);
    expect(again.found).toEqual(first.found);
  });

  test('call none where the machine has one processor', async () => {
    const root = folder();
    const start = (task: unknown) => new Stand(task, steady);
    expect((await outcome(root, { start, helpers: '1' })).started).toHaveLength(0);
  });
});
