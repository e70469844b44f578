import type { Kind } from '../kinds/model.ts';
import { readStatement } from '../quantity/index.ts';
import type { GaugeBook } from '../quantity/model.ts';
import { LineIndex } from '../text/span.ts';
import { type PlacedNode, readYaml, usualYamlLimits, type YamlRead } from '../text/yaml-places.ts';
import { emptyBody, readBody } from './body.ts';
import { beyondBounds } from './bounds.ts';
import { encodingProblems } from './encoding.ts';
import { Fields, type ReadSize, under } from './fields.ts';
import { type FrontMatterPlace, findFrontMatter } from './front-matter.ts';
import { readHeader } from './header.ts';
import { parseMarkdown } from './markdown.ts';
import type { ReadProblem, Sheet } from './model.ts';
import { schemaProblems } from './schema.ts';

export type * from './model.ts';

export interface ReadSheetOptions {
  readonly kinds: ReadonlyMap<string, Kind>;
  readonly gauges: GaugeBook;
  /** What the edition says a bare `SWG` means, `imperial` or `us-steel`; the sheet's word goes first. */
  readonly wireGauge: string | null;
  /** How sizes are read; `readStatement` of `quantity` if left out. */
  readonly readSize?: ReadSize;
}

/**
 * Reads one sheet. Never throws, whatever the text: what cannot be read is among `problems`, and
 * what can is in its place.
 */
export function readSheet(text: string, file: string, options: ReadSheetOptions): Sheet {
  const base = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  const place = findFrontMatter(text, base);
  const yaml = readFrontMatter(text, place);
  const root = yaml?.root ?? null;
  const kind = kindOf(root, options.kinds);
  const swg = systemOf(root, options.wireGauge);
  const fields = new Fields(text, options.readSize ?? readStatement, options.gauges, swg);
  const beyond = beyondBounds(text, place.bodyStart);
  const tree = beyond ? null : parseMarkdown(text, place.bodyStart);
  const problems = [...encodingProblems(text), ...frontMatterProblems(place, yaml)];
  if (beyond) problems.push(beyond);
  else if (!tree) problems.push(unparsed);
  let lines: LineIndex | null = null;
  return {
    file,
    text,
    // Lines are counted when somebody asks for the first of them.
    get lines() {
      lines ??= new LineIndex(text);
      return lines;
    },
    ...readHeader(root, fields, kind),
    ...(tree ? readBody(tree, text, kind) : emptyBody()),
    problems: problems.sort((a, b) => a.span.start - b.span.start || a.span.end - b.span.end),
    tree,
    frontMatter: place.content,
  };
}

const unparsed: ReadProblem = {
  kind: 'limits',
  span: { start: 0, end: 0 },
  message: 'the Markdown below the front matter is nested too deep to be read',
  fix: 'take out what does not belong in a sheet',
};

/** Front matter is a quarter of a long sheet at most. */
const yamlLimits = { ...usualYamlLimits, size: 64 * 1024, nodes: 5000 };

function readFrontMatter(text: string, { content }: FrontMatterPlace): YamlRead | null {
  if (!content) return null;
  return readYaml(text.slice(content.start, content.end), content.start, yamlLimits);
}

function frontMatterProblems(place: FrontMatterPlace, yaml: YamlRead | null): ReadProblem[] {
  if (place.problem) return [place.problem];
  if (!yaml || !place.content) return [];
  const problems: ReadProblem[] = yaml.problems.map((problem) => ({
    kind: problem.kind === 'limits' ? 'limits' : 'front-matter',
    span: problem.span,
    message: problem.message,
    fix: problem.fix,
    ...(problem.related ? { related: [problem.related] } : {}),
  }));
  if (problems.length > 0 && !yaml.sound) return problems;
  if (yaml.root?.kind !== 'map') {
    const found =
      !yaml.root || yaml.root.kind === 'null'
        ? 'is empty'
        : `is a ${yaml.root.kind === 'list' ? 'list' : 'single text'}, not keys with values`;
    problems.push({
      kind: 'front-matter',
      span: yaml.root?.span ?? place.content,
      message: `the front matter ${found}`,
      fix: 'write it as `key: value` lines, from `gaugeleaf: 1` on',
    });
    return problems;
  }
  return [...problems, ...schemaProblems(yaml)];
}

function kindOf(root: PlacedNode | null, kinds: ReadonlyMap<string, Kind>): Kind | null {
  const name = under(under(root, 'unit'), 'kind');
  if (name?.kind !== 'scalar') return null;
  return kinds.get(name.text) ?? kinds.get(name.text.trim().toLowerCase()) ?? null;
}

function systemOf(root: PlacedNode | null, edition: string | null): 'imperial' | 'us-steel' | null {
  const own = under(root, 'wire-gauge');
  const word = own?.kind === 'scalar' ? own.text : edition;
  return word === 'imperial' || word === 'us-steel' ? word : null;
}
