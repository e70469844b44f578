/** Numbers from 0 up to 1, the same for the same seed (mulberry32, public domain). */
function dice(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

type Alter = (text: string, roll: () => number) => string;

function pick<T>(list: readonly T[], roll: () => number): T | undefined {
  return list[Math.floor(roll() * list.length)];
}

/** One of the places where a pattern stands, replaced. */
function once(
  text: string,
  pattern: RegExp,
  roll: () => number,
  by: (found: RegExpExecArray) => string,
): string {
  const found = pick([...text.matchAll(pattern)], roll);
  return found
    ? text.slice(0, found.index) + by(found) + text.slice(found.index + found[0].length)
    : text;
}

const MARK = /:(value|state)\[([^\]]+)\]/g;

/** The values of a sheet's settings as written, by name. */
function valuesOf(text: string): readonly (readonly [string, string])[] {
  return [...text.matchAll(/^ {2}([a-z-]+):\n {4}value: (.+)$/gm)].map(
    ([, name = '', value = '']) => [name, value],
  );
}

/** Slips as people make them: some that `--fix` mends, some that it has to leave alone. */
const alters: readonly Alter[] = [
  // A mark mistyped.
  (text, roll) =>
    once(
      text,
      MARK,
      roll,
      ([, word = '', name = '']) =>
        pick(
          [
            `${word}[${name}]`,
            `: ${word}[${name}]`,
            `:${word} [${name}]`,
            `:${word}s[${name}]`,
            `:${word}(${name})`,
            `:${word}{${name}}`,
            `::${word}[${name}]`,
            `[${word}:${name}]`,
            `;${word}[${name}]`,
            `:${word}[${name}`,
            `\`:${word}[${name}]\``,
            `**${word}[${name}]**`,
            `a${word}[${name}]`,
            `:vaule[${name}]`,
            `[:${word}[${name}]](x)`,
            `\\:${word}[${name}]`,
            `<b>:${word}[${name}]</b>`,
          ],
          roll,
        ) ?? '',
    ),
  // A value typed where its mark stood, or anywhere else.
  (text, roll) => {
    const values = new Map(valuesOf(text));
    return once(text, /:value\[([^\]]+)\]/g, roll, ([mark, name = '']) => values.get(name) ?? mark);
  },
  (text, roll) => {
    const [, value = '0.1 in'] = pick(valuesOf(text), roll) ?? [];
    const body = text.indexOf('\n# ');
    const head = text.slice(0, body);
    return (
      head +
      once(
        text.slice(body),
        /(?<=[a-z])([.,:]?) (?=[a-z])/g,
        roll,
        ([, sign = '']) =>
          pick(
            [
              ` ${value} `,
              ` (${value}) `,
              ` a ${value} hose `,
              ` of ${value}, `,
              `${sign} [${value}](x) `,
              ` |${value}| `,
            ],
            roll,
          ) ?? '',
      )
    );
  },
  // A heading with a figure, a heading lost or moved.
  (text, roll) => {
    const [, value = '0.1 in'] = pick(valuesOf(text), roll) ?? [];
    return once(text, /^## .+$/gm, roll, ([all]) => `${all} ${value}`);
  },
  (text, roll) => once(text, /^## .+$/gm, roll, () => ''),
  (text, roll) => {
    const parts = text.split(/^(?=## )/m);
    const from = 1 + Math.floor(roll() * Math.max(1, parts.length - 1));
    const [part] = parts.splice(from, 1);
    parts.splice(1 + Math.floor(roll() * Math.max(1, parts.length - 1)), 0, part ?? '');
    return parts.join('');
  },
  // A caution broken, lost or moved.
  (text, roll) =>
    once(text, /^:::(?=\w)/gm, roll, () => pick(['::: ', '::', ':::: ', ': ::'], roll) ?? ''),
  (text, roll) =>
    once(text, /^:::$/gm, roll, () => pick(['', '::', ':::\n:::', ' :::'], roll) ?? ''),
  // Blanks, a second sheet, other line ends.
  (text, roll) =>
    once(
      text,
      /(?<=: )[^\n{[]+$/gm,
      roll,
      () => pick(['fill in', 'TBD', '???', '...'], roll) ?? '',
    ),
  (text, roll) => (roll() < 0.3 ? `${text}\n${text}` : text),
  (text, roll) => (roll() < 0.3 ? text.replace(/\n/g, '\r\n') : text),
  // A line lost, said twice, or put elsewhere.
  (text, roll) => once(text, /^.*\n/gm, roll, () => ''),
  (text, roll) => once(text, /^\d+\. .*\n/gm, roll, ([all]) => all + all),
  (text, roll) => once(text, /\d/g, roll, () => String(Math.floor(roll() * 10))),
];

/** A sheet with one to three slips, the same for the same seed. */
export function alteration(text: string, seed: number): string {
  const roll = dice(seed);
  let altered = text;
  for (let count = 1 + Math.floor(roll() * 3); count > 0; count--)
    altered = (pick(alters, roll) ?? ((same) => same))(altered, roll);
  return altered;
}
