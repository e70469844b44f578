import type HandlebarsType from 'handlebars';
import { type ReadTemplate, readTemplate } from './read-template.ts';
import { rootScope, type Scope } from './scope.ts';
import type { Shape } from './shape.ts';
import type { TemplateFault } from './template-fault.ts';
import type { TemplateJudge, TemplateWorld } from './template-judge.ts';
import { TemplateWalk } from './template-walk.ts';

/** What was found in templates, and what they use. */
export interface TemplatesChecked {
  readonly faults: readonly TemplateFault[];
  /** Files that some template uses: partials and styles. */
  readonly used: ReadonlySet<string>;
}

/**
 * Holds templates against the descriptions of what they are given: every name, helper and partial
 * that they use, as they would be filled. `roots` are the templates that the press fills itself.
 */
export function checkTemplates(
  roots: ReadonlyMap<string, Shape>,
  world: TemplateWorld,
  handlebars: typeof HandlebarsType,
): TemplatesChecked {
  const check = new TemplateCheck(world, handlebars);
  for (const [file, shape] of roots) check.file(file, rootScope(shape));
  return { faults: check.faults, used: check.used };
}

class TemplateCheck implements TemplateJudge {
  readonly world: TemplateWorld;
  readonly #handlebars: typeof HandlebarsType;
  readonly faults: TemplateFault[] = [];
  readonly used = new Set<string>();
  readonly #read = new Map<string, ReadTemplate | null>();
  readonly #seen = new Set<string>();
  readonly #ids = new Map<string, number>();
  readonly #known = new WeakMap<Shape, number>();

  constructor(world: TemplateWorld, handlebars: typeof HandlebarsType) {
    this.world = world;
    this.#handlebars = handlebars;
  }

  /** Goes through a file as it is filled in that scope; once only for each. */
  file(file: string, scope: Scope): void {
    this.used.add(file);
    const read = this.#readOnce(file);
    if (read === null) return;
    const once = `${file} ${this.#mark(scope.around[0])} ${[...scope.counters].length}`;
    // Partials may call each other in a circle.
    if (this.#seen.has(once)) return;
    this.#seen.add(once);
    new TemplateWalk(this, file, read).program(read.program, scope);
  }

  tell(fault: Omit<TemplateFault, 'grave'>): void {
    const same = (each: TemplateFault) =>
      each.file === fault.file && each.span.start === fault.span.start;
    if (!this.faults.some(same)) this.faults.push({ ...fault, grave: true });
  }

  #readOnce(file: string): ReadTemplate | null {
    const known = this.#read.get(file);
    if (known !== undefined) return known;
    const text = this.world.texts.get(file);
    const read = text === undefined ? null : readTemplate(text, this.#handlebars);
    if (read !== null && 'message' in read) {
      this.tell({ file, ...read });
      this.#read.set(file, null);
      return null;
    }
    this.#read.set(file, read);
    return read;
  }

  /** Equal for shapes that have the same names in them. */
  #mark(shape: Shape | undefined): number {
    if (shape === undefined) return -1;
    const before = this.#known.get(shape);
    if (before !== undefined) return before;
    const key = JSON.stringify(shape);
    const mark = this.#ids.get(key) ?? this.#ids.size;
    this.#ids.set(key, mark);
    this.#known.set(shape, mark);
    return mark;
  }
}
