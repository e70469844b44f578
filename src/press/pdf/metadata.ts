import { escapeXml } from '../lettering/index.ts';

/** What the metadata of a file tell. */
export interface MetadataFacts {
  readonly title: string;
  readonly author: string | null;
  readonly language: string;
  /** Whether it keeps to PDF/UA-1 as far as its maker can tell; it says so only then. */
  readonly isUniversal: boolean;
}

/** Every print bears this date: a print's bytes tell of the sheets and not of the hour. */
const date = '2000-01-01T00:00:00Z';

/** The metadata as XMP (ISO 16684-1), the same as the document's information, with the PDF/UA identifier. */
export function xmpPacket({ title, author, language, isUniversal }: MetadataFacts): string {
  const lines = [
    '<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>',
    '<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">',
    '<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">',
    '<dc:format>application/pdf</dc:format>',
    `<dc:title><rdf:Alt><rdf:li xml:lang="x-default">${escapeXml(title)}</rdf:li></rdf:Alt></dc:title>`,
    ...(author === null
      ? []
      : [`<dc:creator><rdf:Seq><rdf:li>${escapeXml(author)}</rdf:li></rdf:Seq></dc:creator>`]),
    `<dc:language><rdf:Bag><rdf:li>${escapeXml(language)}</rdf:li></rdf:Bag></dc:language>`,
    '<xmp:CreatorTool>Gaugeleaf</xmp:CreatorTool>',
    `<xmp:CreateDate>${date}</xmp:CreateDate><xmp:ModifyDate>${date}</xmp:ModifyDate>`,
    '<pdf:Producer>Gaugeleaf</pdf:Producer>',
    ...(isUniversal ? ['<pdfuaid:part>1</pdfuaid:part>'] : []),
    '</rdf:Description></rdf:RDF></x:xmpmeta>',
    '<?xpacket end="r"?>',
  ];
  return `${lines.join('\n')}\n`;
}
