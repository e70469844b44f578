import type { Kind } from '../kinds/model.ts';
import { readStatement, type WireGauge, wireGaugeNamed } from '../quantity/index.ts';
import type { GaugeBook } from '../quantity/model.ts';
import {
  LineIndex,
  type PlacedMap,
  type PlacedNode,
  plainValue,
  type Span,
  type YamlRead,
} from '../text/index.ts';
import { emptyBody, readBody } from './body.ts';
import { beyondBounds } from './bounds.ts';
import { encodingProblems } from './encoding.ts';
import type { FamilyBook } from './family.ts';
import { entriesOf, Fields, type ReadSize, under } from './fields.ts';
import { secondSheetAt } from './front-matter.ts';
import { readHeader } from './header.ts';
import { type HouseTolerances, houseTolerancesOf } from './house-tolerance.ts';
import { parseMarkdown } from './markdown.ts';
import type { RecordBook } from './measured-readings.ts';
import type { ReadProblem, Sheet } from './model.ts';
import { basedOn, kindOf, type Member, readMember, resolveFamily } from './resolve-family.ts';
import { schemaProblems } from './schema.ts';
import type { SharedSources } from './shared-sources.ts';

export interface ReadSheetOptions {
  readonly kinds: ReadonlyMap<string, Kind>;
  readonly gauges: GaugeBook;
  /** What the edition says a bare `SWG` means, `imperial` or `us-steel`; the sheet's word goes first. */
  readonly wireGauge: string | null;
  /** The sheets that this one may be based on; absent or null where none are known. */
  readonly family?: FamilyBook | null;
  /** What the project's `sources.yaml` describes; absent or null where there is none. */
  readonly sharedSources?: SharedSources | null;
  /** The bench records beside it; absent or null where none are known. */
  readonly records?: RecordBook | null;
  /** The edition's tolerances for what no source states; absent or null where it has none. */
  readonly houseTolerances?: HouseTolerances | null;
  /** How sizes are read; `readStatement` of `quantity` if left out. */
  readonly readSize?: ReadSize;
}

/**
 * Reads one sheet. Never throws, whatever the text: what cannot be read is among `problems`, and
 * what can is in its place.
 */
export function readSheet(text: string, file: string, options: ReadSheetOptions): Sheet {
  const own = readMember({ file, text });
  const based = basedOn(own);
  const found =
    based === null ? null : resolveFamily(own, based, options.family ?? null, options.kinds);
  const resolved = found !== null && 'family' in found ? found : null;
  const whole = resolved?.text ?? text;
  const bodyStart = resolved?.bodyStart ?? own.place.bodyStart;
  const root = resolved?.root ?? own.yaml?.root ?? null;
  const kind = kindOf(root ? [root] : [], options.kinds);
  const swg = systemOf(root, options.wireGauge);
  const shared = options.sharedSources ?? null;
  const sources = new Set([...entriesOf(under(root, 'sources')).keys(), ...(shared?.keys() ?? [])]);
  const readSize = options.readSize ?? readStatement;
  const fields = new Fields(whole, readSize, options.gauges, swg, sources);
  const house = houseTolerancesOf(options.houseTolerances ?? null, kind, options.gauges);
  const header = readHeader(root, fields, kind, shared, options.records ?? null, house);
  const beyond = beyondBounds(whole, bodyStart);
  const second = own.place.content === null ? null : secondSheetAt(whole, bodyStart);
  // What belongs to a second sheet is no work of the first.
  const work = second === null ? whole : whole.slice(0, second.start);
  const tree = beyond ? null : parseMarkdown(work, bodyStart);
  const problems = [...encodingProblems(whole)];
  if (found === null) problems.push(...frontMatterProblems(own));
  else if (resolved === null) problems.push(found as ReadProblem);
  else problems.push(...resolved.problems, ...mergedProblems(own, resolved.root));
  if (second) problems.push(joined(second));
  if (beyond) problems.push(beyond);
  else if (!tree) problems.push(unparsed);
  let lines: LineIndex | null = null;
  return {
    file,
    text: whole,
    // Lines are counted when somebody asks for the first of them.
    get lines() {
      lines ??= new LineIndex(whole);
      return lines;
    },
    family: resolved?.family ?? null,
    ...header,
    ...(tree ? readBody(tree, work, header) : emptyBody()),
    problems: problems.sort((a, b) => a.span.start - b.span.start || a.span.end - b.span.end),
    tree,
    bodyStart,
    frontMatter: own.place.content,
    front: own.yaml?.root?.kind === 'map' ? own.yaml.root : null,
  };
}

function joined(span: Span): ReadProblem {
  return {
    kind: 'joined',
    span,
    message: 'a second sheet starts here in the same file',
    fix: 'put it into a file of its own: from here on nothing is read',
  };
}

const unparsed: ReadProblem = {
  kind: 'limits',
  span: { start: 0, end: 0 },
  message: 'the Markdown below the front matter is nested too deep to be read',
  fix: 'take out what does not belong in a sheet',
};

function frontMatterProblems({ place, yaml }: Member): ReadProblem[] {
  if (place.problem) return [place.problem];
  if (!yaml || !place.content) return [];
  const problems = yamlProblems(yaml);
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

/** Of a variant the schema sees what it is in full; its bases' own YAML is told where they are checked. */
function mergedProblems({ yaml }: Member, root: PlacedMap): ReadProblem[] {
  const merged = { root, value: plainValue(root) };
  return [...(yaml ? yamlProblems(yaml) : []), ...schemaProblems(merged)];
}

function yamlProblems(yaml: YamlRead): ReadProblem[] {
  return yaml.problems.map((problem) => ({
    kind: problem.kind === 'limits' ? 'limits' : 'front-matter',
    span: problem.span,
    message: problem.message,
    fix: problem.fix,
    ...(problem.write ? { write: problem.write } : {}),
    ...(problem.related ? { related: [problem.related] } : {}),
  }));
}

function systemOf(root: PlacedNode | null, edition: string | null): WireGauge | null {
  const own = under(root, 'wire-gauge');
  const word = own?.kind === 'scalar' ? own.text : edition;
  return wireGaugeNamed(word);
}
