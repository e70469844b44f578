import { visible } from '../../text/index.ts';
import type { Paint } from '../paint.ts';
import { wrap } from '../wrap.ts';
import type { Found } from './model.ts';

/** What was found, sheet by sheet: place, what it is, as written, how far off. */
export function foundText(
  found: readonly Found[],
  { ink, width }: { readonly ink: Paint; readonly width: number | null },
): string {
  const sheets = new Map<string, Found[]>();
  for (const each of found) {
    const of = sheets.get(each.sheet);
    if (of === undefined) sheets.set(each.sheet, [each]);
    else of.push(each);
  }
  return [...sheets].map(([sheet, those]) => sheetText(sheet, those, ink, width)).join('\n');
}

function sheetText(
  sheet: string,
  found: readonly Found[],
  ink: Paint,
  width: number | null,
): string {
  const own = found[0]?.file ?? '';
  const title = found[0]?.title ?? '';
  const places = found.map(({ file, line, column }) =>
    file === own ? `${line}:${column}` : `${file}:${line}:${column}`,
  );
  const column = Math.max(...places.map((place) => place.length));
  const labels = Math.min(28, Math.max(...found.map(({ label }) => label.length)));
  const lines = found.flatMap(({ label, written, off }, index) => {
    const lead = `  ${(places[index] ?? '').padEnd(column)}  ${visible(label).padEnd(labels)}  `;
    const words = visible(`${written}${off === null ? '' : ` (${off})`}`.replace(/\s+/g, ' '));
    const room = width === null ? null : Math.max(20, width - lead.length);
    const [first = '', ...rest] = wrap(words, room);
    return [lead + first, ...rest.map((more) => ' '.repeat(lead.length) + more)];
  });
  const head = wrap(`${visible(own)}  ${visible(title === '' ? sheet : title)}`, width);
  return `${[ink.bold(head[0] ?? ''), ...head.slice(1), ...lines].join('\n')}\n`;
}
