const lock = 'garboard-writing';

/** Says to every window that something unsaved is being written in this one, until the function returned is called. */
export function holdWriting(): () => void {
  let release: () => void = () => undefined;
  const until = new Promise<void>((done) => {
    release = done;
  });
  void navigator.locks?.request(lock, { mode: 'shared' }, () => until);
  return release;
}

/** Does something at a moment when nothing is being written in any window; says whether it was one. */
export function whenNothingWritten(act: () => void): Promise<boolean> {
  return navigator.locks.request(lock, { ifAvailable: true }, (held) => {
    if (held) act();
    return held !== null;
  });
}
