import type { ReactNode } from 'react';
import { Dialog as AriaDialog } from 'react-aria-components/Dialog';
import { Heading } from 'react-aria-components/Heading';
import { Modal, ModalOverlay } from 'react-aria-components/Modal';
import { Button } from './Button.tsx';

/** A sheet over the page that keeps the focus until it is closed; Escape closes it. */
export function Dialog({
  title,
  onClose,
  wide = false,
  role = 'dialog',
  children,
}: {
  title: string;
  onClose: () => void;
  wide?: boolean;
  role?: 'dialog' | 'alertdialog';
  children: ReactNode;
}) {
  return (
    <ModalOverlay
      isOpen
      isDismissable={role === 'dialog'}
      onOpenChange={(open) => {
        if (!open) onClose();
      }}
      className="veil"
    >
      <Modal className={wide ? 'sheet sheet-wide' : 'sheet'}>
        <AriaDialog role={role}>
          <Heading slot="title" level={2}>
            {title}
          </Heading>
          <div className="stack">{children}</div>
        </AriaDialog>
      </Modal>
    </ModalOverlay>
  );
}

/** Asks before something that can't be undone. The way back comes first and is the one Escape takes. */
export function ConfirmDialog({
  title,
  children,
  confirmLabel,
  cancelLabel = 'Cancel',
  busy = false,
  onConfirm,
  onClose,
}: {
  title: string;
  children: ReactNode;
  confirmLabel: string;
  cancelLabel?: string;
  busy?: boolean;
  onConfirm: () => void;
  onClose: () => void;
}) {
  return (
    <Dialog title={title} onClose={onClose} role="alertdialog">
      {children}
      <div className="actions">
        <Button onClick={onClose} autoFocus>
          {cancelLabel}
        </Button>
        <Button kind="main" busy={busy} onClick={onConfirm}>
          {confirmLabel}
        </Button>
      </div>
    </Dialog>
  );
}
