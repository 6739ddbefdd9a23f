/** The lessons in a book, in order. */
import { Button, Icon, useSay } from '@shedbook/stand';
import type { BooksWords } from '@shedbook/words';
import { useEffect, useRef, useState } from 'react';
import styles from './books.module.css';
import { ChapterSections } from './chapter-sections.tsx';
import { type BookChapter, movedChapter, withChapter, withoutChapter } from './chapters.ts';

interface BookChaptersProps {
  readonly chapters: readonly BookChapter[];
  /** What a lesson is called; null where it is gone. */
  readonly titleOf: (lesson: string) => string | null;
  /** What tells a lesson from others that are called the same; null where none is. */
  readonly factsOf: (lesson: string) => string | null;
  readonly words: BooksWords;
  readonly onChange: (chapters: readonly BookChapter[]) => void;
}

type Direction = 'earlier' | 'later';

/** Keeps the focus on the button that moved a chapter, or on its neighbour where it can be moved no further. */
function useFollow() {
  const list = useRef<HTMLOListElement>(null);
  const wanted = useRef<{ readonly place: number; readonly direction: Direction } | null>(null);
  useEffect(() => {
    if (!wanted.current) return;
    const { place, direction } = wanted.current;
    wanted.current = null;
    const buttons = [...(list.current?.children[place]?.querySelectorAll('button') ?? [])];
    const free = buttons.filter(({ disabled }) => !disabled);
    const own = free.find(({ dataset }) => dataset['moves'] === direction);
    (own ?? free.find(({ dataset }) => dataset['moves']) ?? free[0])?.focus();
  });
  return { list, wanted };
}

/** The list. */
export function BookChapters({ chapters, titleOf, factsOf, words, onChange }: BookChaptersProps) {
  const say = useSay();
  const { list, wanted } = useFollow();
  const [opened, setOpened] = useState<string | null>(null);
  const latest = useRef(chapters);
  latest.current = chapters;
  const move = (from: number, direction: Direction, title: string) => {
    const to = direction === 'earlier' ? from - 1 : from + 1;
    wanted.current = { place: to, direction };
    onChange(movedChapter(chapters, from, to));
    say(words.moved({ title, n: to + 1 }));
  };
  const takeOut = (at: number, chapter: BookChapter, title: string) => {
    wanted.current = { place: Math.max(0, Math.min(at, chapters.length - 2)), direction: 'earlier' };
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
            <Button
              dress="bare"
              data-moves="earlier"
              disabled={index === 0}
              aria-label={words.earlier({ title })}
              onClick={() => move(index, 'earlier', title)}
            >
              <Icon name="up" />
            </Button>
            <Button
              dress="bare"
              data-moves="later"
              disabled={index === chapters.length - 1}
              aria-label={words.later({ title })}
              onClick={() => move(index, 'later', title)}
            >
              <Icon name="down" />
            </Button>
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
