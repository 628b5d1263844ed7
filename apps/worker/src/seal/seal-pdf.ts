import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { type FileHandle, open } from 'node:fs/promises';
import { promisify } from 'node:util';
import { deflate } from 'node:zlib';
import { PDFArray, type PDFDict, PDFHexString, PDFName, PDFRawStream, PDFRef, PDFString } from 'pdf-lib';
import { cmsRoom, cmsSignature, type SigningPair } from './cms-signature.ts';
import { infoDict, type Metadata, pdfDate, xmpStream } from './metadata.ts';
import { PdfFile, UnfitPdf, writeAnew } from './pdf-file.ts';
import { PdfUpdate } from './pdf-update.ts';

/** A file carried by the PDF as its data. */
export interface Attachment {
  /** Letters, digits, dots and hyphens. */
  name: string;
  mediaType: string;
  description: string;
  content: Buffer;
}

export interface SealRequest {
  /** The printed PDF; it is added to in place. */
  path: string;
  metadata: Metadata;
  attachment: Attachment;
  signer: SigningPair;
  /** Why it is signed, as readers show it. */
  reason: string;
  signedBy: string;
}

const name = (value: string) => PDFName.of(value);
const deflated = promisify(deflate);

/**
 * Finishes a printed PDF: says what it is, attaches its data, and signs the whole (PAdES baseline B-B). All of it is
 * added after the last byte of the file, whose pages, tags and bookmarks stay as they are.
 *
 * @throws UnfitPdf when it can't be added to even after it was written anew.
 */
export async function sealPdf(request: SealRequest): Promise<void> {
  try {
    await sealInPlace(request);
  } catch (error) {
    if (!(error instanceof UnfitPdf)) throw error;
    // A Chromium that writes its cross-references in another form.
    await writeAnew(request.path);
    await sealInPlace(request);
  }
}

async function sealInPlace(request: SealRequest): Promise<void> {
  const handle = await open(request.path, 'r+');
  try {
    const file = await PdfFile.read(handle);
    const update = new PdfUpdate(file);
    const rootRef = file.trailer.get(name('Root'));
    const root = await file.dict(rootRef);
    if (!(rootRef instanceof PDFRef) || !root) throw new UnfitPdf('It has no catalogue.');
    describe(file, update, root, request.metadata);
    await attach(file, update, root, request);
    const signature = await addSignature(file, update, root, request);
    update.replace(rootRef, root);
    const info = update.add(infoDict(file.context, request.metadata));
    const { bytes, offsetOf } = update.build({ Info: info });
    await sign(handle, request, { bytes, from: file.size, at: offsetOf(signature) });
  } finally {
    await handle.close();
  }
}

function describe(file: PdfFile, update: PdfUpdate, root: PDFDict, metadata: Metadata): void {
  const { context } = file;
  // The signature's sub-filter and associated files are of PDF 2.0.
  root.set(name('Version'), name('2.0'));
  root.set(name('Lang'), PDFHexString.fromText(metadata.language));
  root.set(name('Metadata'), update.add(xmpStream(context, metadata)));
  root.set(name('ViewerPreferences'), context.obj({ DisplayDocTitle: true }));
}

async function attach(
  file: PdfFile,
  update: PdfUpdate,
  root: PDFDict,
  { attachment, metadata }: SealRequest,
): Promise<void> {
  const { context } = file;
  const { content, description, mediaType } = attachment;
  const packed = new Uint8Array(await deflated(content));
  const stream = context.obj({ Type: 'EmbeddedFile', Subtype: mediaType, Filter: 'FlateDecode' });
  const params = context.obj({ Size: content.length });
  params.set(name('ModDate'), pdfDate(metadata.at));
  stream.set(name('Params'), params);
  const embedded = update.add(PDFRawStream.of(stream, packed));
  const fileName = PDFString.of(attachment.name);
  const spec = context.obj({ Type: 'Filespec', AFRelationship: 'Data' });
  spec.set(name('F'), fileName);
  spec.set(name('UF'), fileName);
  spec.set(name('Desc'), PDFHexString.fromText(description));
  spec.set(name('EF'), context.obj({ F: embedded, UF: embedded }));
  const specRef = update.add(spec);
  const names = (await file.dict(root.get(name('Names'))))?.clone(context) ?? context.obj({});
  names.set(name('EmbeddedFiles'), context.obj({ Names: [fileName, specRef] }));
  root.set(name('Names'), names);
  root.set(name('AF'), context.obj([specRef]));
}

/** Where in the signature's bytes the two values are that are known only when all else is written. */
function signatureTemplate({ metadata, reason, signedBy, signer }: SealRequest): Buffer {
  const text = (value: string) => PDFHexString.fromText(value).toString();
  return Buffer.from(
    `<< /Type /Sig /Filter /Adobe.PPKLite /SubFilter /ETSI.CAdES.detached
/ByteRange [0 ${'0'.repeat(10)} ${'0'.repeat(10)} ${'0'.repeat(10)}]
/Contents <${'00'.repeat(cmsRoom(signer))}>
/M ${pdfDate(metadata.at)} /Name ${text(signedBy)} /Reason ${text(reason)} >>`,
  );
}

/** Adds the signature and, on the last page, the field without a face that holds it. */
async function addSignature(
  file: PdfFile,
  update: PdfUpdate,
  root: PDFDict,
  request: SealRequest,
): Promise<PDFRef> {
  const { context } = file;
  const signature = update.add(signatureTemplate(request));
  const pageRef = await lastPage(file, root.get(name('Pages')));
  const page = (await file.dict(pageRef))?.clone(context);
  if (!page) throw new UnfitPdf('Its last page is not found.');
  const field = context.obj({ Type: 'Annot', Subtype: 'Widget', FT: 'Sig', F: 132, Rect: [0, 0, 0, 0] });
  field.set(name('T'), PDFHexString.fromText('Signature'));
  field.set(name('TU'), PDFHexString.fromText(`Digital signature of ${request.signedBy}`));
  field.set(name('P'), pageRef);
  field.set(name('V'), signature);
  const fieldRef = update.add(field);
  const kept = page.get(name('Annots'));
  const annots = kept instanceof PDFRef ? await file.object(kept) : kept;
  const others = annots instanceof PDFArray ? annots.asArray() : [];
  page.set(name('Annots'), context.obj([...others, fieldRef]));
  update.replace(pageRef, page);
  root.set(name('AcroForm'), context.obj({ SigFlags: 3, Fields: [fieldRef] }));
  return signature;
}

async function lastPage(file: PdfFile, tree: unknown): Promise<PDFRef> {
  let ref = tree;
  for (let depth = 0; depth < 40 && ref instanceof PDFRef; depth++) {
    const node = await file.dict(ref);
    const kids = node?.get(name('Kids'));
    const list = kids instanceof PDFRef ? await file.object(kids) : kids;
    if (!(list instanceof PDFArray)) return ref;
    ref = list.get(list.size() - 1);
  }
  throw new UnfitPdf('Its pages are not found.');
}

interface Written {
  /** What is added, and from where on. */
  bytes: Buffer;
  from: number;
  /** Where in the file the object of the signature begins. */
  at: number;
}

/** Fills in what is covered, signs it, and writes all that is added at once. */
async function sign(handle: FileHandle, { path, signer }: SealRequest, written: Written): Promise<void> {
  const { bytes, from, at } = written;
  const start = bytes.indexOf('/Contents <', at - from) + '/Contents '.length;
  const end = bytes.indexOf('>', start) + 1;
  const ranges = [from + start, from + end, bytes.length - end].map((n) => String(n).padEnd(10, ' '));
  const place = bytes.indexOf('/ByteRange [0 ', at - from) + '/ByteRange [0 '.length;
  bytes.write(ranges.join(' '), place, 'latin1');
  const hash = createHash('sha256');
  if (from > 0) {
    for await (const chunk of createReadStream(path, { end: from - 1 })) hash.update(chunk as Buffer);
  }
  hash.update(bytes.subarray(0, start)).update(bytes.subarray(end));
  const cms = cmsSignature(hash.digest(), signer);
  if (cms.length * 2 > end - start - 2) throw new Error('The signature is larger than the room kept for it.');
  bytes.write(cms.toString('hex'), start + 1, 'latin1');
  await handle.write(bytes, 0, bytes.length, from);
  await handle.datasync();
}
