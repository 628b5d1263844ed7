import { type PDFContext, type PDFDict, PDFHexString, PDFName, PDFRawStream, PDFString } from 'pdf-lib';

/** What a PDF says of itself. */
export interface Metadata {
  title: string;
  author: string;
  subject: string;
  /** BCP 47. */
  language: string;
  /** The program that made the document, with its version. */
  creator: string;
  /** The program that wrote the PDF. */
  producer: string;
  at: Date;
}

/** A date as PDF writes it, in UTC. */
export const pdfDate = (at: Date): PDFString =>
  PDFString.of(`D:${at.toISOString().replace(/\D/g, '').slice(0, 14)}Z`);

const text = (value: string) => PDFHexString.fromText(value);

/** The document information dictionary, which older readers show. */
export function infoDict(context: PDFContext, of: Metadata): PDFDict {
  const info = context.obj({});
  info.set(PDFName.of('Title'), text(of.title));
  info.set(PDFName.of('Author'), text(of.author));
  info.set(PDFName.of('Subject'), text(of.subject));
  info.set(PDFName.of('Creator'), text(of.creator));
  info.set(PDFName.of('Producer'), text(of.producer));
  info.set(PDFName.of('CreationDate'), pdfDate(of.at));
  info.set(PDFName.of('ModDate'), pdfDate(of.at));
  return info;
}

const xml = (value: string): string =>
  value.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');

/** The same as an XMP packet (ISO 16684-1), unfiltered so that programs that know no PDF find it. */
export function xmpStream(context: PDFContext, of: Metadata): PDFRawStream {
  const at = `${of.at.toISOString().slice(0, 19)}Z`;
  const alternatives = (value: string) =>
    `<rdf:Alt><rdf:li xml:lang="x-default">${xml(value)}</rdf:li></rdf:Alt>`;
  const packet = `<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">
<dc:format>application/pdf</dc:format>
<dc:title>${alternatives(of.title)}</dc:title>
<dc:creator><rdf:Seq><rdf:li>${xml(of.author)}</rdf:li></rdf:Seq></dc:creator>
<dc:description>${alternatives(of.subject)}</dc:description>
<dc:language><rdf:Bag><rdf:li>${xml(of.language)}</rdf:li></rdf:Bag></dc:language>
<xmp:CreatorTool>${xml(of.creator)}</xmp:CreatorTool>
<xmp:CreateDate>${at}</xmp:CreateDate>
<xmp:ModifyDate>${at}</xmp:ModifyDate>
<pdf:Producer>${xml(of.producer)}</pdf:Producer>
</rdf:Description></rdf:RDF></x:xmpmeta>
<?xpacket end="r"?>`;
  const dict = context.obj({ Type: 'Metadata', Subtype: 'XML' });
  return PDFRawStream.of(dict, new TextEncoder().encode(packet));
}
