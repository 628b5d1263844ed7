/** A picture as SVG text, with the words that stand in for it. Widths and heights are in px of its viewBox. */
export interface Drawing {
  /** What it is within its worksheet: `pressure`, `map`. */
  key: string;
  title: string;
  /** What a reader who can't see it needs to know. */
  description: string;
  width: number;
  height: number;
  svg: string;
}

type Attributes = Record<string, string | number | undefined>;

const escapes: Record<string, string> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
export const escaped = (text: string): string => text.replace(/[&<>"']/g, (c) => escapes[c] ?? c);

/** Coordinates to a hundredth of a px: finer than print shows, and half the bytes. */
export const px = (value: number): string => String(Math.round(value * 100) / 100);

const attributeText = (attributes: Attributes): string =>
  Object.entries(attributes)
    .map(([name, value]) =>
      value === undefined ? '' : ` ${name}="${typeof value === 'number' ? px(value) : escaped(value)}"`,
    )
    .join('');

/** One element. Attributes are escaped; `children` are elements already made. */
export const el = (name: string, attributes: Attributes, ...children: string[]): string =>
  children.length === 0
    ? `<${name}${attributeText(attributes)}/>`
    : `<${name}${attributeText(attributes)}>${children.join('')}</${name}>`;

/** A text element; the words are escaped. */
export const label = (words: string, attributes: Attributes): string =>
  el('text', attributes, escaped(words));

/** Puts elements together as one picture that says what it is to those who can't see it. */
export function picture(
  about: { key: string; title: string; description: string; width: number; height: number },
  ...children: string[]
): Drawing {
  const svg = el(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${px(about.width)} ${px(about.height)}`,
      role: 'img',
      'font-family': "Report, 'Source Sans 3 Variable', 'Source Sans 3', sans-serif",
      'font-size': 12,
      fill: 'none',
    },
    el('title', {}, escaped(about.title)),
    el('desc', {}, escaped(about.description)),
    ...children,
  );
  return { ...about, svg };
}
