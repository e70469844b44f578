/** What may stand in any place before the task that it is for. Heights are in one unit, whichever. */
export interface Waiting {
  /** The number of the task before which it has to stand. */
  readonly due: number;
  readonly height: number;
}

/** What is measured of a chapter's work. */
export interface Rooms {
  /** What a page holds. */
  readonly page: number;
  /** How far down its page the first task begins. */
  readonly start: number;
  readonly tasks: readonly { readonly number: number; readonly height: number }[];
  /** In the order in which they are printed where they stand together. */
  readonly waiting: readonly Waiting[];
  /** What a group of them takes besides itself. */
  readonly around: number;
}

/** What stands before a task, by index among what waits. */
export interface Room {
  /** At the foot of the page that the task leaves. */
  readonly early: readonly number[];
  /** On the page of the task. */
  readonly late: readonly number[];
}

/** Where everything stands, and where the last task ends. */
export interface RoomPlan {
  readonly rooms: readonly Room[];
  /** Whole pages before the one on which the last task ends, from that of `start`. */
  readonly pages: number;
  /** How far down that page it ends. */
  readonly end: number;
}

/**
 * Which of what waits stands before each task. Each stands right before the task that it is for, or
 * earlier, where a page would else end with room for it, since no task is parted over a page.
 */
export function planRooms({ page, start, tasks, waiting, around }: Rooms): RoomPlan {
  let left = waiting
    .map((each, at) => ({ ...each, at }))
    .sort((one, two) => one.due - two.due || one.at - two.at);
  let pages = Math.floor(start / page);
  let down = start % page;
  const rooms = tasks.map(({ number, height }) => {
    const due = left.filter((each) => each.due <= number);
    const whole = groupHeight(due, around);
    if (down + whole + height <= page) {
      left = left.filter((each) => each.due > number);
      down += whole + height;
      return { early: [], late: inOrder(due) };
    }
    // The task goes to the next page: what is next due goes into the room that it leaves, as much as fits.
    let count = left.length;
    while (count > 0 && down + groupHeight(left.slice(0, count), around) > page) count--;
    const early = left.slice(0, count);
    const late = left.slice(count).filter((each) => each.due <= number);
    left = left.slice(count).filter((each) => each.due > number);
    const next = groupHeight(late, around) + height;
    pages += 1 + Math.floor(next / page);
    down = next % page;
    return { early: inOrder(early), late: inOrder(late) };
  });
  return { rooms, pages, end: down };
}

function inOrder(group: readonly { readonly at: number }[]): number[] {
  return group.map(({ at }) => at).sort((one, two) => one - two);
}

/** How high a group is in two columns of which the first ends where both come out lowest. */
export function groupHeight(group: readonly { readonly height: number }[], around: number): number {
  if (group.length === 0) return 0;
  const sum = (list: typeof group) => list.reduce((total, { height }) => total + height, 0);
  const ends = group.map((_, at) =>
    Math.max(sum(group.slice(0, at + 1)), sum(group.slice(at + 1))),
  );
  return Math.min(...ends) + around;
}
