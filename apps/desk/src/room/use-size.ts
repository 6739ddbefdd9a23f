/** How large an element is, as it changes. */
import { type RefObject, useLayoutEffect, useState } from 'react';

/** Width and height in CSS pixels; 0 before they are known. */
export interface Size {
  /** CSS pixels. */
  readonly width: number;
  /** CSS pixels. */
  readonly height: number;
}

/** The size of an element's inside. */
export function useSize(element: RefObject<HTMLElement | null>): Size {
  const [size, setSize] = useState<Size>({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const target = element.current;
    if (!target) return;
    const measure = () => setSize({ width: target.clientWidth, height: target.clientHeight });
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(target);
    return () => observer.disconnect();
  }, [element]);
  return size;
}
