import { useEffect, useState } from 'react';
import type { KeptPhoto } from '../../capture/kept.ts';

/** The small picture of a kept photo; its name where this browser can't show it. */
export function Thumb({ photo }: { photo: KeptPhoto }) {
  const [url, setUrl] = useState<string | null>(null);
  const { thumb } = photo;
  useEffect(() => {
    if (!thumb) return;
    const made = URL.createObjectURL(new Blob([thumb], { type: 'image/jpeg' }));
    setUrl(made);
    return () => URL.revokeObjectURL(made);
  }, [thumb]);
  if (!thumb) return <span className="capture-thumb soft small">{photo.name}</span>;
  return <span className="capture-thumb">{url ? <img src={url} alt="" /> : null}</span>;
}
