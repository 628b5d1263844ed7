import { ink, muted, outline, paper, signal, wash } from '../../drawing/style.ts';
import { type Drawing, el, label, picture } from '../../drawing/svg.ts';
import {
  codeOf,
  probabilities,
  probabilityOrder,
  type Risk,
  riskLevels,
  riskOf,
  severities,
  severityOrder,
} from '../../risk-table.ts';

const left = 150;
const top = 62;
const wide = 118;
const high = 38;

const isGrave = (risk: Risk) => ['high', 'serious'].includes(riskOf(risk));

/** The matrix with the cell of the risk marked, and the cell it would have after the work. */
export function drawMatrix(now: Risk, after: Risk | undefined): Drawing {
  const place = ({ severity, probability }: Risk) => ({
    x: left + severityOrder.indexOf(severity) * wide,
    y: top + probabilityOrder.indexOf(probability) * high,
  });
  const mark = (risk: Risk, words: string, first: boolean) => {
    const { x, y } = place(risk);
    const colour = first && isGrave(risk) ? signal : ink;
    return (
      el('rect', {
        x: x + 2,
        y: y + 2,
        width: wide - 4,
        height: high - 4,
        stroke: colour,
        'stroke-width': 3,
        'stroke-dasharray': first ? undefined : '5 4',
      }) +
      label(words, {
        x: x + wide - 9,
        y: y + high - 8,
        'text-anchor': 'end',
        'font-size': 11,
        fill: colour,
      })
    );
  };
  const same = after && codeOf(after) === codeOf(now);
  return picture(
    {
      key: 'matrix',
      title: 'Risk by severity and probability',
      description: `Now ${codeOf(now)}, ${riskLevels[riskOf(now)].toLowerCase()}${
        after ? `; after the work ${codeOf(after)}, ${riskLevels[riskOf(after)].toLowerCase()}` : ''
      }.`,
      width: 640,
      height: top + probabilityOrder.length * high + 16,
    },
    label('Severity', { x: left + 2 * wide, y: 20, 'text-anchor': 'middle', fill: muted }),
    label('Probability', { x: 14, y: top - 12, fill: muted }),
    ...severityOrder.map((severity, column) =>
      label(`${severities[severity].category} ${severities[severity].name}`, {
        x: left + (column + 0.5) * wide,
        y: top - 12,
        'text-anchor': 'middle',
        fill: ink,
      }),
    ),
    ...probabilityOrder.flatMap((probability, row) => [
      label(`${probabilities[probability].level} ${probabilities[probability].name}`, {
        x: 14,
        y: top + (row + 0.5) * high + 4,
        fill: ink,
      }),
      ...severityOrder.map((severity) => {
        const risk = riskOf({ severity, probability });
        const { x, y } = place({ severity, probability });
        const grave = isGrave({ severity, probability });
        return (
          el('rect', {
            x,
            y,
            width: wide,
            height: high,
            fill: grave ? wash : paper,
            stroke: ink,
            'stroke-width': 0.75,
          }) +
          label(riskLevels[risk], {
            x: x + 10,
            y: y + high / 2 + 4,
            fill: risk === 'low' || risk === 'eliminated' ? muted : ink,
            'font-weight': grave ? 'bold' : undefined,
          })
        );
      }),
    ]),
    el('rect', {
      x: left,
      y: top,
      width: 4 * wide,
      height: probabilityOrder.length * high,
      stroke: ink,
      'stroke-width': outline,
    }),
    ...(after && !same ? [mark(after, 'after', false)] : []),
    mark(now, same ? 'now and after' : 'now', true),
  );
}
