import fc from 'fast-check';

/**
 * One change to a file: which, where (0 the start, 1 the end), how far, and which of what is put in.
 * Plain data, so that a failing case is made small and can be written down as it is.
 */
export interface Change {
  readonly name: keyof typeof changes;
  readonly at: number;
  readonly to: number;
  readonly pick: number;
}

/** Scalars, keys and whole entries that YAML reads as something else than it looks like. */
const yamlWords = [
  'null',
  '~',
  'true',
  'no',
  '[]',
  '{}',
  '""',
  "'",
  '"',
  '|',
  '>-',
  '- x',
  '? x',
  '<<: *a',
  '&a x',
  '*a',
  '!!js/function x',
  '!!binary aaa',
  '!x y',
  '---',
  '...',
  '%YAML 1.2',
  '.inf',
  '.nan',
  '0x1F',
  '1e400',
  '-0',
  '9'.repeat(400),
  '2026-13-45',
  '2026-02-30',
  '{ value: 1 in, value: 2 in }',
  '[[[[[[[[[[[[x]]]]]]]]]]]]',
  'x: y: z',
  '__proto__: {}',
  'constructor: x',
  'toString',
  'a: &b [*b]',
  '# only a comment',
  '\tx: 1',
];

/** Sizes and words that a notation could take for something else, or divide by. */
const sizes = [
  '1/0 in',
  '0/0 in',
  '0 in',
  '-1 in',
  '1e9999 in',
  '٣/٦٤ in',
  '½ in',
  '13⁄64 in',
  '13∕64 in',
  '１ in',
  '1/64/64 in',
  '1 in..',
  '± in',
  '5 ± 5 ± 5 in',
  '1–2–3 in',
  'No. 0 drill',
  'No. 99 drill',
  'No. -1 drill',
  '#',
  'drill',
  '0.0000000000000000001 in',
  '123456789012345678901234567890 mm',
  '1 in or 2 mm and 3 ft',
  'turns out',
  '∞ in',
  '1,000,0 in',
  '1.2.3 mm',
  '−0 in',
  '1 in (2 in (3 in (4 in)))',
  '360° 61′ 61″',
  '0 rpm',
  '1/3 turns',
];

/** Marks and structures of Markdown that are open, crossed, or nested. */
const markdown = [
  ':value[]',
  ':value[x',
  ':value[float-level]{a=b c',
  ':state[]',
  ':state[cover on',
  '::value[x]',
  ':::warning',
  ':::',
  ':::danger{hazard=gasoline-vapor}',
  '::::',
  ':work-rule[x]',
  '<script>x</script>',
  '<!--',
  '-->',
  '<b',
  '&#0;',
  '&#x202e;',
  '&bogus;',
  '![a](../../x)',
  '![](x.svg)',
  '[a]: x',
  '[^1]',
  '[^1]: [^1]',
  '# ',
  '###### x',
  '## Float level',
  '| a | b |\n|---|',
  '```',
  '~~~',
  '> > > > x',
  '- - - x',
  '1) x\n99999999999. y',
  '*a **b _c',
  '\\',
  '  \n',
  '$$x$$',
  '***',
  '===',
  '---',
];

/** What no terminal, page or table should be given raw, and what is no letter at all. */
const characters = [
  '\0',
  '\u0007',
  '\u001b[2J',
  '\u009b31m',
  '\u202e',
  '\u2066',
  '\ufeff',
  '\u2028',
  '\u2029',
  '\u0085',
  '\r',
  '\r\n',
  '\u00a0',
  '\u200b',
  '\u00ad',
  '\u0301'.repeat(50),
  '\ud800',
  '\udfff',
  '\ufffe',
  '\u{1f600}',
  '=1+1',
  '@x',
  '+cmd|',
  ';',
  ',',
  '"',
  "'",
  '{{x}}',
  '{{{x}}}',
  '{{#each x}}',
  '%{x}',
  '%s',
  '%00',
  '../',
  '..\\',
  'C:\\x',
  '/etc/passwd',
  'file:///x',
  'javascript:x',
  'x'.repeat(5000),
];

const spliced = (text: string, from: number, to: number, put: string) =>
  text.slice(0, from) + put + text.slice(to);

function place(text: string, at: number): number {
  return Math.min(text.length, Math.floor(at * (text.length + 1)));
}

function put(list: readonly string[]) {
  return (text: string, { at, pick }: Change) => {
    const where = place(text, at);
    return spliced(text, where, where, list[pick % list.length] ?? '');
  };
}

/** Puts in at the start of a line, with its indent: where YAML and Markdown look for something. */
function putLine(list: readonly string[]) {
  return (text: string, { at, pick }: Change) => {
    const lines = text.split('\n');
    const where = Math.min(lines.length - 1, Math.floor(at * lines.length));
    const indent = /^\s*/.exec(lines[where] ?? '')?.[0] ?? '';
    lines.splice(where, 0, `${indent}${list[pick % list.length] ?? ''}`);
    return lines.join('\n');
  };
}

function onLines(change: (lines: string[], from: number, to: number, pick: number) => void) {
  return (text: string, { at, to, pick }: Change) => {
    const lines = text.split('\n');
    const which = (share: number) => Math.min(lines.length - 1, Math.floor(share * lines.length));
    change(lines, which(at), which(to), pick);
    return lines.join('\n');
  };
}

/** Replaces what stands behind the colon of the next entry. */
function insteadOf(list: readonly string[]) {
  return (text: string, { at, pick }: Change) => {
    const found = /[\w-]+:[ \t]+([^\n{},\]]+)/g;
    found.lastIndex = place(text, at);
    const match = found.exec(text);
    const value = match?.[1];
    if (!match || value === undefined) return text;
    const start = match.index + match[0].length - value.length;
    return spliced(text, start, start + value.length, list[pick % list.length] ?? '');
  };
}

const changes = {
  yamlWord: put(yamlWords),
  yamlLine: putLine(yamlWords),
  yamlValue: insteadOf([...yamlWords, ...sizes, ...characters]),
  size: put(sizes),
  sizeValue: insteadOf(sizes),
  markdown: put(markdown),
  markdownLine: putLine(markdown),
  character: put(characters),
  characterValue: insteadOf(characters),
  digit: (text: string, { at, pick }: Change) => {
    const found = /\d/g;
    found.lastIndex = place(text, at);
    const match = found.exec(text);
    return match ? spliced(text, match.index, match.index + 1, String(pick % 10)) : text;
  },
  letter: (text: string, { at, pick }: Change) => {
    const where = place(text, at);
    return spliced(text, where, where + 1, String.fromCharCode(32 + (pick % 95)));
  },
  remove: (text: string, { at, to, pick }: Change) => {
    const where = place(text, at);
    return spliced(text, where, where + 1 + Math.floor(to * (pick % 60)), '');
  },
  cutOff: (text: string, { at }: Change) => text.slice(0, place(text, at)),
  behead: (text: string, { at }: Change) => text.slice(place(text, at)),
  twice: (text: string, { at, to, pick }: Change) => {
    const [from, until] = [place(text, Math.min(at, to)), place(text, Math.max(at, to))];
    const piece = text.slice(from, Math.min(until, from + 4000));
    return spliced(text, until, until, piece.repeat(1 + (pick % 3)));
  },
  removeLine: onLines((lines, from) => lines.splice(from, 1)),
  removeLines: onLines((lines, from, _to, pick) => lines.splice(from, 1 + (pick % 12))),
  swapLines: onLines((lines, from, to) => {
    [lines[from], lines[to]] = [lines[to] ?? '', lines[from] ?? ''];
  }),
  moveLines: onLines((lines, from, to, pick) => {
    const moved = lines.splice(from, 1 + (pick % 8));
    lines.splice(Math.min(to, lines.length), 0, ...moved);
  }),
  indent: onLines((lines, from, _to, pick) => {
    const line = lines[from] ?? '';
    lines[from] = pick % 3 === 0 ? line.trimStart() : `${' '.repeat(1 + (pick % 4))}${line}`;
  }),
  many: onLines((lines, from, _to, pick) => {
    lines.splice(from, 0, ...Array<string>(20 + (pick % 300)).fill(lines[from] ?? ''));
  }),
  crlf: (text: string) => text.replaceAll('\n', '\r\n'),
  cr: (text: string) => text.replaceAll('\n', '\r'),
  upper: (text: string) => text.toUpperCase(),
};

/** The text after one change. */
export function changed(text: string, change: Change): string {
  return changes[change.name](text, change);
}

/** Anywhere alike: what is chosen else leans to both ends. */
const share = fc.noBias(fc.integer({ min: 0, max: 1_000_000 })).map((n) => n / 1_000_000);

/** One to four changes, one after the other; made smaller by leaving some out. */
export const someChanges: fc.Arbitrary<readonly Change[]> = fc.array(
  fc.record({
    name: fc.constantFrom(...(Object.keys(changes) as (keyof typeof changes)[])),
    at: share,
    to: share,
    pick: fc.nat(100_000),
  }),
  { minLength: 1, maxLength: 4 },
);
