/** The files that a student can take along. */
import { STANDARD_FORMAT_NAMES } from '@shedbook/core';
import type { PackDownload } from '@shedbook/pack';
import { sizeWords } from '@shedbook/words';
import { usePracticeWords } from '../page/words.tsx';
import { usePracticeSession } from '../session/practice-session.tsx';
import styles from './downloads.module.css';

const KINDS = ['film', 'audio', ...STANDARD_FORMAT_NAMES.toReversed()] as const;

function fileName(path: string): string {
  return path.slice(path.lastIndexOf('/') + 1);
}

interface LinkProps {
  readonly file: PackDownload;
  readonly children: string;
}

function FileLink({ file, children }: LinkProps) {
  const { sizes } = usePracticeWords();
  return (
    <a className={styles.file} href={file.path} download={fileName(file.path)}>
      <span>{children}</span>
      <span className="quiet">{sizeWords(sizes, file.bytes)}</span>
    </a>
  );
}

interface EachProps {
  readonly kind: (typeof KINDS)[number];
  readonly files: readonly PackDownload[];
}

function EachExercise({ kind, files }: EachProps) {
  const words = usePracticeWords();
  const of = files.filter((file) => file.kind === kind && file.exercise !== null);
  if (of.length === 0) return null;
  return (
    <details>
      <summary>
        {words.downloads.each}: {words.downloads[kind]}
      </summary>
      <ul className={styles.grid}>
        {of.map((file) => (
          <li key={file.path}>
            <FileLink file={file}>{words.sheet.exercise({ n: file.exercise ?? 0 })}</FileLink>
          </li>
        ))}
      </ul>
    </details>
  );
}

/** The list. */
export function Downloads() {
  const { pack } = usePracticeSession();
  const words = usePracticeWords().downloads;
  const whole = pack.downloads.filter((file) => file.exercise === null && file.kind !== 'audio');
  const label = (file: PackDownload) =>
    file.kind === 'sheet' || file.kind === 'lesson' ? words[file.kind] : `${words[file.kind]}, ${words.all}`;
  return (
    <section id="downloads" className={styles.downloads} aria-labelledby="downloads-title">
      <h2 id="downloads-title">{words.title}</h2>
      <p className="quiet">{words.lead}</p>
      <ul>
        {whole.map((file) => (
          <li key={file.path}>
            <FileLink file={file}>{label(file)}</FileLink>
          </li>
        ))}
      </ul>
      {KINDS.map((kind) => (
        <EachExercise key={kind} kind={kind} files={pack.downloads} />
      ))}
    </section>
  );
}
