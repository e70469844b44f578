import { scalar } from '../text/index.ts';

/** A new sheet that is based on another: its head, and nothing that differs yet. */
export function draftVariant(order: {
  /** Ids of the new sheet and of the one that it is based on. */
  readonly id: string;
  readonly base: string;
  readonly title: string;
  /** YYYY-MM-DD. */
  readonly date: string;
}): string {
  return [
    '---',
    'gaugeleaf: 1',
    `sheet: ${order.id}`,
    `title: ${scalar(order.title)}`,
    `based-on: ${order.base}`,
    '# Only what differs: part numbers, features, settings; `none` leaves out a setting of the base.',
    'revision: 1',
    `date: ${order.date}`,
    'status: draft',
    '---',
    '',
  ].join('\n');
}
