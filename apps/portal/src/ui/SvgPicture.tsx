import { useEffect, useRef } from 'react';

/**
 * A drawing that came from the server as SVG. It is parsed, not written into the page as text: a drawing that isn't
 * well-formed SVG shows nothing, and no script in it can run.
 */
export function SvgPicture({ svg }: { svg: string }) {
  const frame = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const root = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
    const drawn = root.localName === 'svg';
    frame.current?.replaceChildren(...(drawn ? [document.importNode(root, true)] : []));
  }, [svg]);
  return <div className="svg-picture" ref={frame} />;
}
