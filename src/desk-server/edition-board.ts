import { basename } from 'node:path';
import { acrossChecks, runAcross, type SheetFacts, sheetFacts } from '../checks/index.ts';
import type {
  EditionFinding,
  EditionState,
  FileLine,
  FindingCounts,
  FoundLine,
  KindLine,
  SheetLine,
} from '../desk-page/model.ts';
import { gaugeBook } from '../gauges/index.ts';
import { examineFile, type FileFaults, fileId, ownFiles, type Project } from '../project/index.ts';
import { findIn, queryOf } from '../report/find/index.ts';
import { type PlacedFinding, placeAcross, placeFindings } from '../report/index.ts';
import type { Sheet } from '../sheet/model.ts';

/** More places nobody reads through. */
const mostFound = 200;

interface Entry {
  readonly line: Omit<SheetLine, 'unsaved' | 'left' | 'id'>;
  readonly facts: SheetFacts | null;
  /** Whether it changes with the sheets that it is based on. */
  readonly based: boolean;
  /** As it was read, without its tree: what searches look at. */
  readonly sheet: Sheet | null;
}

/**
 * What is known of the whole edition: every sheet as it stands in its file, read one at a time between
 * requests, and what lies between them.
 */
export class EditionBoard {
  #project: Project;
  readonly #entries = new Map<string, Entry>();
  readonly #changed: () => void;
  #waiting: string[] = [];
  #across: readonly EditionFinding[] = [];
  #faults: readonly EditionFinding[] = [];
  #runs = false;
  #closed = false;

  constructor(project: Project, changed: () => void) {
    this.#project = project;
    this.#changed = changed;
    this.#begin(project.sheets());
  }

  /** Goes on with the project as it was opened anew: everything is read again. */
  reopen(project: Project): void {
    this.#project = project;
    const there = new Set(project.sheets());
    for (const path of this.#entries.keys()) if (!there.has(path)) this.#entries.delete(path);
    this.#begin(project.sheets());
  }

  /** Reads these sheets again, and those that are based on any. */
  again(paths: readonly string[]): void {
    const based = [...this.#entries].filter(([, entry]) => entry.based).map(([path]) => path);
    const there = new Set(this.#project.sheets());
    this.#begin([...new Set([...paths, ...based])].filter((path) => there.has(path)));
  }

  /** Where the sheets say something: a size in any notation, a setting, a source, words. */
  find(text: string): readonly FoundLine[] {
    const gauges = gaugeBook();
    const project = this.#project;
    const ids = new Map(project.sheets().map((path) => [project.show(path), fileId(path)]));
    const sheets = project.sheets().flatMap((path) => this.#entries.get(path)?.sheet ?? []);
    return findIn(sheets, queryOf(text, gauges), gauges)
      .slice(0, mostFound)
      .map(({ sheet, title, file, line, column, label, written, off }) => ({
        sheet: ids.get(file) ?? sheet,
        words: [label, written].filter((each) => each !== '').join(': '),
        where: [title, off].filter((each) => each !== null).join(', '),
        line,
        column,
      }));
  }

  close(): void {
    this.#closed = true;
  }

  /** The state to show; `unsaved` tells of sheets with something typed that is not in their files. */
  state(unsaved: (id: string) => boolean): EditionState {
    const { edition } = this.#project.edition();
    const paths = new Map(this.#project.sheets().map((path) => [fileId(path), path]));
    const order = edition?.sheets?.filter((id) => paths.has(id)) ?? [];
    const rest = [...paths.keys()].filter((id) => !order.includes(id));
    const listed = edition?.sheets !== null && edition !== null;
    const sheets = [...new Set(order), ...rest].map((id): SheetLine => {
      const entry = this.#entries.get(paths.get(id) ?? '');
      return {
        ...(entry?.line ?? { title: id, kind: null, status: null, counts: null, refused: null }),
        id,
        unsaved: unsaved(id),
        left: listed && !order.includes(id),
      };
    });
    return {
      title: edition?.facts.title ?? null,
      club: edition?.facts.club ?? null,
      folder: basename(this.#project.root),
      sheets,
      findings: [...this.#faults, ...this.#across],
      kinds: [...this.#project.kinds.values()].map((kind) =>
        kindLine(kind, this.#project.kindFile(kind.name) !== null),
      ),
      files: ownFiles(this.#project).map(({ id, sort }) => ({
        id,
        sort,
        title: this.#titleOf(id, sort),
        unsaved: unsaved(id),
      })),
      begun: this.#project.isProject,
      done: this.#waiting.length === 0,
    };
  }

  #titleOf(id: string, sort: FileLine['sort']): string {
    if (sort === 'edition') return 'The edition';
    if (sort === 'sources') return 'Shared sources';
    const kind = [...this.#project.kinds.values()].find(({ name }) =>
      this.#project.kindFile(name)?.endsWith(id),
    );
    return kind?.title ?? id.replace(/^kinds\//, '');
  }

  #begin(paths: readonly string[]): void {
    this.#waiting = [...new Set([...this.#waiting, ...paths])];
    if (this.#runs) return;
    this.#runs = true;
    // The page comes first, and every request after it between two sheets.
    setTimeout(() => void this.#work(), 20);
  }

  async #work(): Promise<void> {
    let told = performance.now();
    while (this.#waiting.length > 0 && !this.#closed) {
      const path = this.#waiting.shift();
      if (path !== undefined) this.#entries.set(path, this.#entryOf(path));
      await new Promise((done) => setImmediate(done));
      if (performance.now() - told > 400) {
        told = performance.now();
        this.#changed();
      }
    }
    this.#runs = false;
    if (this.#closed) return;
    this.#across = this.#findAcross();
    this.#faults = await this.#findFaults();
    this.#changed();
  }

  #entryOf(path: string): Entry {
    const examined = examineFile(this.#project, path);
    const id = fileId(path);
    if (!examined.ok) {
      const { message } = examined.refused;
      const line = { title: id, kind: null, status: null, counts: null, refused: message };
      return { line, facts: null, based: false, sheet: null };
    }
    const { sheet, findings } = examined;
    return {
      line: {
        title: sheet.title?.value ?? id,
        kind: sheet.kind?.name ?? sheet.unit.kind?.value ?? null,
        status: sheet.status?.value ?? null,
        counts: countsOf(findings),
        refused: null,
      },
      facts: sheetFacts(sheet),
      based: sheet.family !== null,
      sheet: { ...sheet, tree: null },
    };
  }

  #findAcross(): readonly EditionFinding[] {
    const project = this.#project;
    const facts = project.sheets().flatMap((path) => this.#entries.get(path)?.facts ?? []);
    const ids = new Map(project.sheets().map((path) => [project.show(path), fileId(path)]));
    const found = runAcross(acrossChecks, facts, project.context(project.root));
    return placeAcross(found).flatMap(({ file, findings }) =>
      findings.map((finding) => ({ sheet: ids.get(file) ?? null, finding })),
    );
  }

  async #findFaults(): Promise<readonly EditionFinding[]> {
    const project = this.#project;
    const faults = [
      project.edition().faults,
      project.sharedSources().faults(),
      ...project.kindFaults,
      ...(await project.templateFaults()),
    ];
    return faults
      .flatMap((each) => placedFaults(each))
      .map((finding) => ({ sheet: null, finding }));
  }
}

function placedFaults(faults: FileFaults | null): readonly PlacedFinding[] {
  return faults === null ? [] : placeFindings(faults.findings, faults.lines);
}

function countsOf(
  findings: readonly { readonly severity: string; readonly accepted: string | null }[],
): FindingCounts {
  const count = (severity: string) =>
    findings.filter((each) => each.accepted === null && each.severity === severity).length;
  return { errors: count('error'), warnings: count('warning'), notes: count('note') };
}

function kindLine({ name, title, features, oneOf }: KindOf, own: boolean): KindLine {
  return {
    own,
    name,
    title,
    features: [...features.values()].map((feature) => ({
      name: feature.name,
      label: feature.label,
    })),
    oneOf,
  };
}

type KindOf = Project['kinds'] extends ReadonlyMap<string, infer K> ? K : never;
