import type { KindReference } from '../../kinds/reference/model.ts';
import { alsoCalled, asked, either, statedAs, unitWords } from './words.ts';

/** A section of a kind in one line an entry. */
export interface Section {
  readonly title: string;
  readonly rows: readonly (readonly [name: string, words: string])[];
}

/** All that a kind knows, section by section, one line an entry. */
export function sectionsOf(reference: KindReference): readonly Section[] {
  const told = (...words: readonly string[]) => words.filter((word) => word !== '').join('; ');
  const sections: readonly Section[] = [
    {
      title: 'settings',
      rows: reference.settings.map((entry) => [
        entry.name,
        told(
          `${entry.label}: ${statedAs(entry)}`,
          entry.mustSay.length === 0 ? '' : `with ${either(entry.mustSay, 'and')}`,
          alsoCalled(entry),
        ),
      ]),
    },
    {
      title: 'operations, in working order',
      rows: reference.operations.map((entry) => [
        entry.name,
        told(
          `${entry.label} (${entry.stage})`,
          entry.settings.length === 0 ? '' : `makes ${entry.settings.join(', ')}`,
          entry.hazards.length === 0 ? '' : `meets ${entry.hazards.join(', ')}`,
          alsoCalled(entry),
        ),
      ]),
    },
    {
      title: 'parts, for :state[part condition]',
      rows: reference.parts.map((entry) => [
        entry.name,
        told(
          `${entry.label}: ${either(entry.conditions.map(({ name }) => name))}`,
          alsoCalled(entry),
        ),
      ]),
    },
    {
      title: 'hazards',
      rows: reference.hazards.map((entry) => [
        entry.name,
        told(`${entry.label}: at least ${entry.signal}`, alsoCalled(entry)),
      ]),
    },
    {
      title: 'features, with what each asks for',
      rows: reference.features.map((entry) => [
        entry.name,
        told(
          entry.label,
          entry.settings.length === 0 ? '' : `settings ${asked(entry.settings)}`,
          entry.operations.length === 0 ? '' : `work ${asked(entry.operations)}`,
          entry.excludes.length === 0 ? '' : `never beside ${either(entry.excludes)}`,
          alsoCalled(entry),
        ),
      ]),
    },
    {
      title: 'sizes and threads under unit:',
      rows: reference.unit.map((entry) => [entry.name, unitWords(entry)]),
    },
    { title: 'every sheet has', rows: always(reference) },
  ];
  return sections.filter(({ rows }) => rows.length > 0);
}

function always({ oneOf, always: every }: KindReference): Section['rows'] {
  const rows = [
    ['features', asked(oneOf)],
    ['settings', asked(every.settings)],
    ['operations', asked(every.operations)],
  ] as const satisfies Section['rows'];
  return rows.filter(([, words]) => words !== '');
}
