import { basename, dirname, join } from 'node:path';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import {
  acrossChecks,
  type CheckContext,
  runAcross,
  type SheetFacts,
  sheetFacts,
} from '../checks/index.ts';
import { documentOf, openDocument } from '../desk/index.ts';
import type { DeskDocument } from '../desk/model.ts';
import { fileMark, openProject, type Project, readOwnText } from '../project/index.ts';
import { type FileReport, placeAcross } from '../report/index.ts';
import type { SheetText } from '../sheet/index.ts';

/** A sheet of the project, as it stands in an editor or in its file. */
interface Shelved {
  /** Changes with the text. */
  readonly mark: string;
  readonly document: DeskDocument;
  /** Null where it has none that others could be held against. */
  readonly facts: SheetFacts | null;
}

/**
 * One project, with what was read of its sheets: what is open in an editor counts before what is saved, for
 * the sheet itself and for those that are based on it.
 */
export class Shelf {
  readonly root: string;
  #project: Project;
  #context: ((path: string) => CheckContext) | null = null;
  readonly #open: ReadonlyMap<string, TextDocument>;
  readonly #shelved = new Map<string, Shelved>();
  readonly #unreadable = new Map<string, string>();
  readonly #texts = new Map<string, { readonly version: number; readonly text: SheetText }>();
  #pathsByFile: Map<string, string> | null = null;

  /** `open` are the documents of the editor by their paths; it is looked at again each time. */
  constructor(folder: string, open: ReadonlyMap<string, TextDocument>) {
    this.#project = openProject(folder, folder);
    this.root = this.#project.root;
    this.#open = open;
  }

  get project(): Project {
    return this.#project;
  }

  /** Reads edition, kinds and sources anew, and forgets what was read by them. */
  reopen(): void {
    this.#project = openProject(this.root, this.root);
    this.#context = null;
    this.#pathsByFile = null;
    this.#shelved.clear();
  }

  /** Of a folder that is no project only what is open: it may be anything, and deep. */
  #sheets(): readonly string[] {
    return this.#project.isProject ? this.#project.sheets() : [...this.#open.keys()];
  }

  /** Whether a path is one of the project's sheets, as far as is known. */
  knows(path: string): boolean {
    return this.#sheets().includes(path);
  }

  /** Looks at what is open anew before it next tells the path of a file. */
  refile(): void {
    this.#pathsByFile = null;
  }

  /** The path of a file by the name that reports show. */
  pathOf(file: string): string {
    if (this.#pathsByFile === null) {
      const paths = [...this.#sheets(), ...this.#open.keys()];
      this.#pathsByFile = new Map(paths.map((path) => [this.#project.show(path), path]));
    }
    return this.#pathsByFile.get(file) ?? join(this.root, file);
  }

  /** A sheet that is open, read as it stands in the editor. */
  openSheet(path: string, { text }: { readonly text: string }): DeskDocument {
    return openDocument(text, this.#project.show(path), {
      context: this.contextOf(path),
      others: () => this.#others(path),
    });
  }

  /** What the checks may know for a sheet; bases that are open are taken from the editor. */
  contextOf(path: string): CheckContext {
    const context = (this.#context ?? this.#project.context)(path);
    const { family } = context;
    if (!family) return context;
    const find = (id: string): SheetText | null => {
      const other = join(dirname(path), `${id}.md`);
      const edited = /^[a-z0-9-]+$/.test(id) ? this.#open.get(other) : undefined;
      if (edited === undefined) return family.find(id);
      const known = this.#texts.get(other);
      if (known?.version === edited.version) return known.text;
      const text = { file: this.#project.show(other), text: edited.getText() };
      this.#texts.set(other, { version: edited.version, text });
      return text;
    };
    return Object.create(context, { family: { value: { ...family, find }, enumerable: true } });
  }

  /** The next sheet that is not read as it stands now; null where all are. */
  nextUnread(): string | null {
    return this.#sheets().find((path) => this.#isStale(path)) ?? null;
  }

  /** Reads a sheet for what others need of it; what cannot be read is left out. */
  read(path: string): void {
    const mark = this.markOf(path);
    const edited = this.#open.get(path);
    const file = this.#project.show(path);
    const read = edited
      ? { ok: true as const, text: edited.getText() }
      : readOwnText(this.#project.root, path, file);
    if (!read.ok) {
      this.#shelved.delete(path);
      this.#unreadable.set(path, mark);
      return;
    }
    this.take(path, mark, openDocument(read.text, file, { context: this.contextOf(path) }));
  }

  /** Keeps what others need of a sheet, and lets its tree and prose go. */
  take(path: string, mark: string, { sheet, project }: DeskDocument): void {
    const facts = sheetFacts(sheet);
    const light = { ...sheet, tree: null, prose: [], html: [], problems: [] };
    this.#shelved.set(path, { mark, document: documentOf(light, [], project), facts });
  }

  /** What changes with the text of a sheet: its version in the editor, or how its file stands. */
  markOf(path: string): string {
    const edited = this.#open.get(path);
    if (edited !== undefined) return `v${edited.version}`;
    return fileMark(path) ?? 'gone';
  }

  #isStale(path: string): boolean {
    const mark = this.markOf(path);
    return this.#shelved.get(path)?.mark !== mark && this.#unreadable.get(path) !== mark;
  }

  *#others(path: string): Generator<DeskDocument> {
    for (const [other, { document }] of this.#shelved) if (other !== path) yield document;
  }

  /** What lies between the sheets, file by file; of sheets that are read by then. */
  across(): readonly FileReport[] {
    const facts = this.#sheets().flatMap((path) => this.#shelved.get(path)?.facts ?? []);
    return placeAcross(runAcross(acrossChecks, facts, this.#project.context(this.root)));
  }

  /** Whether a text is one of the project's sheets, or looks like a sheet wherever it lies. */
  isSheet(path: string, text: string): boolean {
    if (!/\.md$/i.test(path)) return false;
    const isInSheets = this.#project.isProject && dirname(path) === join(this.root, 'sheets');
    return (
      isInSheets || /^---[ \t]*\r?\n(?:[^\n]*\n){0,12}?gaugeleaf[ \t]*:/.test(text.slice(0, 2000))
    );
  }

  /** Whether a change of a file is one of what holds for all sheets. */
  isAround(path: string): boolean {
    const folder = basename(dirname(path));
    return /\.ya?ml$/i.test(path) && (dirname(path) === this.root || folder === 'kinds');
  }
}
