import Bowser from 'bowser';

/** What a browser calls itself, in words such as `Firefox on Linux`; empty when it says nothing that is known. */
export function deviceWords(userAgent: string | undefined): string {
  if (!userAgent) return '';
  const { browser, os } = Bowser.parse(userAgent.slice(0, 400));
  return [browser.name, os.name].filter(Boolean).join(' on ').slice(0, 80);
}
