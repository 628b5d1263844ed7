import type { Mark } from '@garboard/contract/photos';
import { count, listed } from '../../../ui/format.ts';
import type { Shape } from './geometry.ts';

export const shapeLabels: Readonly<Record<Shape, string>> = {
  arrow: 'Arrow',
  ring: 'Ring',
  box: 'Box',
  line: 'Line',
  label: 'Label',
  blur: 'Privacy blur',
};
export const shapes = Object.keys(shapeLabels) as Shape[];

/** What a mark is called aloud. */
export function markName(mark: Mark, at: number): string {
  const words = mark.shape === 'label' ? `: ${mark.text}` : '';
  return `${at + 1}. ${shapeLabels[mark.shape]}${words}`;
}

/** All marks in one line: `2 arrows and 1 ring`. */
export function marksInWords(marks: readonly Mark[]): string {
  const parts = shapes.flatMap((shape) => {
    const n = marks.filter((mark) => mark.shape === shape).length;
    const one = shapeLabels[shape].toLowerCase();
    return n ? [count(n, one, one.endsWith('x') ? `${one}es` : `${one}s`)] : [];
  });
  return parts.length ? listed(parts) : 'No marks';
}

/** A label whose words were all taken out keeps saying that it is one. */
export function worded(mark: Mark): Mark {
  return mark.shape === 'label' && !mark.text.trim() ? { ...mark, text: shapeLabels.label } : mark;
}
