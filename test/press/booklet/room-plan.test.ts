import { describe, expect, test } from 'vitest';
import { groupHeight, planRooms } from '../../../src/press/booklet/room-plan.ts';

const tasks = (...heights: readonly number[]) =>
  heights.map((height, at) => ({ number: at + 1, height }));
const waiting = (...all: readonly (readonly [due: number, height: number])[]) =>
  all.map(([due, height]) => ({ due, height }));

describe('what waits for its task', () => {
  test('stands right before it, and not earlier, where nothing is left open', () => {
    const plan = planRooms({
      page: 100,
      start: 0,
      around: 0,
      tasks: tasks(20, 20, 20),
      waiting: waiting([3, 20], [3, 20]),
    });
    expect(plan.rooms).toEqual([
      { early: [], late: [] },
      { early: [], late: [] },
      { early: [], late: [0, 1] },
    ]);
    expect([plan.pages, plan.end]).toEqual([0, 80]);
  });

  test('goes to the foot of a page that the next task leaves open, exactly as much as has room', () => {
    const open = (height: number) =>
      planRooms({
        page: 100,
        start: 0,
        around: 0,
        tasks: tasks(70, 60, 10),
        waiting: waiting([3, height], [3, height]),
      });
    expect(open(30).rooms[1]).toEqual({ early: [0, 1], late: [] });
    expect(open(30.1).rooms[1]).toEqual({ early: [], late: [] });
    expect(open(30.1).rooms[2]).toEqual({ early: [0, 1], late: [] });
    expect([open(30).pages, open(30).end]).toEqual([1, 70]);
  });

  test('what is due sooner goes before what is due later, and both keep the order of harm', () => {
    const { rooms } = planRooms({
      page: 100,
      start: 80,
      around: 0,
      tasks: tasks(50, 10, 10),
      waiting: waiting([3, 20], [1, 20], [1, 20]),
    });
    expect(rooms[0]).toEqual({ early: [1, 2], late: [] });
    expect(rooms[2]).toEqual({ early: [], late: [0] });
  });

  test('is never left out, even where no page has room for it', () => {
    const { rooms } = planRooms({
      page: 100,
      start: 40,
      around: 5,
      tasks: tasks(90, 90),
      waiting: waiting([1, 300], [2, 70], [2, 60]),
    });
    const all = rooms.flatMap(({ early, late }) => [...early, ...late]);
    expect([...all].sort()).toEqual([0, 1, 2]);
  });

  test('two columns end as low as they can, and an empty group has no height', () => {
    expect(groupHeight([{ height: 30 }, { height: 20 }, { height: 20 }], 4)).toBe(44);
    expect(groupHeight([], 4)).toBe(0);
  });
});
