import type { Span } from '../../text/index.ts';

/** What is wrong at one place of a file of a club's style. */
export interface TemplateFault {
  /** Below the templates folder: `partials/cover.hbs`. */
  readonly file: string;
  /** Whether it stops the press; else it merely does nothing. */
  readonly grave: boolean;
  readonly span: Span;
  readonly message: string;
  readonly fix: string | null;
}

/** How a fault offers the name that was perhaps meant; `names` are all that would do. */
export function perhaps(near: string | null, names: Iterable<string>, what: string): string {
  if (near !== null) return `perhaps \`${near}\` was meant`;
  const all = [...names];
  // A long list is looked up better than read in a line.
  const shown = all.slice(0, 12).join(', ');
  return all.length === 0
    ? 'take it out'
    : `${what}: ${shown}${all.length > 12 ? ' and more; docs/templates.md has all' : ''}`;
}
