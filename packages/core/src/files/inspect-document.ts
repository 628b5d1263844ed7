import { open } from 'node:fs/promises';

/** Whether a file begins and ends as a PDF does. @returns a sentence when it doesn't, else null. */
export async function inspectDocument(path: string): Promise<string | null> {
  const file = await open(path);
  try {
    const { size } = await file.stat();
    const head = Buffer.alloc(5);
    await file.read(head, 0, 5, 0);
    // Readers look for the end mark in the last kilobyte; writers may add white space or padding after it.
    const length = Math.min(size, 2048);
    const tail = Buffer.alloc(length);
    await file.read(tail, 0, length, size - length);
    if (head.toString('latin1') !== '%PDF-')
      return 'The file doesn’t begin as a PDF does. Save it as PDF again.';
    if (!tail.includes('%%EOF')) return 'The PDF is cut short: its end is missing. Send it again.';
    return null;
  } finally {
    await file.close();
  }
}
