import { grantFor } from '@garboard/trade/permissions';
import { useMe } from './session.tsx';

/** The firm the person works for, and whether they may change its catalogue. Staff pages only. */
export function useFirm(): { firmId: string; writesCatalogue: boolean } {
  const mine = useMe().firmRoles[0];
  return {
    firmId: mine?.firm.id ?? '',
    writesCatalogue: mine ? grantFor('catalogue.write', mine.role) === 'yes' : false,
  };
}
