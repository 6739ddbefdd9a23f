/** How wide an element is, as it changes. */
import { type RefObject, useEffect, useLayoutEffect, useState } from 'react';

/** Width of an element in CSS pixels; 0 before it is known. */
export function useWidth(element: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const target = element.current;
    if (!target) return;
    setWidth(Math.round(target.clientWidth));
    const observer = new ResizeObserver(([entry]) => setWidth(Math.round(entry?.contentRect.width ?? 0)));
    observer.observe(target);
    return () => observer.disconnect();
  }, [element]);
  return width;
}

/** Whether a media query holds. */
export function useMedia(query: string): boolean {
  const [matches, setMatches] = useState(() => window.matchMedia(query).matches);
  useEffect(() => {
    const media = window.matchMedia(query);
    const look = () => setMatches(media.matches);
    media.addEventListener('change', look);
    return () => media.removeEventListener('change', look);
  }, [query]);
  return matches;
}
