const rowOf = (id: string) =>
  document.querySelector<HTMLElement>(`[role="row"][data-key="${CSS.escape(id)}"]`);

/** Brings the focus back to a photo of the grid, once what lay over it has gone. */
export function focusPhoto(id: string): void {
  requestAnimationFrame(() => rowOf(id)?.focus({ preventScroll: true }));
}

/** Brings a photo to the middle of the window, so that those after it are in the page too. */
export function showAround(id: string): void {
  rowOf(id)?.scrollIntoView({ block: 'center', behavior: 'instant' });
}
