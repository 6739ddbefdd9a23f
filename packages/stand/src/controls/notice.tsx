/** A line at the foot of the page that says what just happened, with a way back where there is one. */
import { createContext, type ReactNode, useCallback, useContext, useEffect, useRef, useState } from 'react';
import { Button } from './button.tsx';
import styles from './notice.module.css';

/** Something to do about what a notice says. */
export interface NoticeAction {
  readonly label: string;
  readonly run: () => void;
}

interface NoticeLineProps {
  readonly text: string | null;
  readonly action?: NoticeAction | undefined;
}

/** The line; screen readers hear it as its text comes. */
export function NoticeLine({ text, action }: NoticeLineProps) {
  return (
    <div className={styles.notice} role="status" aria-live="polite" data-part="notice">
      {text !== null && (
        <div>
          <span>{text}</span>
          {action && <Button onClick={action.run}>{action.label}</Button>}
        </div>
      )}
    </div>
  );
}

interface Notice {
  readonly text: string;
  readonly action?: NoticeAction | undefined;
}

/** Says something. */
export type Say = (text: string, action?: NoticeAction) => void;

const SayContext = createContext<Say>(() => undefined);

/** Seconds that a notice stays; longer with something to press. */
const SECONDS = { plain: 5, action: 12 } as const;

/** Shows notices over what is inside. */
export function NoticeProvider({ children }: { readonly children: ReactNode }) {
  const [notice, setNotice] = useState<Notice | null>(null);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const say = useCallback<Say>((text, action) => {
    clearTimeout(timer.current);
    const seconds = action ? SECONDS.action : SECONDS.plain;
    timer.current = setTimeout(() => setNotice(null), seconds * 1000);
    const run = () => {
      setNotice(null);
      action?.run();
    };
    setNotice({ text, action: action && { label: action.label, run } });
  }, []);
  useEffect(() => () => clearTimeout(timer.current), []);
  return (
    <SayContext value={say}>
      {children}
      <NoticeLine text={notice?.text ?? null} action={notice?.action} />
    </SayContext>
  );
}

/** Says what just happened. */
export function useSay(): Say {
  return useContext(SayContext);
}
