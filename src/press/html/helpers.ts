/** A helper as templates may use it. */
export interface TemplateHelper {
  /** What stands behind its name, with the names of what it takes: `x`, `"file.css"`. */
  readonly takes: readonly string[];
  /**
   * What it may be given: any value, one that is printed (text or number), a list, or a text in
   * quotes that is looked up among the keys of the words, the files of styles.
   */
  readonly given: 'anything' | 'printed' | 'words' | 'style';
  /** Whether it takes `name=value` too. */
  readonly named: boolean;
  readonly meaning: string;
}

/** The helpers that templates have beside `if`, `unless`, `each`, `with` and `lookup`. */
export const templateHelpers = {
  say: {
    takes: ['"key"'],
    given: 'words',
    named: true,
    meaning:
      'fixed words by their key, as plain text; `name=value` goes where the words have `{name}`',
  },
  size: {
    takes: ['x'],
    given: 'printed',
    named: false,
    meaning: 'a size: true fractions, a number and its unit held together',
  },
  words: {
    takes: ['x'],
    given: 'printed',
    named: false,
    meaning: 'a line of words, its fractions and quotation marks drawn',
  },
  math: {
    takes: ['x'],
    given: 'printed',
    named: false,
    meaning: 'a formula of one line, set as MathML',
  },
  upper: { takes: ['x'], given: 'printed', named: false, meaning: 'a text in capitals' },
  logo: {
    takes: [],
    given: 'anything',
    named: false,
    meaning: 'the club’s mark as a picture of class `logo`; nothing where the club has none',
  },
  css: {
    takes: ['"file.css"'],
    given: 'style',
    named: false,
    meaning: 'a style of the templates with its fonts in it',
  },
  cssText: {
    takes: ['x'],
    given: 'printed',
    named: true,
    meaning:
      'a text as a string inside a style; `page="counter(page)"` goes where the text has `{page}`',
  },
  pageOf: {
    takes: ['anchor'],
    given: 'printed',
    named: false,
    meaning: 'the number of the page where the element with that id stands, in a booklet',
  },
  policy: {
    takes: [],
    given: 'anything',
    named: false,
    meaning: 'what a printed page may load: nothing but what it brings along',
  },
} as const satisfies Readonly<Record<string, TemplateHelper>>;

/** The name of a helper. */
export type HelperName = keyof typeof templateHelpers;

/** The helper of that name; null where there is none. */
export function helperNamed(name: string): TemplateHelper | null {
  return Object.hasOwn(templateHelpers, name) ? templateHelpers[name as HelperName] : null;
}
