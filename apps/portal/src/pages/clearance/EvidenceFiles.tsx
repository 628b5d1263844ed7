import type { Clearance } from '@garboard/contract/clearances';
import type { Finding } from '@garboard/contract/findings';
import { useState } from 'react';
import { Comparison } from '../../ui/Comparison.tsx';
import { formatBytes } from '../../ui/format.ts';
import { PhotoViewer } from '../../ui/PhotoViewer.tsx';

type EvidenceFile = Clearance['files'][number];
type Paired = EvidenceFile & { before: NonNullable<EvidenceFile['before']> };

const isPaired = (file: EvidenceFile): file is Paired => file.before !== null;

/** What came with the evidence: pairs of before and after, other photos as pictures that open large, documents as links. */
export function EvidenceFiles({ files, finding }: { files: readonly EvidenceFile[]; finding: Finding }) {
  const [open, setOpen] = useState<number | null>(null);
  const pairs = files.filter(isPaired);
  const rest = files.filter((file) => !isPaired(file));
  const photos = rest.filter((file) => file.mediaType.startsWith('image/'));
  const documents = rest.filter((file) => !file.mediaType.startsWith('image/'));
  return (
    <>
      {pairs.map((file) => (
        <Pair key={file.id} file={file} finding={finding} />
      ))}
      {photos.length ? (
        <ul className="photos photos-small">
          {photos.map((file, at) => (
            <li key={file.id}>
              <button type="button" className="photo-frame" onClick={() => setOpen(at)}>
                {file.thumbUrl ? (
                  <img src={file.thumbUrl} alt={file.fileName} loading="lazy" />
                ) : (
                  <span className="photo-waiting">{file.fileName}</span>
                )}
              </button>
            </li>
          ))}
        </ul>
      ) : null}
      {documents.length ? (
        <ul className="plain-list">
          {documents.map((file) => (
            <li key={file.id}>
              <a href={file.url} target="_blank" rel="noreferrer">
                {file.fileName}
              </a>{' '}
              <span className="soft">{formatBytes(file.bytes)}</span>
            </li>
          ))}
        </ul>
      ) : null}
      {open === null ? null : (
        <PhotoViewer
          photos={photos.map((file) => ({ id: file.id, src: file.url, caption: file.fileName }))}
          startAt={open}
          onClose={() => setOpen(null)}
        />
      )}
    </>
  );
}

function Pair({ file, finding }: { file: Paired; finding: Finding }) {
  const { before } = file;
  const number = finding.photos.findIndex((photo) => photo.id === before.photoId) + 1;
  const sized = finding.photos[number - 1];
  return (
    <Comparison
      before={{
        when: number ? `Before, photo ${number}` : 'Before',
        words: before.caption,
        src: before.images.screen ?? before.images.thumb,
        width: sized?.width ?? null,
        height: sized?.height ?? null,
      }}
      after={{
        when: 'After',
        words: file.fileName,
        // The screen size comes with the small one.
        src: file.thumbUrl ? file.url : null,
        width: file.width,
        height: file.height,
      }}
    />
  );
}
