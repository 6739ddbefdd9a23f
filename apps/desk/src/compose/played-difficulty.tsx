/** Difficulty that learns: what the roster's practice says of each weight, how sure that is, and taking it or leaving it. */
import { sureWeights, tellsBetter, type WeightFit } from '@shedbook/coach';
import { Button, useSay as useNotice } from '@shedbook/stand';
import { useDocument } from '../document/use-document.ts';
import { setWeights } from '../edit/compose-settings.ts';
import { useWords } from '../words/words.tsx';
import shared from './compose-view.module.css';
import styles from './played-difficulty.module.css';
import { useWeightFit } from './use-weight-fit.ts';

interface PlayedDifficultyProps {
  /** Lasting name of the lesson. */
  readonly id: string;
  readonly text: string;
}

interface FitTableProps {
  readonly fit: WeightFit;
}

/** Weight by weight, those that anything was played of. */
function FitTable({ fit }: FitTableProps) {
  const words = useWords().compose;
  return (
    <table className={styles.fit}>
      <thead>
        <tr>
          <th scope="col">{words.weight}</th>
          <th scope="col">{words.weightNow}</th>
          <th scope="col">{words.weightPlayed}</th>
          <th scope="col">{words.weightExercises}</th>
        </tr>
      </thead>
      <tbody>
        {fit.weights
          .filter(({ exercises }) => exercises > 0)
          .map(({ part, now, fitted, error, exercises }) => (
            <tr key={part}>
              <th scope="row">{words.parts[part]}</th>
              <td>{words.weightPoints({ points: now })}</td>
              <td>{words.weightWithin({ points: fitted, error })}</td>
              <td>{exercises}</td>
            </tr>
          ))}
      </tbody>
    </table>
  );
}

function verdictOf(fit: WeightFit): 'fitTooFew' | 'fitBetter' | 'fitNoBetter' {
  const isBetter = tellsBetter(fit);
  if (isBetter === null) return 'fitTooFew';
  return isBetter ? 'fitBetter' : 'fitNoBetter';
}

/** The look, the table, and the two answers. */
export function PlayedDifficulty({ id, text }: PlayedDifficultyProps) {
  const document = useDocument();
  const notice = useNotice();
  const all = useWords();
  const words = all.compose;
  const { fit, isLooking, look, putAway } = useWeightFit();
  const sure = fit ? sureWeights(fit) : [];
  const take = () => {
    document.edit(setWeights(document.state().text, sure));
    putAway();
    notice(words.weightsTaken({ n: sure.length }), {
      label: all.desk.undo,
      run: () => void document.undo(),
    });
  };
  return (
    <details className={shared.second} data-part="played-difficulty">
      <summary>{words.learn}</summary>
      <div className={shared.opened}>
        <p>{words.learnLead}</p>
        <Button disabled={isLooking} onClick={() => void look({ id, text })}>
          {words.look}
        </Button>
        <p role="status">
          {isLooking && words.looking}
          {fit && !isLooking && (fit.tries === 0 ? words.nothingPlayed : words.playedRounds(fit))}
        </p>
        {fit && fit.tries > 0 && (
          <>
            <FitTable fit={fit} />
            <p>{words[verdictOf(fit)]}</p>
            <div className={shared.placing}>
              <Button dress="strong" disabled={sure.length === 0} onClick={take}>
                {words.takeWeights({ n: sure.length })}
              </Button>
              <Button onClick={putAway}>{words.leaveWeights}</Button>
            </div>
          </>
        )}
      </div>
    </details>
  );
}
