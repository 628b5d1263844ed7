/** A file's name as people may see it: without folders or control characters, at most 200 characters. */
export function cleanFileName(name: string | undefined): string {
  const base = (name ?? '').split(/[\\/]/).at(-1) ?? '';
  // Besides control characters, those that turn the direction of writing would let a name pretend another ending.
  const plain = base
    .normalize('NFC')
    .replace(/[\p{Cc}\p{Cs}\u202a-\u202e\u2066-\u2069]/gu, '')
    .trim();
  return [...plain].slice(0, 200).join('') || 'unnamed';
}
