/** What to practise today, what was played, takes, and care for ears and body. */
import { CareView } from '../care/care-view.tsx';
import { HistoryView } from '../history/history-view.tsx';
import { useLog } from '../log/log-store.ts';
import { LogView } from '../log/log-view.tsx';
import { ProgressView } from '../progress/progress-view.tsx';
import { usePracticeSession } from '../session/practice-session.tsx';
import { Answers } from '../takes/answers.tsx';
import { TakesView } from '../takes/takes-view.tsx';
import { SendingLine } from '../week/sending-line.tsx';
import styles from './plan-body.module.css';
import { TodayView } from './today-view.tsx';

/** The panel. */
export default function PlanBody() {
  const kept = useLog();
  const { pack } = usePracticeSession();
  if (!kept) return null;
  const { log } = kept;
  return (
    <div className={styles.panel}>
      <TodayView log={log} />
      {pack.isPrivate && <Answers />}
      <div className={styles.more}>
        <SendingLine />
        <LogView kept={kept} shelf={[{ id: pack.id, lesson: pack.lesson }]} />
        <ProgressView log={log} />
        <TakesView />
        <HistoryView kept={kept} />
        <CareView log={log} />
      </div>
    </div>
  );
}
