import type { Processor } from 'unified';

/** A tokenizer's rule, as far as it matters here. */
interface Construct {
  readonly name?: string;
}

type Constructs = Record<string, Construct | readonly Construct[] | undefined>;

interface ParserData {
  micromarkExtensions?: { text?: Constructs }[];
  fromMarkdownExtensions?: (object | object[])[];
}

/**
 * Takes the bare links (`www.` and `name@host` without brackets) out of what remark-gfm added. A
 * link is of no use on paper, and looking for an address at every letter of every word cost a
 * tenth of a sheet's parsing; it also made nodes without a place.
 */
export function withoutBareLinks(this: Processor): void {
  const data = this.data() as ParserData;
  data.micromarkExtensions =
    data.micromarkExtensions?.map((extension) =>
      extension.text ? { ...extension, text: withoutLinks(extension.text) } : extension,
    ) ?? [];
  data.fromMarkdownExtensions =
    data.fromMarkdownExtensions?.map((extension) =>
      Array.isArray(extension) ? extension.map(withoutTransforms) : withoutTransforms(extension),
    ) ?? [];
}

function withoutLinks(text: Constructs): Constructs {
  const kept: Constructs = {};
  for (const [code, rules] of Object.entries(text)) {
    const others = [rules ?? []].flat().filter(({ name }) => !name?.endsWith('Autolink'));
    if (others.length > 0) kept[code] = others;
  }
  return kept;
}

/** The only transform of remark-gfm is the one that finds bare links in finished text. */
function withoutTransforms(extension: object): object {
  if (!('transforms' in extension)) return extension;
  const { transforms: _, ...rest } = extension;
  return rest;
}
