/** What every key does. */
import styles from './key-list.module.css';

/** The list: keys, and what they mean. */
export function KeyList({ keys }: { readonly keys: readonly (readonly [string, string])[] }) {
  return (
    <dl className={styles.keys}>
      {keys.map(([key, meaning]) => (
        <div key={key}>
          <dt>
            <kbd>{key}</kbd>
          </dt>
          <dd>{meaning}</dd>
        </div>
      ))}
    </dl>
  );
}
