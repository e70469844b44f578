import { describe, expect, test } from 'vitest';
import { bookletModel } from '../../src/press/booklet/model.ts';
import { cardModel } from '../../src/press/card/model.ts';
import { capHeightsByFamily } from '../../src/press/html/font-faces.ts';
import { render } from '../../src/press/html/render.ts';
import { orderGraph } from '../../src/press/order-picture/model.ts';
import { unitMatter } from '../../src/press/site/unit-model.ts';
import { blankRecord } from '../../src/report/record-blank.ts';
import { settingLabel, tasksOf } from '../../src/sheet/index.ts';
import type { Sheet } from '../../src/sheet/model.ts';
import { demoEdition, demoSheets } from './demo-sheets.ts';
import { builtInTemplates } from './stand.ts';

// One number a task: a setting and the task that makes it carry one number wherever they are printed.

const sheets = demoSheets();
const { facts } = demoEdition();
const booklet = bookletModel(sheets, facts, { paper: 'half-letter', draft: false, picture: null });
const templates = builtInTemplates();

/** `5a Idle mixture`, a line a setting. */
function numbered(rows: readonly { readonly number: string; readonly label: string }[]): string[] {
  return rows.map(({ number, label }) => `${number} ${label}`);
}

/** `5 Float level`, a line a task, headings without the marks of HTML. */
function titled(
  operations: readonly { readonly number: number | null; readonly title: string }[],
): string[] {
  return operations
    .filter(({ number }) => number !== null)
    .map(({ number, title }) => `${number} ${title.replace(/<[^>]*>/g, '')}`);
}

function wanted(sheet: Sheet) {
  const { tasks, settings } = tasksOf(sheet);
  return {
    settings: settings.map(({ number, setting }) => `${number} ${settingLabel(setting)}`),
    tasks: tasks.map(
      ({ number, operation }) =>
        `${number} ${operation.heading.value.replace(/\s*\{#[^}]*\}\s*$/, '')}`,
    ),
  };
}

describe.each(sheets.map((entry, index) => ({ name: entry.sheet.file, entry, index })))(
  'of $name',
  ({ entry, index }) => {
    const { sheet } = entry;
    const want = wanted(sheet);

    test('every setting goes by the number of a task that it has', () => {
      const { settings, tasks } = tasksOf(sheet);
      for (const { number, task } of settings) {
        expect(number.replace(/[a-z]+$/, '')).toBe(String(task));
        expect(tasks.some((each) => each.number === task)).toBe(true);
      }
    });

    test('the card says so, settings and tasks', async () => {
      const model = cardModel(sheet, [], facts, {
        paper: 'letter',
        draft: false,
        picture: null,
        capHeights: capHeightsByFamily(templates),
        readings: null,
      });
      expect(numbered(model.settings)).toEqual(want.settings);
      expect(titled(model.operations)).toEqual(want.tasks);
      const html = await render('card.hbs', model, templates);
      const printed = [...html.matchAll(/<td class="n"[^>]*>([^<]*)</g)].map(([, text]) => text);
      expect(printed).toEqual(tasksOf(sheet).settings.map(({ number }) => number));
    });

    test('the chapter says so', () => {
      const chapter = booklet.chapters[index];
      expect(numbered(chapter?.settings ?? [])).toEqual(want.settings);
      expect(titled(chapter?.operations ?? [])).toEqual(want.tasks);
    });

    test('fault finding leads to a setting by the same number', () => {
      const numbers = new Map(
        tasksOf(sheet).settings.map(({ number, setting }) => [settingLabel(setting), number]),
      );
      const led = (booklet.chapters[index]?.checks ?? []).flatMap(({ checks }) =>
        checks.map(({ label, number }) => ({ label, task: number })),
      );
      expect(led.length).toBeGreaterThan(0);
      for (const { label, task } of led) expect(task).toBe(numbers.get(label));
    });

    test('the picture of the order says so', () => {
      if (sheet.kind === null) throw new Error('no kind');
      const boxes = orderGraph(sheet, sheet.kind).boxes.map(
        ({ number, label }) => `${number} ${label}`,
      );
      expect(want.tasks).toEqual(expect.arrayContaining(boxes));
    });

    test('the page for telephones says so', () => {
      const page = unitMatter(entry, index + 1, {
        facts: { altitude: null },
        picture: null,
        texts: new Map(),
        pages: new Set(),
      });
      expect(numbered(page.settings)).toEqual(want.settings);
      expect(titled(page.operations)).toEqual(want.tasks);
    });

    test('the blank record says so', () => {
      const blank = blankRecord({ sheet, id: 'unit', serial: null, schema: 'x' });
      const said = [...blank.matchAll(/^ {2}# (\w+) {2}([^:\n]*)/gm)].map(
        ([, number, label]) => `${number} ${label}`,
      );
      expect(said).toEqual(want.settings);
    });
  },
);
