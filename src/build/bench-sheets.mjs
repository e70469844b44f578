/**
 * The sheets that bench.mjs measures with: the demo's own, cut to the length of an ordinary sheet and
 * then varied by a seeded generator, so that no two are alike and every one is without findings.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Bytes that an ordinary sheet of the trade has, about. */
const ordinary = 6600;

/**
 * `count` sheets as `{ name, text }`, the same for the same demo and count. `clean(text, name)` says
 * whether a sheet is without findings; `drills(name)` gives `{ inch, mm }` of a number drill, or null.
 */
export function benchSheets(root, count, { clean, drill }) {
  const folder = join(root, 'sheets');
  const patterns = readdirSync(folder)
    .filter((name) => name.endsWith('.md'))
    .sort()
    .map((name) => {
      const text = shortened(readFileSync(join(folder, name), 'utf8'), clean);
      return { name: name.slice(0, -3), text, choices: choicesFor(text, clean, drill) };
    });
  const next = seeded(1948);
  return Array.from({ length: count }, (_, index) => {
    const { name, text, choices } = patterns[index % patterns.length];
    const id = `${name}-${String(index).padStart(4, '0')}`;
    let varied = text;
    for (const options of choices) {
      const { from, to } = options[next(options.length)];
      varied = varied.replace(from, to);
    }
    varied = varied
      .replace(/^sheet: .*$/m, `sheet: ${id}`)
      .replace(/^revision: .*$/m, `revision: ${1 + next(9)}`)
      .replace(/^(title: .*)$/m, `$1 no. ${index}`)
      // Units of their own: what two sheets of one unit say otherwise would be a finding.
      .replace(/^ {2}part-numbers: .*$/m, `  part-numbers: [B-${index}]`)
      // Papers of their own as well: one that many sheets describe alike belongs in `sources.yaml`.
      .replace(/^sources:\n(?: .*\n)+/m, (papers) =>
        papers.replace(/(title: )('?)([^,'\n}]+)/g, `$1$2$3 no. ${index}`),
      )
      .replace(/\bp\. \d+/g, () => `p. ${1 + next(240)}`);
    return { name: id, text: varied };
  });
}

/** Leaves out operations from the end, with the settings that only they use, while nothing is found. */
function shortened(whole, clean) {
  let text = whole;
  const headings = [...whole.matchAll(/^## .*$/gm)].map(([heading]) => heading).reverse();
  for (const heading of headings) {
    if (Buffer.byteLength(text) <= ordinary) break;
    const start = text.indexOf(`${heading}\n`);
    const after = text.indexOf('\n## ', start);
    const end = after < 0 ? text.length : after + 1;
    const cut = text.slice(0, start) + text.slice(end);
    const used = [...text.slice(start, end).matchAll(/:value\[([^\]]+)\]/g)].map(
      ([, name]) => name,
    );
    const shorter = used
      .filter((name) => !cut.includes(`:value[${name}]`))
      .reduce(withoutSetting, cut);
    if (clean(shorter)) text = shorter;
  }
  return text;
}

function withoutSetting(text, name) {
  return text.replace(new RegExp(`^  ${name}:\\n(?:    .*\\n)+`, 'm'), '');
}

/** For each size that can be another without making the sheet wrong: all that it can be. */
function choicesFor(text, clean, drill) {
  const choices = [];
  const offer = (from, candidates) => {
    const options = candidates
      .map((to) => ({ from, to }))
      .filter(({ to }) => to === from || clean(text.replace(from, to)));
    if (options.length > 1) choices.push(options);
  };
  const drills = /^ {4}value: No\. (\d+) drill\n {4}also: \[[\d.]+ in, [\d.]+ mm\]$/gm;
  for (const [from, number] of text.matchAll(drills)) {
    const near = [-3, -2, -1, 0, 1, 2, 3].map((step) => String(Number(number) + step));
    offer(
      from,
      near.flatMap((name) => {
        const size = drill(name);
        if (size === null) return [];
        return `    value: No. ${name} drill\n    also: [${size.inch} in, ${size.mm} mm]`;
      }),
    );
  }
  for (const [from, speed] of text.matchAll(/^ {4}value: (\d+) ± \d+ rpm$/gm)) {
    const speeds = [-30, -20, -10, 0, 10, 20, 30].map((step) => Number(speed) + step);
    offer(
      from,
      speeds.map((other) => from.replace(speed, String(other))),
    );
  }
  return choices;
}

/** Whole numbers below a limit, always the same row (the linear congruence of ISO C's rand). */
function seeded(seed) {
  let state = seed;
  return (below) => {
    state = (Math.imul(state, 1103515245) + 12345) & 0x7fffffff;
    return (state >>> 8) % below;
  };
}
