import { markPath, markStroke } from '@garboard/contract/mark-paths';
import type { Mark, Photo } from '@garboard/contract/photos';
import type { KeyboardEvent, PointerEvent } from 'react';
import { useRef, useState } from 'react';
import type { Point, Shape, Tone } from './geometry.ts';
import { drawn, handlesOf, isSlip, moved, resized, withHandle } from './geometry.ts';
import { labelPlate, MarkDrawing } from './MarkDrawing.tsx';
import { PlainPicture } from './PlainPicture.tsx';
import { markName } from './words.ts';

type Gesture =
  | { kind: 'draw'; shape: Exclude<Shape, 'label'>; from: Point }
  | { kind: 'move'; at: number; from: Point; mark: Mark }
  | { kind: 'handle'; at: number; handle: number; mark: Mark };

/** The picture with its marks over it: drawn, moved and resized by mouse, pen or finger, and by keys. */
export function MarkStage({
  photo,
  marks,
  tool,
  tone,
  chosen,
  onChoose,
  onChange,
  onPlaceLabel,
}: {
  photo: Photo;
  marks: readonly Mark[];
  /** What a gesture on the picture draws; null chooses and moves what is there. */
  tool: Shape | null;
  tone: Tone;
  chosen: number | null;
  onChoose: (at: number | null) => void;
  /** `run` names changes that follow one another and are undone together. */
  onChange: (marks: Mark[], choose?: number, run?: string) => void;
  onPlaceLabel: (at: Point) => void;
}) {
  const stage = useRef<SVGSVGElement>(null);
  const gesture = useRef<Gesture | null>(null);
  // The mark as it is on the way; the list takes it when the gesture ends, as one step.
  const [passing, setPassing] = useState<{ at: number; mark: Mark } | null>(null);
  const size = { width: photo.width, height: photo.height };
  const stroke = markStroke(size);

  const pointOf = (event: PointerEvent): Point => {
    const box = stage.current?.getBoundingClientRect();
    if (!box) return { x: 0, y: 0 };
    // The picture is fitted into the box whole, in its middle.
    const scale = Math.min(box.width / size.width, box.height / size.height);
    return {
      x: (event.clientX - box.left - (box.width - size.width * scale) / 2) / (size.width * scale),
      y: (event.clientY - box.top - (box.height - size.height * scale) / 2) / (size.height * scale),
    };
  };
  const begin = (event: PointerEvent, next: Gesture) => {
    event.stopPropagation();
    stage.current?.setPointerCapture(event.pointerId);
    gesture.current = next;
  };
  const at = (point: Point): { at: number; mark: Mark } | null => {
    const now = gesture.current;
    if (!now) return null;
    if (now.kind === 'draw') return { at: marks.length, mark: drawn(now.shape, now.from, point, tone, size) };
    if (now.kind === 'handle') return { at: now.at, mark: withHandle(now.mark, now.handle, point, size) };
    return { at: now.at, mark: moved(now.mark, { x: point.x - now.from.x, y: point.y - now.from.y }) };
  };
  const end = (event: PointerEvent) => {
    const now = gesture.current;
    const last = at(pointOf(event));
    gesture.current = null;
    setPassing(null);
    if (!now || !last) return;
    const from = now.kind === 'handle' ? null : now.from;
    const shownWidth = stage.current?.clientWidth ?? 0;
    if (from && isSlip(from, pointOf(event), shownWidth)) return;
    const next = [...marks];
    next[last.at] = last.mark;
    onChange(next, last.at);
  };
  const press = (event: KeyboardEvent, index: number, mark: Mark) => {
    const step = event.ctrlKey || event.metaKey ? 0.002 : 0.01;
    const by: Record<string, Point> = {
      ArrowLeft: { x: -step, y: 0 },
      ArrowRight: { x: step, y: 0 },
      ArrowUp: { x: 0, y: -step },
      ArrowDown: { x: 0, y: step },
    };
    const way = by[event.key];
    if (way) {
      const next = [...marks];
      next[index] = event.shiftKey ? resized(mark, way, size) : moved(mark, way);
      onChange(next, index, `${event.shiftKey ? 'resize' : 'move'} ${index}`);
    } else if (event.key === 'Delete' || event.key === 'Backspace') {
      onChange(marks.filter((_, other) => other !== index));
      onChoose(null);
      stage.current?.focus();
    } else if (event.key === 'Enter' || event.key === ' ') onChoose(index);
    else if (event.key === 'Escape') onChoose(null);
    else return;
    event.preventDefault();
  };

  const gestures = {
    onPointerDown: (event: PointerEvent) => {
      if (event.button !== 0) return;
      if (tool === 'label') onPlaceLabel(pointOf(event));
      else if (tool) begin(event, { kind: 'draw', shape: tool, from: pointOf(event) });
      else onChoose(null);
    },
    onPointerMove: (event: PointerEvent) => {
      if (gesture.current) setPassing(at(pointOf(event)));
    },
    onPointerUp: end,
    onPointerCancel: () => {
      gesture.current = null;
      setPassing(null);
    },
  };
  // A part of a drawing can't be a button element, so it is told to be one.
  const markAsButton = (index: number, mark: Mark) => ({
    role: 'button',
    tabIndex: 0,
    'aria-label': markName(mark, index),
    'aria-pressed': chosen === index,
    onFocus: () => onChoose(index),
    onKeyDown: (event: KeyboardEvent) => press(event, index, mark),
    onPointerDown: (event: PointerEvent) => {
      if (event.button !== 0 || tool) return;
      onChoose(index);
      begin(event, { kind: 'move', at: index, from: pointOf(event), mark });
    },
  });

  const shown = [...marks];
  if (passing) shown[passing.at] = passing.mark;
  const held = chosen === null ? undefined : shown[chosen];
  return (
    <fieldset aria-label="The picture and its marks">
      <svg
        ref={stage}
        className="stage"
        tabIndex={-1}
        viewBox={`0 0 ${size.width} ${size.height}`}
        data-drawing={tool !== null}
        {...gestures}
      >
        <title>{photo.caption || photo.fileName}</title>
        <PlainPicture photo={photo} />
        {numbered(shown).map(({ id, index, of: mark }) => (
          <g key={id} className="stage-mark" {...markAsButton(index, mark)}>
            <MarkDrawing mark={mark} size={size} thumb={photo.images.thumb} />
            {mark.shape === 'label' || mark.shape === 'blur' ? null : (
              <path className="reach" d={markPath(mark, size)} strokeWidth={stroke * 9} />
            )}
            <rect
              className="around around-below"
              {...boundsOf(mark, size, stroke * 3)}
              strokeWidth={stroke}
            />
            <rect
              className="around"
              {...boundsOf(mark, size, stroke * 3)}
              strokeWidth={stroke}
              strokeDasharray={stroke * 3}
            />
          </g>
        ))}
        {held && chosen !== null && !tool
          ? numbered(handlesOf(held, size)).map(({ id, index, of: handle }) => (
              <circle
                key={id}
                className="stage-handle"
                cx={handle.x * size.width}
                cy={handle.y * size.height}
                r={stroke * 4}
                strokeWidth={stroke}
                onPointerDown={(event) =>
                  begin(event, { kind: 'handle', at: chosen, handle: index, mark: held })
                }
              />
            ))
          : null}
      </svg>
    </fieldset>
  );
}

/** Marks and handles have no name of their own; their place is what they keep while they are worked on. */
function numbered<T>(all: readonly T[]): { id: string; index: number; of: T }[] {
  return all.map((of, index) => ({ id: `place-${index}`, index, of }));
}

/** The frame round a mark, with room on every side, in pixels. */
function boundsOf(mark: Mark, size: { width: number; height: number }, room: number) {
  const frame = (x0: number, y0: number, x1: number, y1: number) => ({
    x: Math.min(x0, x1) - room,
    y: Math.min(y0, y1) - room,
    width: Math.abs(x1 - x0) + 2 * room,
    height: Math.abs(y1 - y0) + 2 * room,
  });
  if (mark.shape === 'label') {
    const { x, y, width, height } = labelPlate(mark, size);
    return frame(x, y, x + width, y + height);
  }
  if (mark.shape === 'ring') {
    const r = mark.radius * size.width;
    const [x, y] = [mark.centre.x * size.width, mark.centre.y * size.height];
    return frame(x - r, y - r, x + r, y + r);
  }
  const { from, to } = mark;
  return frame(from.x * size.width, from.y * size.height, to.x * size.width, to.y * size.height);
}
