const thumbSide = 160;

/** SHA-256 in 64 hexadecimal digits. */
export async function sha256Of(bytes: ArrayBuffer): Promise<string> {
  const hash = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return [...hash].map((b) => b.toString(16).padStart(2, '0')).join('');
}

/** A small picture for the list, or null when this browser can't read the file; the server may well. */
export async function thumbOf(bytes: ArrayBuffer, type: string): Promise<ArrayBuffer | null> {
  try {
    const bitmap = await createImageBitmap(new Blob([bytes], { type }));
    const scale = thumbSide / Math.max(bitmap.width, bitmap.height, thumbSide);
    const canvas = document.createElement('canvas');
    canvas.width = Math.max(1, Math.round(bitmap.width * scale));
    canvas.height = Math.max(1, Math.round(bitmap.height * scale));
    canvas.getContext('2d')?.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
    bitmap.close();
    const small = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', 0.7));
    return small ? await small.arrayBuffer() : null;
  } catch {
    return null;
  }
}
