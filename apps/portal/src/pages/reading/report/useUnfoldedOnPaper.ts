import { useEffect } from 'react';

/** On paper nothing can be unfolded: what is folded up is opened while the page is printed. */
export function useUnfoldedOnPaper(): void {
  useEffect(() => {
    let folded: HTMLDetailsElement[] = [];
    const before = () => {
      folded = [...document.querySelectorAll<HTMLDetailsElement>('.report-read details:not([open])')];
      for (const details of folded) details.open = true;
    };
    const after = () => {
      for (const details of folded) details.open = false;
    };
    window.addEventListener('beforeprint', before);
    window.addEventListener('afterprint', after);
    return () => {
      window.removeEventListener('beforeprint', before);
      window.removeEventListener('afterprint', after);
    };
  }, []);
}
