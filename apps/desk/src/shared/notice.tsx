/** A line at the foot of the page that says what just happened, with a way back where there is one. */
import { createContext, type ReactNode, useCallback, useContext, useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';

interface Notice {
  readonly id: number;
  readonly text: string;
  readonly action?: { readonly label: string; readonly run: () => void };
}

/** Says something. */
export type Say = (text: string, action?: Notice['action']) => void;

const SayContext = createContext<Say>(() => undefined);

/** Seconds that a notice stays; longer with something to press. */
const SECONDS = { plain: 5, action: 12 } as const;

/** Shows notices over what is inside, and lets screen readers hear them. */
export function NoticeProvider({ children }: { readonly children: ReactNode }) {
  const [notice, setNotice] = useState<Notice | null>(null);
  const next = useRef(0);
  const say = useCallback<Say>((text, action) => {
    next.current += 1;
    setNotice({ id: next.current, text, ...(action ? { action } : {}) });
  }, []);
  useEffect(() => {
    if (!notice) return;
    const seconds = notice.action ? SECONDS.action : SECONDS.plain;
    const timer = setTimeout(() => setNotice(null), seconds * 1000);
    return () => clearTimeout(timer);
  }, [notice]);
  const action = notice?.action;
  return (
    <SayContext value={say}>
      {children}
      <div className="notice" role="status" aria-live="polite">
        {notice && (
          <div key={notice.id}>
            <span>{notice.text}</span>
            {action && (
              <Button
                className="button"
                onPress={() => {
                  setNotice(null);
                  action.run();
                }}
              >
                {action.label}
              </Button>
            )}
          </div>
        )}
      </div>
    </SayContext>
  );
}

/** Says what just happened. */
export function useSay(): Say {
  return useContext(SayContext);
}
