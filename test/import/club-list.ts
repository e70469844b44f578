import type { TypedCell } from './spreadsheet.ts';

/** Heads of the club's list; all names in it are invented, and the figures fit no engine. */
export const heads = [
  'Maker',
  'Model',
  'Part No.',
  'Features',
  'Marque',
  'Car model',
  'Years',
  'Float level (in)',
  'Gasket',
  'Float level at',
  'Idle mixture (turns out)',
  'Idle stop, turns in',
  'Idle speed rpm',
  'Idle vacuum [inHg]',
  'Fuel pressure (psi)',
  'Flange nut torque (ft-lb)',
  'Source',
  'Source year',
  'Page',
];

const makers = ['Orlo', 'Tarn', 'Bressac', 'Dunnow', 'Pellow'];
const marques = ['Wexcombe', 'Larkmoor', 'Tollgarth'];
const levels: readonly TypedCell[] = [
  '13/64',
  { value: 0.203, style: 'three' },
  { value: 15 / 64, style: 'sixtyfourths' },
  '7/32',
  '13/64 ± 1/64',
  0.219,
  '5.16 mm',
];
const mixtures: readonly TypedCell[] = ['1-1/4', 1.5, '1 1/2', '3/4', '1-1/4 ± 1/4'];

/** A row of the list as its keeper would have typed it without a slip; `index` from 0 to 59. */
function soundRow(index: number): TypedCell[] {
  const at = <T>(list: readonly T[], step = 1) => list[Math.floor(index / step) % list.length] as T;
  const year = 1946 + (index % 12);
  const model = `${'FLNKT'[index % 5]}${27 + index}`;
  return [
    at(makers),
    model,
    `${model}-${100 + index}`,
    index % 2 === 0 ? 'single-barrel, downdraft' : 'Two barrels, updraft',
    at(marques, 3),
    index % 4 === 0 ? 'Six' : 'Four',
    index % 3 === 0 ? year : `${year}-${year + 2}`,
    at(levels),
    'removed',
    index % 2 === 0 ? 'free end of the float' : 'center of the float',
    at(mixtures),
    index % 3 === 0 ? '1/2' : '3/4',
    425 + 25 * (index % 5),
    17 + (index % 5),
    index % 2 === 0 ? 4.5 : '3.5-4.5',
    10 + (index % 4),
    `${at(marques, 3)} Workshop Manual`,
    1950 + marques.indexOf(at(marques, 3)),
    `p. ${20 + index}`,
  ];
}

/** The planted slips, by the cells that they are to be told at. */
export const planted = {
  'thousandths as inches': 'H5',
  'a date made of 3-8': 'H9',
  'two cells that changed places': 'M14 and N14',
  'millimeters in the column of inches': 'H18',
  'a vacuum in kilopascals': 'N23',
  'a maker merged over two rows': 'A27:A28',
  'two settings merged into one cell': 'K31:L31',
  'a mark that points to a footnote': 'H36',
  'a unit that stands there twice': 'B45',
  'a stray footnote': 'A62',
} as const;

/**
 * The list: heads, sixty rows, and a footnote, with ten planted slips. Without `merged`, as a CSV
 * file has it, two of them cannot be planted.
 */
export function clubList({ merged }: { readonly merged: boolean }): TypedCell[][] {
  const rows = Array.from({ length: 60 }, (_, index) => soundRow(index));
  const put = (row: number, column: number, cell: TypedCell) => {
    const cells = rows[row - 2];
    if (cells) cells[column] = cell;
  };
  put(5, 7, 203);
  put(9, 7, { date: '2026-03-08' });
  put(14, 12, 19);
  put(14, 13, 475);
  put(18, 7, 5.16);
  put(23, 13, 64);
  if (merged) {
    put(27, 0, { text: 'Orlo', down: 2 });
    put(28, 0, null);
    put(31, 10, { text: '1-1/4', across: 2 });
    rows[29]?.splice(11, 1);
  }
  put(36, 7, '7/32*');
  rows[43] = [...(rows[10] ?? [])];
  return [heads, ...rows, ['* measured with the gasket fitted']];
}

/** The list as CSV, a day as a spreadsheet writes it there. */
export function listAsCsv(rows: readonly (readonly TypedCell[])[], delimiter = ','): string {
  const text = (cell: TypedCell): string => {
    if (cell === null) return '';
    if (typeof cell === 'string') return cell;
    if (typeof cell === 'number') return String(cell);
    if ('date' in cell) return '8-Mar';
    if ('text' in cell) return cell.text;
    return 'style' in cell && cell.style === 'sixtyfourths'
      ? `${cell.value * 64}/64`
      : String(cell.value);
  };
  const quoted = (cell: TypedCell) => {
    const written = text(cell);
    return /["\n]/.test(written) || written.includes(delimiter)
      ? `"${written.replace(/"/g, '""')}"`
      : written;
  };
  return rows.map((row) => `${row.map(quoted).join(delimiter)}\r\n`).join('');
}
