import { nearestName } from '../../text/index.ts';
import { helperNamed } from '../html/index.ts';
import type { ReadTemplate } from './read-template.ts';
import { inside, itemOf, namesIn, partialScope, type Scope, someText } from './scope.ts';
import type { Shape } from './shape.ts';
import { perhaps } from './template-fault.ts';
import type { TemplateJudge } from './template-judge.ts';
import { TemplateValues } from './template-values.ts';

const blocks = ['if', 'unless', 'each', 'with'];

/** One template, part by part. */
export class TemplateWalk {
  readonly #judge: TemplateJudge;
  readonly #values: TemplateValues;

  constructor(judge: TemplateJudge, file: string, read: ReadTemplate) {
    this.#judge = judge;
    this.#values = new TemplateValues(judge, file, read);
  }

  /** Goes through a template, or what stands between two of its braces. */
  program(program: hbs.AST.Program | undefined, scope: Scope): void {
    for (const each of program?.body ?? []) this.#statement(each, scope);
  }

  #statement(node: hbs.AST.Statement, scope: Scope): void {
    switch (node.type) {
      case 'MustacheStatement':
        this.#printed(node as hbs.AST.MustacheStatement, scope);
        return;
      case 'BlockStatement':
        this.#block(node as hbs.AST.BlockStatement, scope);
        return;
      case 'PartialStatement':
        this.#partial(node as hbs.AST.PartialStatement, scope);
        return;
      case 'ContentStatement':
      case 'CommentStatement':
        return;
      default:
        this.#values.tell(
          node,
          'templates here have no decorators and no partials with a block',
          null,
        );
    }
  }

  #printed(node: hbs.AST.MustacheStatement, scope: Scope): void {
    const path = node.path as hbs.AST.PathExpression;
    const called = node.params.length > 0 || (node.hash?.pairs.length ?? 0) > 0;
    if (called || (path.type === 'PathExpression' && this.#isHelper(path, scope))) {
      this.#values.call(node, scope, false);
      return;
    }
    const shape = this.#values.value(path, scope);
    if (shape === null) return;
    const name = path.original;
    if (shape.is === 'list')
      this.#values.tell(
        path,
        `\`${name}\` is a list, and can’t be printed as it is`,
        `{{#each ${name}}} ... {{/each}}`,
      );
    else if (shape.is === 'fields') {
      const has = namesIn(shape).slice(0, 8).join(', ');
      this.#values.tell(
        path,
        `\`${name}\` holds several values, and can’t be printed as it is`,
        `name one of them: ${has}`,
      );
    } else if (shape.is === 'html' && node.escaped) {
      this.#values.tell(
        path,
        `\`${name}\` is HTML: in two braces its tags are printed as letters`,
        `{{{${name}}}}`,
      );
    } else if (shape.is !== 'html' && !node.escaped) {
      this.#values.tell(
        path,
        `\`${name}\` is no HTML: in three braces a < in it breaks the page`,
        `{{${name}}}`,
      );
    }
  }

  /** A helper's name goes before a value's, unless it says `this.` */
  #isHelper(path: hbs.AST.PathExpression, scope: Scope): boolean {
    if (path.data || path.depth > 0 || path.parts.length !== 1) return false;
    if (/^(?:this|\.)[./]/.test(path.original)) return false;
    return helperNamed(path.original) !== null && !scope.named.has(path.original);
  }

  #block(node: hbs.AST.BlockStatement, scope: Scope): void {
    const path = node.path as hbs.AST.PathExpression;
    const name = String(path.original);
    if (!blocks.includes(name)) {
      const near = nearestName(name, blocks);
      const known = node.params.length === 0 ? this.#values.value(path, scope) : null;
      if (known !== null) {
        const what = known.is === 'list' ? 'each' : known.is === 'fields' ? 'with' : 'if';
        this.#values.tell(
          path,
          `{{#${name}}} does not say what it is for`,
          `{{#${what} ${name}}} ... {{/${what}}}`,
        );
      } else if (node.params.length > 0) {
        this.#values.tell(
          path,
          `there is no block {{#${name}}}`,
          perhaps(near, blocks, 'there are'),
        );
      }
      return;
    }
    const [given] = node.params;
    if (given === undefined || node.params.length > 1) {
      this.#values.tell(
        path,
        `{{#${name}}} takes one value, not ${node.params.length}`,
        `{{#${name} x}} ... {{/${name}}}`,
      );
      return;
    }
    const shape = this.#values.value(given, scope);
    this.program(node.inverse, scope);
    if (name === 'if' || name === 'unless') {
      this.program(node.program, scope);
      return;
    }
    if (shape === null) return;
    const words =
      given.type === 'PathExpression' ? (given as hbs.AST.PathExpression).original : 'this';
    const inner = name === 'each' ? itemOf(shape) : shape;
    if (inner === null) {
      this.#values.tell(
        given,
        `\`${words}\` is no list: {{#each}} has nothing to go over`,
        `{{#if ${words}}} ... {{/if}}`,
      );
      return;
    }
    this.program(node.program, inside(scope, inner, node.program?.blockParams, name === 'each'));
  }

  #partial(node: hbs.AST.PartialStatement, scope: Scope): void {
    const path = node.name as hbs.AST.PathExpression;
    if (path.type !== 'PathExpression') {
      this.#values.tell(
        node.name,
        'the name of a partial stands in its braces as it is',
        '{{> cover}}',
      );
      return;
    }
    const name = path.original;
    const handed = new Map<string, Shape>();
    for (const pair of node.hash?.pairs ?? []) {
      handed.set(pair.key, this.#values.value(pair.value, scope) ?? someText);
    }
    const [given] = node.params;
    const shape = given === undefined ? scope.around.at(-1) : this.#values.value(given, scope);
    const file = `partials/${name}.hbs`;
    if (!this.#judge.world.texts.has(file)) {
      const names = [...this.#judge.world.texts.keys()].flatMap(
        (each) => /^partials\/(.+)\.hbs$/.exec(each)?.[1] ?? [],
      );
      this.#values.tell(
        path,
        `there is no partial \`${name}\``,
        perhaps(nearestName(name, names), names, 'there are'),
      );
      return;
    }
    if (shape) this.#judge.file(file, partialScope(scope, shape, handed));
  }
}
