import { escapeXml, textWidth } from '../lettering/index.ts';
import { layOut, type OrderLayout, type PlacedArrow, type PlacedBox } from './layout.ts';
import { measures, numberBreadth, stageNames } from './measures.ts';
import type { OrderGraph } from './model.ts';

/** A picture of the order of work, ready to stand in a page or in a file of its own. */
export interface OrderPicture {
  readonly svg: string;
  /** In points. */
  readonly width: number;
  readonly height: number;
}

export interface PictureOptions {
  /** What the ids of the picture begin with: no two pictures on a page may share it. */
  readonly prefix: string;
  /**
   * For a file of its own, whose reader may lack the booklet's font: every line of a box is held to
   * the width that it has in that font.
   */
  readonly alone: boolean;
}

/**
 * Draws the graph of a sheet's operations: a box for each, in bands by stage; solid arrows for what
 * must precede what, dashed ones for what disturbs what; a double frame for what is done again. Black
 * on white. What is disturbed before it is made, in a later stage, has no arrow: it would only hide the
 * others. Null where the sheet has no operation that its kind knows.
 */
export async function drawOrder(
  whole: OrderGraph,
  options: PictureOptions,
): Promise<OrderPicture | null> {
  if (whole.boxes.length === 0) return null;
  const graph = { ...whole, disturbs: whole.disturbs.filter(({ harmless }) => !harmless) };
  return drawn(graph, await layOut(graph), options);
}

/** Numbers in a picture: hundredths of a point are finer than any press. */
function n(value: number): string {
  return String(Math.round(value * 100) / 100 || 0);
}

const MARGIN = 1;
const HEAD = { length: 4.6, half: 1.9 };

function drawn(graph: OrderGraph, layout: OrderLayout, options: PictureOptions): OrderPicture {
  const legend = legendOf(graph);
  const inner = Math.max(measures.names + layout.width, legend.width);
  const width = inner + 2 * MARGIN;
  const height = layout.height + legend.height + 2 * MARGIN;
  const shift = MARGIN + measures.names + (inner - measures.names - layout.width) / 2;
  const ids = { title: `${options.prefix}-title`, desc: `${options.prefix}-desc` };
  const size = ` width="${n(width)}pt" height="${n(height)}pt"`;
  const out = [
    `<svg xmlns="http://www.w3.org/2000/svg"${size} viewBox="0 0 ${n(width)} ${n(height)}" role="img" aria-labelledby="${escapeXml(ids.title)} ${escapeXml(ids.desc)}" font-family="'Gaugeleaf Sans', 'Helvetica Neue', Arial, sans-serif" font-size="${measures.labelSize}" fill="#000">`,
    `<title id="${escapeXml(ids.title)}">${escapeXml(`Order of work: ${graph.title}`)}</title>`,
    `<desc id="${escapeXml(ids.desc)}">${escapeXml(inWords(graph))}</desc>`,
  ];
  if (options.alone) out.push(`<rect width="${n(width)}" height="${n(height)}" fill="#fff"/>`);
  out.push('<g fill="none" stroke="#000" stroke-width="0.5">');
  for (const { top } of layout.bands)
    out.push(`<path d="M${MARGIN},${n(top + MARGIN)}H${n(width - MARGIN)}"/>`);
  out.push('</g>', `<g transform="translate(${n(shift)} ${MARGIN})">`);
  for (const arrow of layout.arrows) out.push(arrowMark(arrow));
  for (const box of layout.boxes) out.push(...boxMark(box, options.alone));
  for (const arrow of layout.arrows) out.push(...labelMark(arrow));
  out.push('</g>');
  out.push(`<g font-size="${measures.smallSize}" font-weight="600">`);
  for (const { stage, top } of layout.bands) {
    stageNames[stage].forEach((line, index) => {
      const y = top + MARGIN + measures.smallSize + 2 + index * measures.nameHeight;
      out.push(`<text x="${MARGIN}" y="${n(y)}">${line}</text>`);
    });
  }
  out.push('</g>', ...legend.marks(MARGIN, MARGIN + layout.height), '</svg>');
  return { svg: `${out.join('\n')}\n`, width, height };
}

/** A curve that leaves and enters every upright stretch upright, with its head drawn as a shape. */
function arrowMark({ runs, kind, up, from, to }: PlacedArrow): string {
  const points = runs.map((run) => ({ ...run }));
  const first = points[0];
  const last = points.at(-1);
  if (!first || !last) return '';
  const tip = up ? { x: first.x, y: first.top, sign: -1 } : { x: last.x, y: last.bottom, sign: 1 };
  // The line ends inside the head, so that no blunt end shows at the tip.
  if (up) first.top = first.bottom = first.bottom + HEAD.length - 1;
  else last.top = last.bottom = last.top - HEAD.length + 1;
  let path = `M${n(first.x)},${n(first.bottom)}`;
  for (let index = 1; index < points.length; index++) {
    const a = points[index - 1];
    const b = points[index];
    if (!a || !b) continue;
    const middle = (a.bottom + b.top) / 2;
    path +=
      Math.abs(a.x - b.x) < 0.01
        ? `V${n(b.top)}`
        : `C${n(a.x)},${n(middle)} ${n(b.x)},${n(middle)} ${n(b.x)},${n(b.top)}`;
    if (b.bottom > b.top) path += `V${n(b.bottom)}`;
  }
  const line =
    kind === 'before' ? 'stroke-width="0.8"' : 'stroke-width="0.7" stroke-dasharray="2.4 1.6"';
  const side = tip.y - tip.sign * HEAD.length;
  const head = `M${n(tip.x)},${n(tip.y)}L${n(tip.x - HEAD.half)},${n(side)}H${n(tip.x + HEAD.half)}Z`;
  // What disturbs has an open head: the two kinds differ even where a line is too short to show dashes.
  const fill = kind === 'before' ? '#000' : '#fff';
  return `<g data-arrow="${kind}" data-from="${from}" data-to="${to}" stroke="#000"><path d="${path}" fill="none" ${line}/><path d="${head}" fill="${fill}" stroke-width="0.6" stroke-linejoin="round"/></g>`;
}

function boxMark({ box, lines, x, y, width, height }: PlacedBox, alone: boolean): string[] {
  const { labelSize, lineHeight, paddingX } = measures;
  const left = x - width / 2;
  const top = y - height / 2;
  const frame = (inset: number, weight: number): string =>
    `<rect x="${n(left + inset)}" y="${n(top + inset)}" width="${n(width - 2 * inset)}" height="${n(height - 2 * inset)}" fill="${inset > 0 ? 'none' : '#fff'}" stroke="#000" stroke-width="${weight}"/>`;
  const first = y - ((lines.length - 1) * lineHeight) / 2 + labelSize * 0.35;
  const held = (line: string): string =>
    alone ? ` textLength="${n(textWidth(line, labelSize))}" lengthAdjust="spacingAndGlyphs"` : '';
  return [
    `<g data-box="${box.number}"><title>${escapeXml(`${box.number} ${box.label}`)}</title>`,
    frame(0, box.again === null ? 0.8 : 0.6),
    ...(box.again === null ? [] : [frame(1.5, 0.4)]),
    `<text x="${n(left + paddingX)}" y="${n(first)}" font-weight="600">${box.number}</text>`,
    ...lines.map(
      (line, index) =>
        `<text x="${n(left + paddingX + numberBreadth(box.number))}" y="${n(first + index * lineHeight)}"${held(line)}>${escapeXml(line)}</text>`,
    ),
    '</g>',
  ];
}

function labelMark({ label }: PlacedArrow): string[] {
  if (!label) return [];
  const size = measures.smallSize;
  const width = textWidth(label.text, size) + 2;
  return [
    `<rect x="${n(label.x - width / 2)}" y="${n(label.y - size / 2 - 0.4)}" width="${n(width)}" height="${n(size + 0.8)}" fill="#fff"/>`,
    `<text x="${n(label.x)}" y="${n(label.y + size * 0.35)}" font-size="${size}" text-anchor="middle">${escapeXml(label.text)}</text>`,
  ];
}

interface Legend {
  readonly width: number;
  readonly height: number;
  marks(x: number, y: number): string[];
}

/** What the marks mean, of those that the picture has. */
function legendOf(graph: OrderGraph): Legend {
  const size = measures.smallSize;
  const entries = [
    { there: graph.before.length > 0, sample: 'before', words: 'must be done first' },
    { there: graph.disturbs.length > 0, sample: 'disturbs', words: 'disturbs what it points to' },
    {
      there: graph.boxes.some(({ again }) => again !== null),
      sample: 'again',
      words: 'done again',
    },
  ].filter(({ there }) => there);
  const widths = entries.map(({ words }) => 21 + textWidth(words, size) + 9);
  return {
    width: widths.reduce((sum, each) => sum + each, 0),
    height: 12,
    marks: (x, y) => {
      const out: string[] = [];
      let at = x;
      const middle = y + 6.5;
      entries.forEach(({ sample, words }, index) => {
        out.push(sampleMark(sample, at, middle));
        out.push(
          `<text x="${n(at + 21)}" y="${n(middle + size * 0.35)}" font-size="${size}">${words}</text>`,
        );
        at += widths[index] ?? 0;
      });
      return out;
    },
  };
}

function sampleMark(sample: string, x: number, y: number): string {
  if (sample === 'again')
    return `<g fill="none" stroke="#000"><rect x="${n(x + 3)}" y="${n(y - 3.4)}" width="14" height="6.8" stroke-width="0.6"/><rect x="${n(x + 4.5)}" y="${n(y - 1.9)}" width="11" height="3.8" stroke-width="0.4"/></g>`;
  const solid = sample === 'before';
  const dash = solid ? 'stroke-width="0.8"' : 'stroke-width="0.7" stroke-dasharray="2.4 1.6"';
  return `<g stroke="#000"><path d="M${n(x)},${n(y)}h13.4" fill="none" ${dash}/><path d="M${n(x + 17)},${n(y)}l-${HEAD.length},-${HEAD.half}v${2 * HEAD.half}z" fill="${solid ? '#000' : '#fff'}" stroke-width="0.6" stroke-linejoin="round"/></g>`;
}

/** The picture for who cannot see it. */
function inWords(graph: OrderGraph): string {
  const sentences = graph.boxes.map((box) => {
    const after = graph.before.filter(({ to }) => to === box.number).map(({ from }) => from);
    const moves = graph.disturbs.filter(({ from }) => from === box.number).map(({ to }) => to);
    const said = [
      ...(after.length > 0 ? [`after ${after.join(', ')}`] : []),
      ...(moves.length > 0 ? [`disturbs ${moves.join(', ')}`] : []),
      ...(box.again === null ? [] : [`does ${box.again} again`]),
    ];
    return `${box.number} ${box.label}${said.length > 0 ? ` (${said.join('; ')})` : ''}`;
  });
  return `${sentences.join('. ')}.`;
}
