import type { CheckContext, Finding } from '../../src/checks/index.ts';
import { examine } from '../../src/checks/list.ts';
import type { PlacedSize, Setting, Sheet } from '../../src/sheet/model.ts';

/** One slip of a compositor, a typist or an editor, as it would stand on a sheet. */
export interface Slip {
  readonly kind: string;
  readonly setting: string;
  /** What stood there, and is right. */
  readonly right: string;
  readonly wrong: string;
  readonly start: number;
  readonly end: number;
}

/** What `check` says of one slip. */
export interface Told {
  readonly slip: Slip;
  readonly findings: readonly Finding[];
  /** Which of the figures that a finding offers is the right one, from 1; 0 where none is. */
  readonly named: number;
}

/** Figures with all that belongs to a number: `1-1/4`, `13/64`, `.203`, `5,16`. */
const FIGURE = /\d+[- ]\d+\/\d+|\d+\/\d+|[.]?\d+(?:[.,]\d+)*/;

/** Every likely slip of the first figure in a text; those of one kind in the order of its places. */
export function slipsOf(text: string, seed: number): { kind: string; wrong: string }[] {
  const at = FIGURE.exec(text);
  if (!at) return [];
  const figure = at[0];
  const put = (changed: string): string =>
    text.slice(0, at.index) + changed + text.slice(at.index + figure.length);
  const found: { kind: string; wrong: string }[] = [];
  const add = (kind: string, wrong: string): void => {
    if (wrong !== text) found.push({ kind, wrong });
  };
  const digits = [...figure.matchAll(/\d/g)].map(({ index }) => index);
  for (const [i, place] of digits.entries()) {
    const digit = String((Number(figure[place]) + 1 + ((seed + i * 7) % 9)) % 10);
    add('one digit wrong', put(figure.slice(0, place) + digit + figure.slice(place + 1)));
    const next = digits[i + 1];
    if (next === undefined || next !== place + 1) continue;
    add(
      'swapped digits',
      put(figure.slice(0, place) + figure[next] + figure[place] + figure.slice(next + 1)),
    );
  }
  const mark = /[.,]/.exec(figure)?.[0];
  if (mark && !figure.includes('/')) {
    const [whole = '', decimals = ''] = figure.split(mark);
    if (decimals.length > 1)
      add(
        'slipped point',
        put(`${whole}${decimals[0]}${mark}${decimals.slice(1)}`.replace(/^0+(?=\d)/, '')),
      );
    add('slipped point', put(`${whole.slice(0, -1) || '0'}${mark}${whole.slice(-1)}${decimals}`));
  }
  const named = /(?:^|\W)(?:No\. ?|#)(\d+)|^(\d+) (?:AWG|SWG)/.exec(text);
  if (named) {
    const number = Number(named[1] ?? named[2]);
    const to = (other: number): string => text.replace(String(number), String(other));
    add('neighbor', to(number + 1));
    add('neighbor', to(number - 1));
  }
  if (/\bAWG\b/.test(text)) add('another system', text.replace('AWG', 'SWG imperial'));
  if (/\bSWG\b/.test(text)) add('another system', text.replace(/SWG(?: imperial)?/, 'AWG'));
  const ratio = /(\d+)\/(\d+)/.exec(figure);
  if (ratio) {
    const [whole, n = '', d = ''] = ratio;
    add('reversed fraction', text.replace(whole, `${d}/${n}`));
    if (n.length > 1)
      add('reversed fraction', text.replace(whole, `${[...n].reverse().join('')}/${d}`));
    const other = d === '64' ? '32' : d === '32' ? '64' : d === '16' ? '32' : null;
    if (other) add('wrong denominator', text.replace(whole, `${n}/${other}`));
  }
  if (/ in\b/.test(text)) add('another unit', text.replace(/ in\b/, ' mm'));
  if (/ mm\b/.test(text)) add('another unit', text.replace(/ mm\b/, ' in'));
  return found;
}

function sizesOf(setting: Setting): PlacedSize[] {
  const roomy =
    setting.value?.reading.ok &&
    (setting.value.reading.statement.low ?? setting.value.reading.statement.high);
  return [setting.value, ...setting.also, roomy ? null : setting.gauge].flatMap((size) =>
    size?.reading.ok && size.reading.statement.condition === null ? [size] : [],
  );
}

/** The likely slips in every statement of a sheet that has a second one. */
export function slipsIn(sheet: Sheet): Slip[] {
  return [...sheet.settings.values()].flatMap((setting) => {
    const sizes = sizesOf(setting);
    if (sizes.length < 2) return [];
    return sizes.flatMap(({ text, span }, i) =>
      slipsOf(text, span.start + i).map((slip) => ({
        ...slip,
        setting: setting.id,
        right: text,
        start: span.start,
        end: span.end,
      })),
    );
  });
}

const key = ({ check, message, subject }: Finding): string => `${check} ${subject} ${message}`;

/** Puts one slip onto a sheet and asks what `check` says that it did not say before. */
export function tell(
  sheet: Sheet,
  before: readonly Finding[],
  slip: Slip,
  context: CheckContext,
): Told {
  const text = sheet.text.slice(0, slip.start) + slip.wrong + sheet.text.slice(slip.end);
  const known = new Set(before.map(key));
  const findings = examine(text, sheet.file, context).findings.filter(
    (finding) => !known.has(key(finding)) && finding.severity !== 'note',
  );
  return { slip, findings, named: namedAt(slip, findings) };
}

/** The place of the right figure among those that the findings offer, in their order. */
function namedAt({ right }: Slip, findings: readonly Finding[]): number {
  const bare = (text: string): string =>
    text
      .replace(/\s+/g, ' ')
      .replace(/^0(?=\.)/, '')
      .trim();
  const wanted = bare(right);
  const figure = bare(FIGURE.exec(right)?.[0] ?? right);
  for (const { fix } of findings) {
    const offers = offersIn(fix ?? '').map(bare);
    const at = offers.findIndex((offer) => offer === wanted || sameStart(offer, wanted, figure));
    if (at >= 0) return at + 1;
  }
  return 0;
}

/** `0.203 in` offered for `0.203 ± 0.015 in`: the figure and its unit, without what is beside it. */
function sameStart(offer: string, wanted: string, figure: string): boolean {
  if (!/[±+–]| to | or |\b(?:out|in after|min|max|rich|lean|down)\b/.test(wanted)) return false;
  const own = FIGURE.exec(offer)?.[0].replace(/^0(?=\.)/, '');
  return own === figure;
}

/** The figures that a cure offers: what stands before `, if ...`, after `or`, and after `write`. */
export function offersIn(fix: string): string[] {
  return fix
    .split(/; |, or | or (?=\S+ .*, if )/)
    .flatMap(
      (part) =>
        /^(?:write |or |otherwise (?:write )?)?(.+?)(?: for (?:the [a-z ]+|`[^`]+`))?(?:, if .*)?$/.exec(
          part,
        )?.[1] ?? [],
    )
    .filter((part) => /\d/.test(part) && !/^(?:correct|look|otherwise|the other)/.test(part));
}
