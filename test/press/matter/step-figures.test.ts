import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { gaugeBook } from '../../../src/gauges/index.ts';
import { drawingForms } from '../../../src/kinds/drawings.ts';
import { builtInKinds } from '../../../src/kinds/index.ts';
import { operationDrawings } from '../../../src/press/drawings/operation-drawings.ts';
import { stepFigures, withFigures } from '../../../src/press/matter/step-figures.ts';
import { readSheet } from '../../../src/sheet/index.ts';
import { extentOf } from '../drawings/read-svg.ts';

const kinds = builtInKinds();
const folder = new URL('../../../sheets/', import.meta.url);

function read(text: string) {
  const gauges = gaugeBook();
  const sheet = readSheet(text, 'sheets/x.md', { kinds, gauges, wireGauge: null });
  return { sheet, kind: kinds.get(sheet.unit.kind?.value ?? '') ?? null };
}

const demo = readFileSync(new URL('orlo-t71-wexcombe-six.md', folder), 'utf8');

function figuresOf(text: string, name: string, texts = new Map<string, string>(), narrow = false) {
  const { sheet } = read(text);
  const operation = sheet.operations.find(({ known }) => known?.name === name);
  if (operation === undefined) throw new Error(`no ${name}`);
  return stepFigures(sheet, operation, { prefix: 'unit-1', narrow, texts });
}

describe('which figure stands with an operation', () => {
  test('the drawing of its kind, in its own size, with words for who cannot see it', () => {
    const html = figuresOf(demo, 'float-drop')?.html ?? '';
    expect(html).toContain('<div class="drawings beside"><figure><svg ');
    expect(html).toContain(
      '<desc id="unit-1-words">Bowl cover upright, gasket removed. From the bowl cover to the float: 23/32 ± 1/32 in.</desc>',
    );
    // 23/32 in, which is 18.256 mm, at half size below the cover's face.
    expect(html).toContain('Gap drawn half size');
    expect(extentOf(html, 'cover').bottom).toBe(0);
  });

  test('none where the sheet has a picture of its own', () => {
    expect(figuresOf(demo, 'float-level')).toBeNull();
    const bare = demo.replace(/!\[[^\]]*\]\(pictures\/float-level.svg\)/, '');
    expect(figuresOf(bare, 'float-level')?.html).toContain('13/64 drill');
  });

  test('a club’s own picture in place of it, for the operation before that for the drawing', () => {
    const svg = '<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>';
    const data = Buffer.from(svg).toString('base64');
    const one = figuresOf(demo, 'float-drop', new Map([['drawings/float-drop.svg', svg]]));
    expect(one?.html).toContain(`<img src="data:image/svg+xml;base64,${data}" alt="Float drop">`);
    expect(one?.html).not.toContain('script');
    const all = figuresOf(demo, 'float-drop', new Map([['drawings/float-height.svg', svg]]));
    expect(all?.html).toContain('alt="Bowl cover upright, gasket removed. From');
  });

  test('below the steps in a narrow column, and where there are several', () => {
    expect(figuresOf(demo, 'float-drop', new Map(), true)?.beside).toBe(false);
    const both = figuresOf(demo, 'initial-idle');
    expect(both?.count).toBe(2);
    expect(both?.beside).toBe(false);
    const ids = [...(both?.html ?? '').matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});

describe('what a sheet does not say is not drawn', () => {
  const without = (from: RegExp, to = '') => {
    expect(demo).toMatch(from);
    return demo.replace(from, to);
  };

  test('which edge of a plate', () => {
    expect(figuresOf(demo, 'unloader')?.html).toContain('upper edge');
    expect(figuresOf(without(/at: upper edge of the choke plate/), 'unloader')).toBeNull();
    const lower = without(/at: upper edge of the choke plate/, 'at: lower edge of the choke plate');
    expect(figuresOf(lower, 'unloader')?.html).toContain('lower edge');
  });

  test('how the cover lies, and from where it is measured', () => {
    expect(figuresOf(without(/cover: upright/), 'float-drop')).toBeNull();
    const seam = demo.replaceAll('at: free end of the float', 'at: seam of the float');
    expect(figuresOf(seam, 'float-drop')).toBeNull();
  });

  test('a size in a dimension that the drawing has not got', () => {
    const angle = demo.replace(
      /value: 23\/32 ± 1\/32 in\n {4}also: .*\n {4}gauge: .*\n/,
      'value: 30°\n',
    );
    expect(angle).not.toBe(demo);
    expect(figuresOf(angle, 'float-drop')).toBeNull();
  });
});

describe('where it stands', () => {
  const list = (text: string, setting: boolean) => ({
    type: 'element' as const,
    tagName: 'ol',
    properties: {},
    children: [
      {
        type: 'element' as const,
        tagName: 'span',
        properties: setting ? { className: ['values'] } : {},
        children: [{ type: 'text' as const, value: text }],
      },
    ],
  });
  const nodes = [list('first', false), list('second', true), list('third', true)];

  test('with the first list that prints a setting: before it beside, after it below', () => {
    const figure = { html: '<div></div>', beside: true, count: 1 };
    const [first, second, third] = withFigures(nodes, figure);
    expect(first).toBe(nodes[0]);
    expect(third).toBe(nodes[2]);
    expect(second).toMatchObject({
      properties: { className: ['with-drawing'] },
      children: [{ type: 'raw', value: '<div></div>' }, nodes[1]],
    });
    expect(withFigures(nodes, { ...figure, beside: false, count: 2 })).toMatchObject([
      nodes[0],
      nodes[1],
      { type: 'raw' },
      nodes[2],
    ]);
    expect(withFigures(nodes, null)).toBe(nodes);
  });
});

test('the demo shows every drawing that there is, and each fits a column of half a letter page', () => {
  const shown = new Map<string, number>();
  for (const name of readdirSync(folder).filter((each) => each.endsWith('.md'))) {
    const { sheet } = read(readFileSync(new URL(name, folder), 'utf8'));
    for (const operation of sheet.operations) {
      for (const drawing of operationDrawings(sheet, operation, {
        prefix: 'x',
        alone: true,
      })) {
        shown.set(drawing.shows, (shown.get(drawing.shows) ?? 0) + 1);
        expect(drawing.widthMm, `${name} ${drawing.shows}`).toBeLessThan(72);
        expect(drawing.heightMm, `${name} ${drawing.shows}`).toBeLessThan(72);
      }
    }
  }
  console.log([...shown].map(([name, count]) => `${name} ${count}`).join(', '));
  expect([...shown.keys()].sort()).toEqual(Object.keys(drawingForms).sort());
});
