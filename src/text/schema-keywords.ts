import type { ErrorObject } from 'ajv';
import { nearestName } from './nearest-name.ts';
import { listed, named, type SchemaPath, shown } from './schema-names.ts';
import type { SchemaWord } from './schema-words.ts';

/** Types of JSON Schema as a restorer would say them. */
const TYPES: Readonly<Record<string, string>> = {
  string: 'words',
  number: 'a number',
  integer: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'keys with values',
  null: 'nothing',
};

/** What one of ajv's errors means, by its keyword. `at` is where it was raised. */
export function keywordWords(error: ErrorObject, at: SchemaPath, data: unknown): SchemaWord {
  const params = error.params as Readonly<Record<string, unknown>>;
  const value = error.data;
  const name = named(at);
  const say = (message: string, fix: string | null = example(error, at)): SchemaWord => ({
    path: at,
    onKey: false,
    message,
    fix,
  });
  switch (error.keyword) {
    case 'required': {
      const key = String(params.missingProperty);
      const message = at.length === 0 ? `there is no \`${key}\`` : `${name} has no \`${key}\``;
      return { path: at, onKey: true, message, fix: addKey(error, key) };
    }
    case 'enum': {
      const allowed = (params.allowedValues ?? []) as readonly unknown[];
      const near = typeof value === 'string' ? nearestName(value, allowed.map(String)) : null;
      const fix = near === null ? `write ${listed(allowed, 'or')}` : `did you mean \`${near}\`?`;
      const write = near === null ? allowed.map(String).slice(0, 6) : [near];
      return {
        ...say(`${name} is ${shown(value)}; it may be ${listed(allowed, 'or')}`, fix),
        write,
      };
    }
    case 'const': {
      const wanted = String(params.allowedValue);
      return say(
        `${name} is ${shown(value)}; it is always ${wanted}`,
        `write \`${at.at(-1)}: ${wanted}\``,
      );
    }
    case 'type': {
      const types = [params.type].flat().map(String);
      const wanted = listed(
        types.filter((type) => type !== 'null').map((type) => TYPES[type] ?? type),
        'or',
      );
      return say(
        `${name} is ${found(value)}; ${wanted} should stand here`,
        retype(error, at, types),
      );
    }
    case 'pattern': {
      const fix = leveled(value, String(params.pattern)) ?? example(error, at);
      return say(`${name} is ${shown(value)}, which is not how it is written`, fix);
    }
    case 'propertyNames': {
      const key = String(params.propertyName);
      const path = [...at, key];
      const pattern = nameRule(error);
      const fix = leveled(key, pattern) ?? 'use small letters, digits and hyphens';
      return { path, onKey: true, message: `${named(path)} is no name that may stand here`, fix };
    }
    case 'minLength':
      return say(`${name} is empty`);
    case 'maxLength': {
      const length = [...String(value)].length;
      return say(`${name} has ${length} characters; at most ${params.limit} fit`, 'shorten it');
    }
    case 'minimum':
    case 'exclusiveMinimum': {
      const bound = error.keyword === 'minimum' ? 'or more' : 'and more, itself not';
      return say(`${name} is ${shown(value)}; it must be ${params.limit} ${bound}`);
    }
    case 'maximum':
    case 'exclusiveMaximum': {
      const bound = error.keyword === 'maximum' ? 'or less' : 'and less, itself not';
      return say(`${name} is ${shown(value)}; it must be ${params.limit} ${bound}`);
    }
    case 'minItems':
    case 'minProperties':
    case 'maxItems':
    case 'maxProperties': {
      const count = Object.keys(Object(value)).length;
      const bound = error.keyword.startsWith('min') ? 'at least' : 'at most';
      const has = count === 0 ? 'is empty' : `has ${count}`;
      return say(`${name} ${has}; it takes ${bound} ${params.limit}`);
    }
    case 'uniqueItems': {
      const later = Math.max(Number(params.i), Number(params.j));
      const twice = shown((value as readonly unknown[])[later]);
      const word = say(`${name} has ${twice} twice`, 'take one of them out');
      return { ...word, path: [...at, later] };
    }
    case 'anyOf':
    case 'oneOf':
      return choice(error, at, data);
    default:
      return say(`${name} is ${shown(value)}, which may not stand here`);
  }
}

/** What a value is, for a message about its type. */
function found(value: unknown): string {
  if (typeof value === 'string') return value.trim() === '' ? 'empty' : `the words ${shown(value)}`;
  if (typeof value === 'number') return `the number ${shown(value)}`;
  if (typeof value === 'boolean') return `${shown(value)}, a yes or no`;
  return shown(value);
}

function retype(error: ErrorObject, at: SchemaPath, types: readonly string[]): string | null {
  const value = error.data;
  const plain = typeof value === 'boolean' || typeof value === 'number';
  if (plain && types.includes('string')) return `put it in quotes: "${String(value)}"`;
  const properties = error.parentSchema?.properties as { value?: unknown } | undefined;
  if (typeof value === 'string' && properties?.value !== undefined && value.trim() !== '')
    return `put it on a line of its own below, as \`value: ${value.length > 60 ? '...' : value}\``;
  if (typeof value === 'string' && types.includes('array') && value.trim() !== '')
    return `put it in brackets: [${value.length > 60 ? '...' : value}]`;
  return example(error, at);
}

/** `such as` and the schema's first example, as YAML; null where it gives none. */
function example(error: ErrorObject, at: SchemaPath): string | null {
  const text = firstExample(error.parentSchema);
  if (text === null) return null;
  const key = at.at(-1);
  return typeof key === 'string' ? `such as \`${key}: ${text}\`` : `such as \`${text}\``;
}

function firstExample(schema: unknown): string | null {
  const examples = (schema as { examples?: readonly unknown[] } | undefined)?.examples;
  const first = examples?.[0];
  return first === undefined ? null : yamlOf(first);
}

/** Plain data as one line of YAML, good enough for an example. */
function yamlOf(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(yamlOf).join(', ')}]`;
  if (typeof value !== 'object' || value === null) return String(value);
  const pairs = Object.entries(value).map(([key, item]) => `${key}: ${yamlOf(item)}`);
  return `{ ${pairs.join(', ')} }`;
}

/** How to mend a missing key: by the one that stands there misspelt, or by adding it. */
function addKey(error: ErrorObject, key: string): string {
  const known = Object.keys((error.parentSchema?.properties as object | undefined) ?? {});
  const strays = Object.keys(Object(error.data)).filter((other) => !known.includes(other));
  const stray = nearestName(key, strays);
  if (stray !== null) return `did you mean \`${key}\` where ${shown(stray)} stands?`;
  const properties = error.parentSchema?.properties as
    | Readonly<Record<string, unknown>>
    | undefined;
  const schema = properties?.[key];
  const text = firstExample(schema);
  const allowed = (schema as { enum?: readonly unknown[] } | undefined)?.enum;
  if (text === null && allowed) return `add \`${key}:\` with ${listed(allowed, 'or')}`;
  return text === null ? `add \`${key}:\`` : `add \`${key}:\`, such as \`${key}: ${text}\``;
}

/** The pattern of a rule for names, which may stand behind a reference; a plain one then. */
function nameRule(error: ErrorObject): string {
  const rule = error.schema as { pattern?: string } | undefined;
  return rule?.pattern ?? '^[a-z0-9]+(-[a-z0-9]+)*$';
}

/** `write orlo-t71` for `Orlo T71`, where small letters and hyphens are all that is wanting. */
function leveled(value: unknown, pattern: string): string | null {
  const name = String(value)
    .trim()
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  if (name === '' || name.length > 100 || name === value) return null;
  // A date or a year is no name: only a pattern that takes letters is answered so.
  const rule = new RegExp(pattern, 'u');
  return rule.test('a-b') && rule.test(name) ? `write \`${name}\`` : null;
}

function choice(error: ErrorObject, at: SchemaPath, data: unknown): SchemaWord {
  const name = named(at);
  const branches = (Array.isArray(error.schema) ? error.schema : []) as readonly {
    required?: readonly string[];
  }[];
  const keys = branches.flatMap((branch) => branch.required ?? []);
  if (keys.length === 0 || data === undefined) {
    const message = `${name} is ${shown(error.data)}, which is none of what may stand here`;
    return { path: at, onKey: false, message, fix: example(error, at) };
  }
  const quoted = keys.map((key) => `\`${key}\``);
  const [first = ''] = keys;
  return {
    path: at,
    onKey: true,
    message: `${name} has neither ${listed(quoted, 'nor')}`,
    fix: addKey(error, first),
  };
}
