let lastPath: string | null = null;

/**
 * Whether a path is a new place: the first page of a visit leaves the focus where the browser put it, later
 * ones take it to their heading. Asked once a page, also when its content comes late.
 */
export const arrival = {
  take(path: string): boolean {
    const moved = lastPath !== null && lastPath !== path;
    lastPath = path;
    return moved;
  },
  /** The page stays what it is while its address becomes this one: nothing is scrolled, the focus stays. */
  stayAt(path: string): void {
    lastPath = path;
  },
};
