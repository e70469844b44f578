import type { Wording } from '../orders/index.ts';
import type { Scope } from './scope.ts';
import type { TemplateFault } from './template-fault.ts';

/** What templates are held against. */
export interface TemplateWorld {
  /** All files of the templates, the club's laid over the built-in ones. */
  readonly texts: ReadonlyMap<string, string>;
  /** The built-in words, by which it is known which keys and braces there are. */
  readonly wording: Wording;
}

/** Who goes through the files of templates, and keeps what is found in them. */
export interface TemplateJudge {
  readonly world: TemplateWorld;
  /** Files that some template uses. */
  readonly used: Set<string>;
  /** Goes through a file as it is filled in that scope; once only for each. */
  file(file: string, scope: Scope): void;
  tell(fault: Omit<TemplateFault, 'grave'>): void;
}
