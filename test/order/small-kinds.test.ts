import fc from 'fast-check';
import { expect, test } from 'vitest';
import { buildKind } from '../../src/kinds/build.ts';
import type {
  KindData,
  NeedsData,
  OperationData,
  PartData,
  Reasons,
  StateData,
  StatesData,
} from '../../src/kinds/data.ts';
import type { Kind } from '../../src/kinds/model.ts';
import { proveOrder } from '../../src/order/index.ts';
import type { Operation, Sheet } from '../../src/sheet/model.ts';
import { runs } from '../suite/part.ts';
import { type Job, jobsCanBeDone, type RawKind } from './naive-oracle.ts';

/** Some work on a small unit: rules by the name of each operation, and what its steps mark. */
interface Small {
  readonly data: KindData;
  readonly jobs: readonly Job[];
}

const conditions = ['c0', 'c1', 'c2'];
const parts = ['p0', 'p1', 'p2'];
const stages = ['bench', 'before-start', 'running'] as const;

/** Something `chance` times out of ten, else null. */
const sometimes = <T>(arbitrary: fc.Arbitrary<T>, chance: number): fc.Arbitrary<T | null> =>
  fc.oneof({ weight: 10 - chance, arbitrary: fc.constant(null) }, { weight: chance, arbitrary });

/** None or one of some names; more often one, the higher `chance` of ten. */
const fewOf = (names: readonly string[], chance: number): fc.Arbitrary<readonly string[]> =>
  names.length === 0
    ? fc.constant([])
    : sometimes(fc.constantFrom(...names), chance).map((name) => (name === null ? [] : [name]));

const someStates = (chance: number): fc.Arbitrary<StatesData> =>
  fc
    .tuple(
      ...parts.map(() =>
        sometimes(fc.subarray(conditions, { minLength: 1, maxLength: 2 }), chance),
      ),
    )
    .map((found) =>
      Object.fromEntries(found.flatMap((any, i) => (any === null ? [] : [[`p${i}`, any]]))),
    );

/** The same states as needs, each with a reason. */
const needsOf = (states: StatesData): NeedsData =>
  Object.fromEntries(
    Object.entries(states).map(([part, is]) => [part, { is, because: 'so it is' }]),
  );

const reasonsFor = (names: readonly string[]): Reasons =>
  Object.fromEntries(names.map((name) => [name, 'so it is']));

const someNeeds = (chance: number): fc.Arbitrary<NeedsData> => someStates(chance).map(needsOf);

const aPart: fc.Arbitrary<PartData> = fc.record({
  label: fc.constant('part'),
  starts: fc.constant('c0'),
  home: fc.oneof(
    { weight: 3, arbitrary: fc.constant([]) },
    { weight: 1, arbitrary: fc.constant(['c0']) },
  ),
  conditions: fc.record({
    c0: fc.constant({}),
    c1: fc.record({ 'counts-as': fc.subarray(['c0']) }),
    c2: fc.constant({}),
  }),
});

/** What follows from the middle condition of a part, and what its last one shuts out. */
const aState: fc.Arbitrary<readonly StateData[]> = fc.tuple(
  someStates(1).map((states): StateData => ({ follows: needsOf(first(states)) })),
  someNeeds(1).map((bars): StateData => ({ bars })),
);

/** `leaves` names one condition a part. */
function first(states: StatesData): StatesData {
  return Object.fromEntries(Object.entries(states).map(([part, any]) => [part, any[0] ?? 'c0']));
}

const engine: PartData = {
  label: 'engine',
  starts: 'stopped',
  conditions: { stopped: {}, running: {} },
};

const started: StateData = {
  'starts-up': true,
  needs: { p0: { is: ['c0', 'c1'], because: 'so it is' } },
};

const aSmall = (least: number, most: number): fc.Arbitrary<Small> =>
  fc
    .integer({ min: least, max: most })
    .chain((count) => {
      const names = Array.from({ length: count }, (_, i) => `o${i}`);
      const operation = (i: number): fc.Arbitrary<OperationData> =>
        fc.record({
          label: fc.constant(`o${i}`),
          explain: fc.constant(''),
          stage: fc.oneof(
            { weight: 4, arbitrary: fc.constant('bench' as const) },
            { weight: 1, arbitrary: fc.constantFrom(...stages) },
          ),
          settings: fc.constant([`o${i}`]),
          needs: someNeeds(1),
          leaves: someStates(1).map(first),
          disturbs: fewOf(
            names.filter((_, other) => other !== i),
            2,
          ).map(reasonsFor),
        });
      const job = (i: number): fc.Arbitrary<Job> =>
        fc
          .record({
            marks: fc.array(
              fc.oneof(
                {
                  weight: 6,
                  arbitrary: fc.record({
                    part: fc.constantFrom(...parts),
                    to: fc.constantFrom(...conditions),
                  }),
                },
                {
                  weight: 1,
                  arbitrary: fc.record({
                    part: fc.constant('engine'),
                    to: fc.constantFrom('running', 'stopped'),
                  }),
                },
              ),
              { maxLength: 2 },
            ),
            again: sometimes(fc.constantFrom(...names), 1),
          })
          .map(({ marks, again }) => ({
            name: `o${i}`,
            steps: [
              {
                changes: marks.map((mark) => ({ ...mark, how: 'mark' as const, verb: null })),
                values: [],
              },
              { changes: [], values: [`o${i}`, ...(again === null ? [] : [again])] },
            ],
          }));
      return fc.tuple(
        fc.tuple(...names.map((_, i) => operation(i))),
        fc.tuple(...names.map((_, i) => job(i))),
        fc.tuple(aPart, aPart, aPart),
        fc.tuple(aState, aState, aState),
      );
    })
    .map(([operations, jobs, own, states]) => ({
      jobs,
      data: {
        'gaugeleaf-kind': 1,
        kind: 'small',
        title: 'Small',
        settings: Object.fromEntries(
          operations.map((_, i) => [
            `o${i}`,
            { label: `o${i}`, explain: '', dimensions: ['length'] },
          ]),
        ),
        operations: Object.fromEntries(operations.map((each, i) => [`o${i}`, each])),
        parts: { ...Object.fromEntries(own.map((part, i) => [`p${i}`, part])), engine },
        states: {
          ...Object.fromEntries(
            states.flatMap(([follows = {}, bars = {}], i) => [
              [`p${i} c1`, follows],
              [`p${i} c2`, bars],
            ]),
          ),
          'engine running': started,
        },
      },
    }));

/** The sheet that has these jobs in this order, made without any Markdown: 100 characters a step. */
function sheetOf(jobs: readonly Job[], kind: Kind): Sheet {
  const operations: Operation[] = [];
  const states: unknown[] = [];
  const values: unknown[] = [];
  let at = 0;
  for (const [index, { name, steps }] of jobs.entries()) {
    const start = at;
    at += 100;
    const own = steps.map(({ changes, values: printed }, number) => {
      const span = { start: at, end: at + 100 };
      changes.forEach(({ part, to }, i) => {
        const place = { start: at + i, end: at + i + 1 };
        states.push({ text: `${part} ${to}`, span: place, operation: index });
      });
      printed.forEach((value, i) => {
        const place = { start: at + 50 + i, end: at + 51 + i };
        values.push({ name: value, id: value, setting: null, span: place, operation: index });
      });
      at += 100;
      return { span, number: number + 1 };
    });
    operations.push({
      index,
      heading: { value: name ?? '', span: { start, end: start + 10 }, source: name ?? '' },
      id: null,
      known: kind.operations.get(name ?? '') ?? null,
      steps: own,
      span: { start, end: at },
    });
  }
  return {
    text: ' '.repeat(at),
    operations,
    states,
    values,
    work: [],
    settings: new Map(),
    unit: { features: [] },
  } as unknown as Sheet;
}

function* orders<T>(of: readonly T[]): Generator<readonly T[]> {
  if (of.length <= 1) yield of;
  for (let i = 0; i < of.length; i++) {
    const rest = [...of.slice(0, i), ...of.slice(i + 1)];
    for (const order of orders(rest)) yield [of[i] as T, ...order];
  }
}

const seen = { kinds: 0, orders: 0, right: 0 };

function agreeOnAllOrders({ data, jobs }: Small): void {
  const kind: Kind = buildKind(data);
  seen.kinds++;
  for (const order of orders(jobs)) {
    const sheet = sheetOf(order, kind);
    const { moves, faults } = proveOrder(sheet, kind);
    const isRight = jobsCanBeDone(order, data as unknown as RawKind);
    seen.orders++;
    if (isRight) seen.right++;
    const weights = [...faults, ...moves.flatMap(({ mends }) => mends)].map(({ weight }) => weight);
    const agrees = isRight
      ? !weights.includes('error')
      : weights.some((weight) => weight !== 'note');
    if (!agrees)
      expect({ order: order.map(({ name }) => name), isRight, moves, faults }).toBe('agreed');
  }
}

// A fixed seed: the same kinds on every machine.
test.each([
  [2, 4, 150, 11],
  [5, 5, 40, 12],
  [6, 6, 12, 13],
  [7, 7, 3, 17],
])(
  'of %i to %i operations, check and brute force agree on every order',
  (least, most, numRuns, seed) => {
    fc.assert(fc.property(aSmall(least, most), agreeOnAllOrders), { numRuns: runs(numRuns), seed });
    console.log(`${seen.kinds} small kinds, ${seen.orders} orders (${seen.right} can be done)`);
  },
  240_000,
);
