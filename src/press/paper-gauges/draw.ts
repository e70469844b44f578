import { escapeXml, nameLines, sizeLines, typeSize } from '../lettering/index.ts';

/** What stands on a paper gauge, and how long its ends are. */
export interface GaugeToDraw {
  /** In millimeters; null where the gauge has no such end. */
  readonly goMm: number | null;
  readonly noGoMm: number | null;
  /** The figures on the two ends: `5.04`. */
  readonly goText: string;
  readonly noGoText: string;
  /** Lines of the handle: the setting, its size as written, and words of where and how. */
  readonly setting: string;
  readonly written: string;
  readonly words: readonly string[];
}

/** In mm: length of an end, of the handle, of the lines past a corner; room around the words. */
const gauge = { end: 16, handle: 60, past: 2, stroke: 0.1, inset: 1.6 };

/**
 * A gauge as SVG at its true size: an end that has to pass, a handle with what it is for, an end that
 * must not. Both ends are measured from one straight base. The middle of each line is the true edge;
 * the lines that are measured go on past the corners, to lay a rule to.
 */
export function drawGauge(each: GaugeToDraw): string {
  const { end, handle, past, stroke, inset } = gauge;
  const room = handle - 2 * inset;
  const lines = [
    ...nameLines(parted(each.setting), room * 0.86).map((line) => ({
      line,
      as: 'setting',
      high: 4,
    })),
    ...sizeLines(each.written, room).map((line) => ({ line, as: 'size', high: 5 })),
    ...each.words
      .flatMap((words) => nameLines(parted(words), room))
      .map((line) => ({ line, as: 'name', high: 3.9 })),
  ];
  const high = lines.reduce((sum, line) => sum + line.high, 0) + 2 * inset;
  const tall = Math.max(high, each.goMm ?? 0, each.noGoMm ?? 0);
  const left = past + (each.goMm === null ? 0 : end);
  const right = left + handle;
  const width = right + (each.noGoMm === null ? 0 : end) + past;
  const base = tall + past;
  const path = [`M${n(past)} ${n(base)}H${n(width - past)}`];
  if (each.noGoMm !== null) path.push(`V${n(base - each.noGoMm)}H${n(right)}`);
  path.push(`V${n(base - high)}H${n(left)}`);
  if (each.goMm !== null) path.push(`V${n(base - each.goMm)}H${n(past)}`);
  path.push('Z');
  const marks = [
    `M0 ${n(base)}H${n(past)}M${n(width - past)} ${n(base)}H${n(width)}`,
    each.goMm === null ? '' : `M0 ${n(base - each.goMm)}H${n(past)}`,
    each.noGoMm === null ? '' : `M${n(width - past)} ${n(base - each.noGoMm)}H${n(width)}`,
  ];
  let y = base - high + inset;
  const texts = lines.map(({ line, as, high: step }) => {
    const size = as === 'size' ? typeSize.size : typeSize.name;
    const at = y + step / 2 + 0.35 * size;
    y += step;
    const drawn = line.stretches.map(({ face, text }) =>
      face === 'upper' || face === 'lower'
        ? `<tspan class="${face}">${escapeXml(text)}</tspan>`
        : escapeXml(text),
    );
    return `<text class="${as}" x="${n(left + inset)}" y="${n(at)}" font-size="${size}">${drawn.join('')}</text>`;
  });
  const ends = [
    each.goMm === null ? '' : endWords('GO', each.goText, past + end / 2, base, each.goMm),
    each.noGoMm === null
      ? ''
      : endWords('NO-GO', each.noGoText, right + end / 2, base, each.noGoMm),
  ];
  return svgOf(
    width,
    base + past,
    `${each.setting}: ${each.written}`,
    `<path d="${path.join('')}${marks.join('')}" fill="none" stroke="#000" stroke-width="${stroke}"/>${texts.join('')}${ends.join('')}`,
  );
}

/** A word that is longer than a handle is parted: it would run on over the end that is measured. */
function parted(words: string): string {
  return words.replace(/\S{26}(?=\S)/gu, '$& ');
}

/** What an end is, in the middle of it; its figure as well where it is long enough for two lines. */
function endWords(word: string, figure: string, x: number, base: number, longMm: number): string {
  const two = longMm >= 9;
  const size = Math.min(typeSize.name, longMm - 1.2);
  const at = (y: number, text: string, as: string) =>
    `<text class="${as}" text-anchor="middle" x="${n(x)}" y="${n(y + 0.35 * size)}" font-size="${n(size)}">${escapeXml(text)}</text>`;
  const middle = base - longMm / 2;
  return two
    ? at(middle - 2, word, 'setting') + at(middle + 2, figure, 'name')
    : at(middle, word, 'setting');
}

const bar = { high: 4, apart: 1, words: 4.4 };

/**
 * The two proof bars, 100 mm and 4 in, in blocks of 10 mm and of 1 in, beginning at one line; along
 * the page or down it.
 */
export function drawProofBars(down: boolean): string {
  const inches = 4 * 25.4;
  const body = [
    `<text class="setting" x="0" y="${n(bar.words - 1)}" font-size="${typeSize.name}">100 mm</text>`,
    blocks(0, bar.words, 100, 10),
    blocks(0, bar.words + bar.high + bar.apart, inches, 25.4),
    `<text class="setting" x="0" y="${n(bar.words + 2 * bar.high + bar.apart + 3.6)}" font-size="${typeSize.name}">4 in</text>`,
  ].join('');
  const across = 2 * (bar.words + bar.high) + bar.apart;
  const long = inches + 1;
  return down
    ? svgOf(
        across,
        long,
        'Proof bars down the page',
        `<g transform="translate(${n(across)} 0.5) rotate(90)">${body}</g>`,
      )
    : svgOf(
        long,
        across,
        'Proof bars along the page',
        `<g transform="translate(0.5 0)">${body}</g>`,
      );
}

/** A black bar with every other block left white inside; its outer ends are the size. */
function blocks(x: number, y: number, long: number, block: number): string {
  const edge = 0.2;
  const white: string[] = [];
  for (let at = block; at < long - 1e-6; at += 2 * block) {
    const end = Math.min(at + block, long - edge);
    white.push(
      `M${n(x + at)} ${n(y + edge)}H${n(x + end)}V${n(y + bar.high - edge)}H${n(x + at)}Z`,
    );
  }
  return (
    `<path class="bar" d="M${n(x)} ${n(y)}H${n(x + long)}V${n(y + bar.high)}H${n(x)}Z"/>` +
    `<path d="${white.join('')}" fill="#fff"/>`
  );
}

/**
 * The browser brings a picture's box to whole pixels of 1/96 in and stretches what is in it with it:
 * a box of whole pixels to begin with keeps every length true.
 */
function svgOf(widthMm: number, heightMm: number, title: string, content: string): string {
  const px = (mm: number) => Math.ceil((mm * 96) / 25.4 - 1e-9);
  const mm = (pixels: number) => ((pixels * 25.4) / 96).toFixed(6);
  const [width, height] = [px(widthMm), px(heightMm)];
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" data-true-size="" width="${width}" height="${height}" viewBox="0 0 ${mm(width)} ${mm(height)}" role="img" aria-label="${escapeXml(title)}">` +
    `${content}</svg>`
  );
}

function n(value: number): string {
  return String(Math.round(value * 10000) / 10000);
}
