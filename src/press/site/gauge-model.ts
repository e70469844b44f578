import type { Gathering } from '../matter/index.ts';
import { idMaker } from './ids.ts';
import type { GaugesPage, PageFrame, PageLink } from './model.ts';

/** The gauges of an edition, each with links to the units it serves. `links` go by the sheet's place. */
export function gaugeGroups(
  { groups, minimum, unmet }: Gathering,
  links: readonly PageLink[],
): Omit<GaugesPage, keyof PageFrame> {
  const id = idMaker();
  const linkOf = (sheet: number): PageLink => links[sheet] ?? { href: '', label: '' };
  return {
    groups: groups.map(({ title, gauges }) => ({
      id: id('gauges', title),
      title,
      gauges: gauges.map(({ label, inch, mm, usedBy }) => ({
        label,
        inch,
        mm,
        usedBy: usedBy.map(({ sheet, settings }) => ({ ...linkOf(sheet), settings })),
      })),
    })),
    fewest: minimum,
    ungauged: unmet.map(({ sheet, words }) => ({ ...linkOf(sheet), text: words })),
  };
}
