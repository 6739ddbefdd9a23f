/** Whether something is in sight or about to be: one observer for all. */
import { type RefObject, startTransition, useEffect, useState } from 'react';

/** How far beyond the window something is near. */
const MARGIN = '400px 0px';

const watched = new Map<Element, (isNear: boolean) => void>();
let observer: IntersectionObserver | null = null;

function sharedObserver(): IntersectionObserver {
  observer ??= new IntersectionObserver(
    (entries) => {
      for (const { target, isIntersecting } of entries) watched.get(target)?.(isIntersecting);
    },
    { rootMargin: MARGIN },
  );
  return observer;
}

/** Whether the element is near. */
export function useNear(element: RefObject<HTMLElement | null>): boolean {
  const [isNear, setNear] = useState(false);
  useEffect(() => {
    const target = element.current;
    if (!target) return undefined;
    // What comes into sight is drawn when there is time: scrolling goes first.
    watched.set(target, (near) => startTransition(() => setNear(near)));
    sharedObserver().observe(target);
    return () => {
      watched.delete(target);
      sharedObserver().unobserve(target);
    };
  }, [element]);
  return isNear;
}
