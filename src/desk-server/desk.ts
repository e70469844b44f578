import { basename } from 'node:path';
import type { DeskEvent, Differing } from '../desk-page/model.ts';
import {
  type DiskChange,
  EditionWatch,
  fileId,
  locate,
  type OwnFile,
  openProject,
  ownFiles,
  type Project,
  Refusal,
} from '../project/index.ts';
import { EditionBoard } from './edition-board.ts';

import { Frames } from './frames.ts';
import { OpenSheet } from './open-sheet.ts';

/** A project at a desk: its open sheets, the state of its edition, and whoever listens. */
export class Desk {
  readonly frames = new Frames();
  readonly folder: string;
  readonly board: EditionBoard;
  readonly #cwd: string;
  readonly #watch: EditionWatch;
  readonly #sheets = new Map<string, OpenSheet>();
  readonly #listeners = new Set<(event: DeskEvent) => void>();
  /** What was last told of a sheet's state, so that it is told once. */
  readonly #told = new Map<string, string>();
  #project: Project;

  /** `folder` is where journals lie. */
  constructor(project: Project, folder: string, cwd: string) {
    this.#project = project;
    this.#cwd = cwd;
    this.folder = folder;
    this.board = new EditionBoard(project, () => this.tell({ is: 'edition' }));
    this.#watch = new EditionWatch(project.root, (change) => this.#onDisk(change));
  }

  get project(): Project {
    return this.#project;
  }

  /** Tells of everything that happens from now on; the answer ends it. */
  listen(listener: (event: DeskEvent) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  tell(event: DeskEvent): void {
    for (const listener of this.#listeners) listener(event);
  }

  /**
   * The path of a sheet by its id, which is looked up among the files of the project and never made into a
   * path. Fails with `Refusal` where there is none, or where it leads out of the project.
   */
  pathOf(id: string): string {
    const path = this.#project.sheets().find((each) => fileId(each) === id);
    if (path === undefined) throw new Refusal(`there is no sheet ${id}`);
    const located = locate(
      this.#project.root,
      this.#project.root,
      path.slice(this.#project.root.length + 1),
    );
    if (located.status === 'outside') {
      throw new Refusal(
        `${basename(path)} is a link that leads out of the project; it is not read`,
        'put the file itself there',
      );
    }
    return path;
  }

  /** The file of the project that is no sheet and is called so; null for a sheet, or for none. */
  ownFile(id: string): OwnFile | null {
    if (this.#project.sheets().some((each) => fileId(each) === id)) return null;
    return ownFiles(this.#project).find((each) => each.id === id) ?? null;
  }

  /** The one text of a sheet, or of another file of the project, that all windows share. */
  sheet(id: string): OpenSheet {
    const open = this.#sheets.get(id);
    if (open !== undefined) return open;
    const own = this.ownFile(id);
    const path = own === null ? this.pathOf(id) : own.path;
    const { root } = this.#project;
    const file = this.#project.show(path);
    const sheet = new OpenSheet(
      { id, path, root, file, folder: this.folder, sort: own?.sort ?? 'sheet' },
      {
        updates: (version, updates) => this.tell({ is: 'updates', id, version, updates }),
        changed: () => this.#tellSheet(id),
      },
    );
    this.#sheets.set(id, sheet);
    return sheet;
  }

  /** The text of a sheet that is open; null for one that is not. */
  openText(id: string): string | null {
    return this.#sheets.get(id)?.text ?? null;
  }

  unsaved(id: string): boolean {
    return this.#sheets.get(id)?.unsaved === true;
  }

  /** Looks at the disk now, and not when its turn comes: something was just written. */
  look(): void {
    const change = this.#watch.changes();
    if (change !== null) this.#onDisk(change);
  }

  close(): void {
    this.#watch.close();
    this.board.close();
    for (const sheet of this.#sheets.values()) sheet.close();
  }

  #onDisk({ sheets, around }: DiskChange): void {
    for (const sheet of this.#sheets.values()) {
      try {
        sheet.look();
      } catch {
        // It cannot be read at the moment; what was typed stays, and saving will say why.
      }
    }
    if (around) {
      this.#project = openProject(this.#project.root, this.#cwd);
      this.frames.forget();
      this.board.reopen(this.#project);
      this.tell({ is: 'context' });
      this.tell({ is: 'edition' });
      return;
    }
    this.board.again(sheets);
  }

  #tellSheet(id: string): void {
    const sheet = this.#sheets.get(id);
    if (sheet === undefined) return;
    const { unsaved, differing } = sheet;
    const state = JSON.stringify([unsaved, differing]);
    if (this.#told.get(id) === state) return;
    this.#told.set(id, state);
    this.tell({ is: 'sheet', id, unsaved, differing: differing satisfies Differing | null });
  }
}
