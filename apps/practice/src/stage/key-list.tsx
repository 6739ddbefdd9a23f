/** What every key and pedal does. */
import { usePracticeWords } from '../page/words.tsx';

/** The list, folded. */
export function KeyList() {
  const words = usePracticeWords().stage;
  return (
    <details className="key-list">
      <summary>{words.keys}</summary>
      <dl>
        {words.keyList.map(([key, what]) => (
          <div key={key}>
            <dt>
              <kbd>{key}</kbd>
            </dt>
            <dd>{what}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}
