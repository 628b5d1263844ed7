import { type Drawing, escaped } from '@garboard/trade/drawing/svg';

type Shown = Pick<Drawing, 'title' | 'description' | 'svg'>;

/** A drawing in the page, with its title and description as its text for those who can't see it. */
export function Drawn({
  drawing: { title, description, svg },
  className,
}: {
  drawing: Shown;
  className?: string;
}) {
  const text = escaped([title, description].filter(Boolean).join('. '));
  // Drawn by our own module, which escapes every word in it; React would escape the drawing itself.
  const markup = { dangerouslySetInnerHTML: { __html: svg.replace('<svg ', `<svg aria-label="${text}" `) } };
  return <div className={className} {...markup} />;
}
