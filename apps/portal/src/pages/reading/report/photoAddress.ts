import { createContext, useContext } from 'react';
import { pathOf } from '../../../api/client.ts';

type AddressOf = (id: string, photoId: string) => string;

const ofReport: AddressOf = (id, photoId) =>
  pathOf('getReportPhotoImage', { id, photoId }, { size: 'screen' });

const PhotoAddress = createContext<AddressOf>(ofReport);

/** Where photos of what is read come from, when not from the report itself. */
export const PhotoAddressProvider = PhotoAddress.Provider;

/** The address of a photo as the document shows it. */
export function usePhotoAddress(id: string, photoId: string): string {
  return useContext(PhotoAddress)(id, photoId);
}
