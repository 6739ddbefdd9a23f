/** What the server has: read once, and looked at again when the window comes to the front. */
import { useCallback, useEffect, useState } from 'react';

/** What was read, null while it is on its way, and a way to look again. */
export interface Fresh<T> {
  readonly value: T | null;
  readonly error: Error | null;
  readonly refresh: () => Promise<void>;
}

/** Reads; what was read last stays where it cannot be read again. @param read the same function each time */
export function useFresh<T>(read: () => Promise<T>): Fresh<T> {
  const [value, setValue] = useState<T | null>(null);
  const [error, setError] = useState<Error | null>(null);
  const refresh = useCallback(async () => {
    try {
      setValue(await read());
      setError(null);
    } catch (reason) {
      setError(reason as Error);
    }
  }, [read]);
  useEffect(() => {
    void refresh();
    window.addEventListener('focus', refresh);
    return () => window.removeEventListener('focus', refresh);
  }, [refresh]);
  return { value, error, refresh };
}
