import { nearestName } from '../../text/index.ts';
import { helperNamed, templateHelpers } from '../html/index.ts';
import { placeholders } from '../orders/index.ts';
import type { ReadTemplate } from './read-template.ts';
import { namesIn, type Scope, someText, step } from './scope.ts';
import type { Shape } from './shape.ts';
import { perhaps } from './template-fault.ts';
import type { TemplateJudge } from './template-judge.ts';

/** The names and helpers in the braces of one template, held against what they stand for. */
export class TemplateValues {
  readonly judge: TemplateJudge;
  readonly file: string;
  readonly read: ReadTemplate;

  constructor(judge: TemplateJudge, file: string, read: ReadTemplate) {
    this.judge = judge;
    this.file = file;
    this.read = read;
  }

  /** A helper with what it is given. `inStyle`: inside `cssText`, which fills what is still in braces. */
  call(
    node: hbs.AST.MustacheStatement | hbs.AST.SubExpression,
    scope: Scope,
    inStyle: boolean,
  ): void {
    const path = node.path as hbs.AST.PathExpression;
    // A number or `null` may stand where a helper's name belongs.
    const name = String(path.original);
    const pairs = node.hash?.pairs ?? [];
    const helper = helperNamed(name);
    const values = new Map<hbs.AST.Expression, Shape | null>();
    const isCss = name === 'cssText';
    for (const each of [...node.params, ...pairs.map(({ value }) => value)]) {
      values.set(each, this.value(each, scope, isCss));
    }
    if (helper === null) {
      if (name === 'lookup') return;
      const names = [...Object.keys(templateHelpers)];
      const near = nearestName(name, names);
      this.tell(path, `there is no helper \`${name}\``, perhaps(near, names, 'there are'));
      return;
    }
    const example = `{{${[name, ...helper.takes].join(' ')}}}`;
    if (node.params.length !== helper.takes.length) {
      const count = helper.takes.length === 0 ? 'nothing' : 'one value';
      this.tell(path, `\`${name}\` takes ${count}, not ${node.params.length}`, example);
      return;
    }
    if (!helper.named && pairs[0] !== undefined) {
      this.tell(pairs[0], `\`${name}\` takes nothing by name`, example);
    }
    const [first] = node.params;
    if (first === undefined) return;
    const shape = values.get(first) ?? null;
    const words =
      first.type === 'PathExpression' ? (first as hbs.AST.PathExpression).original : name;
    if (helper.given === 'printed' && (shape?.is === 'list' || shape?.is === 'fields')) {
      this.tell(first, `\`${words}\` is no text, and \`${name}\` prints one`, example);
    } else if (helper.given === 'printed' && shape?.is === 'html') {
      this.tell(
        first,
        `\`${words}\` is HTML: \`${name}\` would print its tags as letters`,
        `{{{${words}}}}`,
      );
    } else if (helper.given === 'words') this.#say(node, first, inStyle);
    else if (helper.given === 'style') this.#style(first);
  }

  #say(
    node: hbs.AST.MustacheStatement | hbs.AST.SubExpression,
    first: hbs.AST.Expression,
    inStyle: boolean,
  ): void {
    const { wording } = this.judge.world;
    if (first.type !== 'StringLiteral') {
      this.tell(first, 'the key of fixed words stands in quotes', '{{say "sources"}}');
      return;
    }
    const key = (first as hbs.AST.StringLiteral).value;
    const line = wording.get(key);
    if (line === undefined) {
      this.tell(
        first,
        `no words go by the key \`${key}\``,
        perhaps(nearestName(key, wording.keys()), wording.keys(), 'there are'),
      );
      return;
    }
    const wanted = placeholders(line);
    const pairs = node.hash?.pairs ?? [];
    for (const pair of pairs) {
      if (wanted.includes(pair.key)) continue;
      const near = nearestName(pair.key, wanted);
      this.tell(
        pair,
        `the words of \`${key}\` have no {${pair.key}}`,
        perhaps(near, wanted, 'they have'),
      );
    }
    const missing = wanted.find((name) => !pairs.some(({ key }) => key === name));
    if (missing !== undefined && !inStyle) {
      this.tell(
        first,
        `the words of \`${key}\` want a {${missing}}`,
        `{{say "${key}" ${missing}=...}}`,
      );
    }
  }

  #style(first: hbs.AST.Expression): void {
    const styles = [...this.judge.world.texts.keys()].filter((name) => name.endsWith('.css'));
    const name = (first as hbs.AST.StringLiteral).value;
    this.judge.used.add(name);
    if (first.type === 'StringLiteral' && styles.includes(name)) return;
    this.tell(
      first,
      `there is no style \`${name}\``,
      perhaps(nearestName(String(name), styles), styles, 'there are'),
    );
  }

  /** What an expression stands for; null, with the fault told, where nothing. */
  value(node: hbs.AST.Expression, scope: Scope, inStyle = false): Shape | null {
    if (node.type === 'SubExpression') {
      this.call(node as hbs.AST.SubExpression, scope, inStyle);
      return someText;
    }
    if (node.type !== 'PathExpression') return someText;
    const path = node as hbs.AST.PathExpression;
    let parts = [...path.parts];
    let shape: Shape | undefined;
    if (path.data) {
      const [first = ''] = parts;
      if (first === 'root') shape = scope.root;
      else if (scope.counters.has(first)) return someText;
      else {
        const names = ['root', ...scope.counters];
        this.tell(path, `there is no \`@${first}\` here`, this.#counted(first, names));
        return null;
      }
      parts = parts.slice(1);
    } else if (path.depth === 0 && scope.named.has(parts[0] ?? '')) {
      shape = scope.named.get(parts[0] ?? '');
      parts = parts.slice(1);
    } else {
      shape = scope.around[scope.around.length - 1 - path.depth];
      if (shape === undefined) {
        this.tell(
          path,
          `\`${path.original}\` leads further out than there is anything`,
          'one `../` leads out of one {{#each}} or {{#with}}; @root leads to the whole',
        );
        return null;
      }
    }
    for (const part of parts) {
      const next: Shape | null = shape === undefined ? null : step(shape, part);
      if (next === null) {
        this.#unknown(path, part, shape, scope);
        return null;
      }
      shape = next;
    }
    return shape ?? null;
  }

  #counted(first: string, names: readonly string[]): string {
    const counters = ['index', 'key', 'first', 'last'];
    const near = nearestName(first, names);
    if (near !== null) return `perhaps \`@${near}\` was meant`;
    if (counters.includes(first)) return `@${first} counts inside {{#each}} only`;
    return `there are: ${names.map((name) => `@${name}`).join(', ')}`;
  }

  #unknown(
    path: hbs.AST.PathExpression,
    part: string,
    shape: Shape | undefined,
    scope: Scope,
  ): void {
    const whole = this.read.spanOf(path);
    const at = path.original.lastIndexOf(part);
    const span = {
      start: whole.start + Math.max(at, 0),
      end: whole.start + Math.max(at, 0) + part.length,
    };
    const names = shape === undefined ? [] : namesIn(shape);
    const before = path.original.slice(0, Math.max(at, 0)).replace(/[./]$/, '');
    const where = before === '' || before === 'this' ? 'here' : `in \`${before}\``;
    const near = nearestName(part, names) ?? elsewhere(part, scope);
    const helper = path.parts.length === 1 ? nearestName(part, Object.keys(templateHelpers)) : null;
    this.judge.tell({
      file: this.file,
      span,
      message: `there is no \`${part}\` ${where}`,
      fix: perhaps(near ?? helper, names, where === 'here' ? 'there are' : 'it has'),
    });
  }

  /** Tells of a fault at a part of the template. */
  tell(node: hbs.AST.Node, message: string, fix: string | null): void {
    this.judge.tell({ file: this.file, span: this.read.spanOf(node), message, fix });
  }
}

/** The same name further out: `../number`. */
function elsewhere(name: string, { around, root }: Scope): string | null {
  for (let out = 1; out < around.length; out++) {
    const shape = around[around.length - 1 - out];
    if (shape !== undefined && step(shape, name) !== null) return `${'../'.repeat(out)}${name}`;
  }
  return step(root, name) === null ? null : `@root.${name}`;
}
