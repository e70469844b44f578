import { isBlank } from './blank.ts';
import { defineCheck } from './define.ts';
import { keySpanBefore } from './key-span.ts';
import { nearest, ofTheKind } from './vocabulary.ts';

/** `throtle-bore: 1-7/16 in`: a size of the unit under a name that its kind does not know. */
export default defineCheck({
  id: 'unit-size-unknown',
  severity: 'warning',
  group: 'reading',
  summary: 'A size or thread under `unit:` has a name that its kind does not know.',
  explain:
    'Of a size whose name nobody knows nothing is worked, and every proof that would have used it is ' +
    'silent. A size that the unit has and its kind does not know is declared by its name under ' +
    '`own-sizes:`; it is then printed, and read as any size is.',
  messages: {
    near: {
      message: '`{key}` is no size that a {kind} has, and so nothing is worked from {text}',
      fix: 'write `{near}`, if that is meant; otherwise declare it: `own-sizes: [{key}]`',
      suggest: [{ write: '{near}' }, { under: ['unit', 'own-sizes'], as: '{key}', item: true }],
    },
    unknown: {
      message: '`{key}` is no size that a {kind} has, and so nothing is worked from {text}',
      fix: 'declare it under `unit:`, if it is the unit’s own: `own-sizes: [{key}]`; else write a name of the kind {of}',
      suggest: [{ under: ['unit', 'own-sizes'], as: '{key}', item: true }],
    },
    idle: {
      message: '`own-sizes` lists `{key}`, and no such size is stated',
      fix: 'state the size under `unit:`, or take its name out',
      suggest: [{ takeOut: 'entry' }],
    },
  },
  run(sheet, _context, report) {
    const { kind } = sheet;
    if (kind === null) return;
    const { sizes, threads, ownSizes } = sheet.unit;
    const own = new Set(ownSizes.map(({ value }) => value));
    const names = [...kind.dimensionsOfUnit.keys(), ...kind.threadsOfUnit];
    const stated = [
      ...[...sizes].map(([key, { text, span }]) => ({ key, text, span })),
      ...[...threads].map(([key, { value, span }]) => ({ key, text: value, span })),
    ];
    for (const { key, text, span } of stated) {
      if (own.has(key) || names.includes(key) || isBlank(text)) continue;
      const near = nearest(key, names);
      report({
        message: near === null ? 'unknown' : 'near',
        span: keySpanBefore(sheet.text, key, span),
        values: {
          key,
          text,
          kind: kind.title.toLowerCase(),
          near: near ?? '',
          of:
            near === null
              ? ofTheKind(
                  key,
                  names.map((name) => ({ name })),
                  kind,
                )
              : '',
        },
        subject: key,
        // Nothing like it is known: it may well be what it says.
        ...(near === null ? { severity: 'note' as const } : {}),
      });
    }
    for (const { value: key, span } of ownSizes) {
      if (stated.some((each) => each.key === key)) continue;
      report({ message: 'idle', span, values: { key }, subject: key });
    }
  },
  examples: [
    {
      name: 'a bore with a letter left out',
      sheet: { front: unitOf('throtle-bore: 1-7/16 in') },
      expect: [
        {
          at: 'throtle-bore',
          message:
            '`throtle-bore` is no size that a carburetor has, and so nothing is worked from 1-7/16 in',
          fix: 'write `throttle-bore`, if that is meant; otherwise declare it: `own-sizes: [throtle-bore]`',
        },
      ],
    },
    {
      name: 'a thread under another name',
      sheet: { front: unitOf('idle-neddle-thread: 10-32 UNF') },
      expect: [
        {
          at: 'idle-neddle-thread',
          message:
            '`idle-neddle-thread` is no size that a carburetor has, and so nothing is worked from 10-32 UNF',
          fix: 'write `idle-needle-thread`, if that is meant; otherwise declare it: `own-sizes: [idle-neddle-thread]`',
        },
      ],
    },
    {
      name: 'a size that no kind knows',
      sheet: { front: unitOf('stove-pipe-bore: 1/4 in') },
      expect: [
        {
          at: 'stove-pipe-bore',
          message:
            '`stove-pipe-bore` is no size that a carburetor has, and so nothing is worked from 1/4 in',
          fix: 'declare it under `unit:`, if it is the unit’s own: `own-sizes: [stove-pipe-bore]`; else write a name of the kind (perhaps `pump-bore`, `secondary-bore` or `throttle-bore`; `gaugeleaf kind carburetor` lists all)',
          severity: 'note',
        },
      ],
    },
    {
      name: 'a name without its size',
      sheet: { front: unitOf('own-sizes: [stove-pipe-bore]') },
      expect: [
        {
          at: 'stove-pipe-bore',
          message: '`own-sizes` lists `stove-pipe-bore`, and no such size is stated',
          fix: 'state the size under `unit:`, or take its name out',
        },
      ],
    },
    {
      name: 'a size of the kind and one that is declared',
      sheet: {
        front: unitOf(
          'throttle-bore: 1-7/16 in\n  own-sizes: [stove-pipe-bore]\n  stove-pipe-bore: 1/4 in',
        ),
      },
      expect: [],
    },
  ],
});

function unitOf(line: string): string {
  return `unit:\n  kind: carburetor\n  maker: Orlo\n  model: F27\n  features: [single-barrel, downdraft, pump]\n  ${line}`;
}
