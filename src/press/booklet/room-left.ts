import { planRooms, type Room, type RoomPlan } from './room-plan.ts';

/**
 * What stands between `<!--gives-->` and `<!--given-->` of a part, parted by `<!--next-->`, may stand earlier: as
 * much of it as its first page has room for goes to `<!--takes-->`. So the first page is filled, and what
 * follows it begins on the next as the style says. What is left then stands where it is given, or, where a piece
 * says by `<!--due 7-->` which task it is for and tasks are led by `<!--room 7-->`, in the room that
 * the tasks before that one leave.
 */

const given = /<!--gives-->([\s\S]*?)<!--given-->/;

/** Whether a part has something that may stand earlier. */
export function hasRoomToFill(html: string): boolean {
  return html.includes('<!--takes-->') && given.test(html);
}

/** The part with the first `count` of what it gives in the earlier place, and without its marks. */
export function withTaken(html: string, count: number): string {
  const [all = '', pieces = ''] = given.exec(html) ?? [];
  const list = pieces.split('<!--next-->');
  return html
    .replace(all, () => list.slice(count).join(''))
    .replace('<!--takes-->', () => list.slice(0, count).join(''));
}

/** How many pieces a part gives. */
export function givenCount(html: string): number {
  return given.exec(html)?.[1]?.split('<!--next-->').length ?? 0;
}

/** What the browser tells of a part with rooms; in px. */
export interface MeasuredRooms {
  readonly start: number;
  /** Each at its lowest, and whether that is with its steps over the whole width. */
  readonly tasks: readonly {
    readonly number: number;
    readonly height: number;
    readonly whole: boolean;
  }[];
  readonly pieces: readonly number[];
  readonly around: number;
  /** What follows the last task. */
  readonly tail: number;
}

/** Whether what is left of a part may stand before its tasks. */
export function hasRooms(html: string): boolean {
  return html.includes('<!--room ');
}

/** What of a part is left when `count` pieces stand in the earlier place. */
function piecesFrom(html: string, count: number): readonly string[] {
  return (given.exec(html)?.[1] ?? '').split('<!--next-->').slice(count);
}

/** Where what is left stands, on pages that are `page` px high. */
export function roomsPlan(
  html: string,
  count: number,
  page: number,
  { start, tasks, pieces, around }: MeasuredRooms,
): RoomPlan {
  const waiting = piecesFrom(html, count).map((piece, at) => ({
    due: Number(/<!--due (\d+)-->/.exec(piece)?.[1] ?? 0),
    height: pieces[at] ?? 0,
  }));
  return planRooms({ page, start, tasks, waiting, around });
}

/** The part with the first `count` of what it gives in the earlier place and the others before its tasks. */
export function withRooms(
  html: string,
  count: number,
  { tasks }: MeasuredRooms,
  plan: RoomPlan,
): string {
  const pieces = piecesFrom(html, count);
  const rooms = new Map(tasks.map(({ number }, at) => [String(number), plan.rooms[at]]));
  const group = (list: readonly number[] = [], name: string) =>
    list.length === 0
      ? ''
      : `<section class="hazards ${name}"><div class="panels">${list.map((at) => pieces[at] ?? '').join('')}</div></section>`;
  const filled = (room: Room | undefined) =>
    group(room?.early, 'early') + group(room?.late, 'late');
  const all = (given.exec(html)?.[1] ?? '').split('<!--next-->').slice(0, count);
  return html
    .replace(given, '')
    .replace('<!--takes-->', () => all.join(''))
    .replace(/<!--room (\d+)-->(<\w+ class=")?/g, (_, number: string, tag: string = '') => {
      const isWhole = tasks.some((task) => task.whole && String(task.number) === number);
      return `${filled(rooms.get(number))}${tag}${isWhole && tag !== '' ? 'whole-width ' : ''}`;
    });
}

/** Asked of a page that a part with its pieces where they are given was put in. */
export const roomsAsked = `(() => {
  const walk = document.createTreeWalker(document.querySelector('main'), NodeFilter.SHOW_COMMENT);
  const marks = [];
  while (walk.nextNode()) marks.push(walk.currentNode);
  const rooms = marks.filter(({ data }) => data.startsWith('room '));
  const box = (element) => element.getBoundingClientRect();
  const under = (element) => parseFloat(getComputedStyle(element).marginBottom) || 0;
  const [first] = rooms.map((mark) => mark.nextElementSibling);
  for (const mark of rooms) mark.nextElementSibling.classList.remove('whole-width');
  for (const section of document.querySelectorAll('.given')) section.style.display = '';
  const given = [...document.querySelectorAll('.given .panels > *')];
  const pieces = given.map((piece) => box(piece).height + under(piece));
  const panels = document.querySelector('.given .panels');
  const around = panels === null ? 0 : under(panels);
  const section = panels === null ? null : panels.parentElement;
  if (section !== null) section.style.display = 'none';
  const tasks = rooms.map((mark) => {
    const task = mark.nextElementSibling;
    const above = parseFloat(getComputedStyle(task).marginTop) || 0;
    const halves = box(task).height;
    task.classList.add('whole-width');
    const whole = box(task).height < halves - 1;
    if (!whole) task.classList.remove('whole-width');
    return { number: Number(mark.data.slice(5)), height: Math.min(halves, box(task).height) + above, whole };
  });
  let page = first.parentElement;
  while (page.previousElementSibling !== null && getComputedStyle(page).breakBefore !== 'page') page = page.previousElementSibling;
  const start = box(first).top - box(page).top;
  const last = rooms.at(-1).nextElementSibling;
  const tail = box(document.querySelector('main').firstElementChild).bottom - box(last).bottom;
  return { start, tasks, pieces, around, tail };
})()`;
