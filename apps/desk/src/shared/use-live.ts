/** A value that is being dragged: shown at once, kept when it is let go. */
import { useEffect, useState } from 'react';

/** The value as it is being dragged; back to what is kept when that changes. */
export function useLive<T>(kept: T): readonly [T, (value: T) => void] {
  const [live, setLive] = useState(kept);
  useEffect(() => setLive(kept), [kept]);
  return [live, setLive];
}
