/**
 * A page for a phone in somebody's hand: whether it sounds, by which clock, what its microphone does, what it keeps, and
 * what it is, in one picture to send to whoever helps.
 */
import { type LanguageTag, loadSoundCheck, type SoundCheckWords } from '@shedbook/words';
import { useEffect, useState } from 'react';
import { Button } from '../controls/button.tsx';
import { momentNow } from '../device/moment.ts';
import type { Player } from '../sound/player.ts';
import { lookAtStorage, tryMicrophone, trySound } from './facts.ts';
import { pictureOf } from './picture.ts';
import { type Found, isChanged, type Part, partsOf } from './rows.ts';
import styles from './sound-check.module.css';

interface SoundCheckProps {
  readonly tag: LanguageTag;
  /** The player of the page. */
  readonly player: Player;
  readonly onBack: () => void;
}

/** The words, once they are there. */
function useSoundCheckWords(tag: LanguageTag): SoundCheckWords | null {
  const [words, setWords] = useState<SoundCheckWords | null>(null);
  useEffect(() => {
    void loadSoundCheck(tag).then((loaded) => setWords(() => loaded));
  }, [tag]);
  return words;
}

/** What was found, and the two ways to find more. */
function useFound(player: Player) {
  const [found, setFound] = useState<Found | null>(null);
  const [isBusy, setBusy] = useState(false);
  const during = async (work: () => Promise<void>) => {
    setBusy(true);
    await work().finally(() => setBusy(false));
  };
  const run = () =>
    during(async () => {
      const [sound, storage] = await Promise.all([trySound(player), lookAtStorage()]);
      setFound({ sound, storage, microphone: null, at: momentNow() });
    });
  const hear = () =>
    during(async () => {
      const microphone = await tryMicrophone();
      setFound((before) => before && { ...before, microphone });
    });
  return { found, isBusy, run, hear };
}

function saveFile(file: File): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = file.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

/** Whether the browser hands files to other programs. */
function mayShare(): boolean {
  const file = new File([], 'sound.png', { type: 'image/png' });
  return navigator.canShare?.({ files: [file] }) ?? false;
}

interface PicturesProps {
  readonly parts: readonly Part[];
  readonly words: SoundCheckWords;
}

function Pictures({ parts, words }: PicturesProps) {
  const save = async () => saveFile(await pictureOf(parts, words));
  // Whoever decides not to send it after all has done nothing wrong.
  const send = async () =>
    navigator.share?.({ files: [await pictureOf(parts, words)] }).catch(() => undefined);
  return (
    <>
      <Button onClick={() => void save()}>{words.save}</Button>
      {mayShare() && <Button onClick={() => void send()}>{words.send}</Button>}
    </>
  );
}

function Parts({ parts, words }: PicturesProps) {
  return parts.map(({ key, rows }) => (
    <section key={key} data-part={`check-${key}`}>
      <h2>{words.parts[key]}</h2>
      <dl className={styles.rows}>
        {rows.map((row) => (
          <div key={row.key} data-row={row.key}>
            <dt>{words.rows[row.key]}</dt>
            <dd>{row.value}</dd>
          </div>
        ))}
      </dl>
    </section>
  ));
}

/** The page. */
export function SoundCheck({ tag, player, onBack }: SoundCheckProps) {
  const words = useSoundCheckWords(tag);
  const { found, isBusy, run, hear } = useFound(player);
  if (!words) return null;
  const parts = found ? partsOf(found, words) : [];
  return (
    <main className={styles.page} data-part="sound-check">
      <h1>{words.title}</h1>
      <p>{words.lead}</p>
      <div className={styles.ways}>
        <Button dress="strong" disabled={isBusy} onClick={() => void run()}>
          {words.run}
        </Button>
        {found && (
          <Button disabled={isBusy} onClick={() => void hear()}>
            {words.microphone}
          </Button>
        )}
        {found && <Pictures parts={parts} words={words} />}
        <Button dress="bare" onClick={onBack}>
          {words.back}
        </Button>
      </div>
      <p role="status">
        {isBusy && words.runs}
        {!isBusy && isChanged(found?.microphone ?? null) && words.changed}
      </p>
      <Parts parts={parts} words={words} />
    </main>
  );
}
