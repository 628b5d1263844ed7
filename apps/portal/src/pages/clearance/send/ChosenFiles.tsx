import type { Finding } from '@garboard/contract/findings';
import { useQuery } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { draftFileOf } from '../../../capture/evidence.ts';
import { Button } from '../../../ui/Button.tsx';
import { SelectField } from '../../../ui/Field.tsx';
import { formatBytes } from '../../../ui/format.ts';
import type { EvidenceFile } from './useEvidenceDraft.ts';

/** The photos and documents chosen so far. A photo can be set against the photo of the finding that it answers. */
export function ChosenFiles({
  personId,
  files,
  photos,
  onPair,
  onTakeOut,
}: {
  personId: string;
  files: readonly EvidenceFile[];
  /** Of the finding. */
  photos: Finding['photos'];
  onPair: (id: string, beforePhotoId: string | null) => void;
  onTakeOut: (id: string) => void;
}) {
  if (!files.length) return null;
  const befores = Object.fromEntries(
    photos.map((photo, at) => [photo.id, `Photo ${at + 1}${photo.caption ? `: ${photo.caption}` : ''}`]),
  );
  return (
    <ul className="chosen-files">
      {files.map((file) => {
        const before = photos.find((photo) => photo.id === file.beforePhotoId);
        const pairable = photos.length > 0 && !file.type.startsWith('application/');
        return (
          <li key={file.id}>
            <div className="chosen-pictures">
              {before?.images.thumb ? <img src={before.images.thumb} alt="As it was found" /> : null}
              <DraftPicture personId={personId} file={file} />
            </div>
            <div className="stack">
              <p>
                {file.name} <span className="soft">{formatBytes(file.size)}</span>
              </p>
              {pairable ? (
                <SelectField
                  label={`${file.name} shows the same place as`}
                  value={file.beforePhotoId ?? ''}
                  options={befores}
                  empty="None of the finding’s photos"
                  onChange={(id) => onPair(file.id, id || null)}
                />
              ) : null}
              <Button kind="quiet" aria-label={`Take out ${file.name}`} onClick={() => onTakeOut(file.id)}>
                Take out
              </Button>
            </div>
          </li>
        );
      })}
    </ul>
  );
}

/** The picture of a file that has not been sent; nothing where this browser can't show it. */
export function DraftPicture({
  personId,
  file,
}: {
  personId: string;
  file: Omit<EvidenceFile, 'beforePhotoId'>;
}) {
  const kept = useQuery({
    queryKey: ['draftFile', file.id],
    queryFn: () => draftFileOf(personId, file),
    networkMode: 'always',
    staleTime: Number.POSITIVE_INFINITY,
    gcTime: 0,
    enabled: file.type.startsWith('image/'),
  });
  const [url, setUrl] = useState<string | null>(null);
  const { data } = kept;
  useEffect(() => {
    if (!data) return;
    const made = URL.createObjectURL(data);
    setUrl(made);
    return () => URL.revokeObjectURL(made);
  }, [data]);
  return url ? <img src={url} alt={file.name} /> : null;
}
