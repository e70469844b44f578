import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { bookletModel, builtInSections } from '../../../src/press/booklet/model.ts';
import { cardModel } from '../../../src/press/card/model.ts';
import { capHeightsByFamily } from '../../../src/press/html/font-faces.ts';
import type { SheetToPrint } from '../../../src/press/index.ts';
import { placeholders } from '../../../src/press/orders/wording.ts';
import { templateShapes } from '../../../src/press/style/check-style.ts';
import type { Shape } from '../../../src/press/style/shape.ts';
import { examineFile } from '../../../src/project/examine-file.ts';
import { openProject } from '../../../src/project/project.ts';
import { builtInTemplates } from '../stand.ts';

const root = join(import.meta.dirname, '../../..');
const project = openProject(root, root);
const edition = project.edition().edition;
const templates = builtInTemplates();

function demo(): SheetToPrint[] {
  return project.sheets().map((path) => {
    const examined = examineFile(project, path);
    if (!examined.ok) throw new Error(path);
    const { sheet, findings } = examined;
    return { sheet, findings, kind: project.kinds.get(sheet.unit.kind?.value ?? '') ?? null };
  });
}

/** Where a value is not what its description says; what was met is noted in `met`. */
function differences(value: unknown, shape: Shape, path: string, met: Set<string>): string[] {
  met.add(path);
  if (value === null) return [];
  if (shape.is === 'list') {
    if (!Array.isArray(value)) return [`${path} is no list`];
    return value.flatMap((each) => differences(each, shape.of, `${path}[]`, met));
  }
  if (shape.is === 'fields') {
    if (typeof value !== 'object') return [`${path} has no fields`];
    const fields = value as Record<string, unknown>;
    const undescribed = Object.keys(fields).filter((name) => !Object.hasOwn(shape.fields, name));
    const absent = Object.keys(shape.fields).filter((name) => !Object.hasOwn(fields, name));
    return [
      ...undescribed.map((name) => `${path}.${name} is not described`),
      ...absent.map((name) => `${path}.${name} is described and not there`),
      ...Object.entries(shape.fields).flatMap(([name, field]) =>
        Object.hasOwn(fields, name) ? differences(fields[name], field, `${path}.${name}`, met) : [],
      ),
    ];
  }
  const is = typeof value;
  const fits = shape.is === 'number' ? 'number' : shape.is === 'flag' ? 'boolean' : 'string';
  return is === fits ? [] : [`${path} is ${is}, and described as ${shape.is}`];
}

function shapeOf(name: string): Shape {
  const shape = templateShapes.get(name);
  if (shape === undefined) throw new Error(name);
  return shape;
}

describe('what templates are given is what is described', () => {
  test('for the card of every sheet of the demo', () => {
    const met = new Set<string>();
    const found = demo().flatMap(({ sheet, findings }) => {
      const model = cardModel(sheet, findings, edition?.facts ?? null, {
        paper: 'letter',
        draft: false,
        picture: null,
        capHeights: capHeightsByFamily(templates),
        readings: null,
      });
      return differences(model, shapeOf('card.hbs'), 'card', met);
    });
    expect(new Set(found)).toEqual(new Set());
    expect(met).toContain('card.settings[].values[].others[]');
  });

  test('for the booklet of the demo', () => {
    if (edition === null) throw new Error('no edition');
    const met = new Set<string>();
    const model = bookletModel(demo(), edition.facts, {
      paper: 'half-letter',
      draft: false,
      picture: null,
      texts: templates.texts,
    });
    expect(new Set(differences(model, shapeOf('booklet.hbs'), 'booklet', met))).toEqual(new Set());
    expect(met).toContain('booklet.chapters[].settings[].worked[].text');
    expect(met).toContain('booklet.gauges[].gauges[].usedBy[].anchor');
  });
});

describe('the built-in templates', () => {
  const files = readdirSync(join(root, 'templates'), { recursive: true, encoding: 'utf8' });
  const all = files
    .filter((name) => name.endsWith('.hbs'))
    .map((name) => readFileSync(join(root, 'templates', name), 'utf8'))
    .join('\n');

  const site = readFileSync(join(root, 'src/press/site/site.ts'), 'utf8');

  test('use every key of the words, and every brace of a key', () => {
    for (const [key, line] of templates.wording) {
      const section = /^section-(.+)$/.exec(key)?.[1] ?? '';
      if (Object.hasOwn(builtInSections, section)) {
        expect(builtInSections[section as keyof typeof builtInSections].title).toBe(line);
        continue;
      }
      if (!site.includes(`'${key}'`)) expect(all, key).toContain(`say "${key}"`);
      for (const name of placeholders(line)) expect(all, key).toMatch(new RegExp(`\\b${name}=`));
    }
  });

  test('that are filled are all described', () => {
    const whole = files.filter((name) => name.endsWith('.hbs') && !name.startsWith('partials'));
    expect([...templateShapes.keys()].sort()).toEqual(
      whole.map((name) => name.replaceAll('\\', '/')).sort(),
    );
  });
});
