import type { Photo } from '@garboard/contract/photos';
import type { Compared } from '../../../ui/Comparison.tsx';
import { Comparison, PlainComparison } from '../../../ui/Comparison.tsx';
import { formatInstantDay } from '../../../ui/format.ts';

type Before = NonNullable<Photo['before']>;
interface Props {
  before: Before;
  after: Photo;
  timeZone: string;
}

/** An earlier photo and the one taken now, side by side or one over the other with an edge to move. */
export function PairView(props: Props) {
  return <Comparison {...sidesOf(props)} />;
}

/** Both photos with their dates and captions, nothing to operate. */
export function PlainPair(props: Props) {
  return <PlainComparison {...sidesOf(props)} />;
}

function sidesOf({ before, after, timeZone }: Props): { before: Compared; after: Compared } {
  return {
    before: sideOf(before, `Survey ${before.surveyNumber}`, timeZone),
    after: sideOf(after, 'This survey', timeZone),
  };
}

function sideOf(photo: Before | Photo, when: string, timeZone: string): Compared {
  const day = photo.takenAt ? formatInstantDay(photo.takenAt, timeZone) : 'date not known';
  const { width, height } = photo;
  const words = photo.caption ? `${day}: ${photo.caption}` : day;
  return { when, words, src: photo.images.screen, width, height };
}
