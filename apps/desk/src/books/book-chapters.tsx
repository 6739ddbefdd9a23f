/** The lessons in a book, in order. */
import { Button, Icon, useSay } from '@shedbook/stand';
import type { BooksWords } from '@shedbook/words';
import { useLayoutEffect, useRef, useState } from 'react';
import { TurnButtons } from '../shared/turn-buttons.tsx';
import { withTurn } from '../shared/with-turn.ts';
import styles from './books.module.css';
import { ChapterSections } from './chapter-sections.tsx';
import { type BookChapter, withChapter, withoutChapter } from './chapters.ts';

interface BookChaptersProps {
  readonly chapters: readonly BookChapter[];
  /** What a lesson is called; null where it is gone. */
  readonly titleOf: (lesson: string) => string | null;
  /** What tells a lesson from others that are called the same; null where none is. */
  readonly factsOf: (lesson: string) => string | null;
  readonly words: BooksWords;
  readonly onChange: (chapters: readonly BookChapter[]) => void;
}

/** Puts the focus beside a chapter that was taken out, since its own button is gone. */
function useNeighbour(chapters: readonly BookChapter[]) {
  const list = useRef<HTMLOListElement>(null);
  const place = useRef<number | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the shorter list is what is waited for
  useLayoutEffect(() => {
    if (place.current === null) return;
    list.current?.children[place.current]?.querySelector<HTMLButtonElement>('button:enabled')?.focus();
    place.current = null;
  }, [chapters]);
  return { list, place };
}

/** The list. */
export function BookChapters({ chapters, titleOf, factsOf, words, onChange }: BookChaptersProps) {
  const say = useSay();
  const { list, place } = useNeighbour(chapters);
  const [opened, setOpened] = useState<string | null>(null);
  const latest = useRef(chapters);
  latest.current = chapters;
  const move = (from: number, by: -1 | 1, title: string) => {
    onChange(withTurn(chapters, from, by));
    say(words.moved({ title, n: from + by + 1 }));
  };
  const takeOut = (at: number, chapter: BookChapter, title: string) => {
    place.current = Math.max(0, Math.min(at, chapters.length - 2));
    onChange(withoutChapter(chapters, at));
    const putBack = () => onChange(withChapter(latest.current, at, chapter));
    say(words.takenOut({ title }), { label: words.putBack, run: putBack });
  };
  if (chapters.length === 0) return <p className="quiet">{words.emptyBook}</p>;
  return (
    <ol className={styles.chapters} ref={list}>
      {chapters.map((chapter, index) => {
        const found = chapter.title ?? titleOf(chapter.lesson);
        const title = found ?? words.gone;
        const before = chapters.slice(0, index).filter(({ lesson }) => lesson === chapter.lesson).length;
        const key = `${chapter.lesson} ${before}`;
        const facts = [
          ...(chapter.sections ? [words.someSections({ n: chapter.sections.length })] : []),
          ...(factsOf(chapter.lesson) === null ? [] : [factsOf(chapter.lesson)]),
        ];
        return (
          <li key={key} data-gone={titleOf(chapter.lesson) === null || undefined}>
            <span className={styles.number}>{index + 1}</span>
            <span className={styles.name}>
              {title}
              {facts.length > 0 && <small className="quiet"> {facts.join('; ')}</small>}
            </span>
            {titleOf(chapter.lesson) !== null && (
              <Button
                dress="bare"
                aria-expanded={opened === key}
                aria-label={words.sectionsOf({ title })}
                onClick={() => setOpened(opened === key ? null : key)}
              >
                {words.sections}
              </Button>
            )}
            <TurnButtons
              name={title}
              at={index}
              of={chapters.length}
              words={words}
              onTurn={(by) => move(index, by, title)}
            />
            <Button
              dress="bare"
              aria-label={words.takeOut({ title })}
              onClick={() => takeOut(index, chapter, title)}
            >
              <Icon name="close" />
            </Button>
            {opened === key && (
              <ChapterSections
                {...{ chapter, title, words }}
                onChange={(sections) => onChange(chapters.with(index, { ...chapter, sections }))}
              />
            )}
          </li>
        );
      })}
    </ol>
  );
}
