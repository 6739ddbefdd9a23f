/** A lesson on the desk: its first page, its title, and what can be done with it. */

import { Icon } from '@shedbook/stand';
import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import type { DeskLesson } from '../document/use-lessons.ts';
import { go, pathOf, type Route } from '../shared/route.ts';
import { useLanguage, useWords } from '../words/words.tsx';
import { SheetPicture } from './sheet-picture.tsx';

/** What the menu of a lesson offers. */
export type CardAction = 'rename' | 'duplicate' | 'yaml' | 'musicxml' | 'midi' | 'remove';

interface LessonCardProps {
  readonly lesson: DeskLesson;
  readonly onAction: (action: CardAction) => void;
}

function useWhen(): (iso: string) => string {
  const { tag } = useLanguage();
  const thisYear = new Date().getFullYear();
  return (iso) => {
    const date = new Date(iso);
    const year = date.getFullYear() === thisYear ? {} : { year: 'numeric' as const };
    return new Intl.DateTimeFormat(tag, { day: 'numeric', month: 'short', ...year }).format(date);
  };
}

function CardMenu({
  title,
  onAction,
}: {
  readonly title: string;
  readonly onAction: (action: CardAction) => void;
}) {
  const words = useWords().desk;
  return (
    <MenuTrigger>
      <Button className="button bare" aria-label={words.more(title)}>
        <Icon name="more" />
      </Button>
      <Popover className="popover" placement="bottom end">
        <Menu className="menu" aria-label={words.more(title)} onAction={(key) => onAction(key as CardAction)}>
          {(
            [
              ['rename', words.rename],
              ['duplicate', words.duplicate],
              ['yaml', words.exportLesson],
              ['musicxml', words.exportMusicXml],
              ['midi', words.exportMidi],
              ['remove', words.remove],
            ] as const
          ).map(([key, label]) => (
            <MenuItem key={key} id={key} className="menu-item">
              {label}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}

/** One lesson of the list. */
export function LessonCard({ lesson, onAction }: LessonCardProps) {
  const words = useWords().desk;
  const when = useWhen();
  const { reading, stored } = lesson;
  const title = lesson.title ?? words.untitled;
  const route: Route = { at: 'lesson', id: stored.id, view: 'page' };
  const errors = reading.problems.filter((problem) => problem.severity === 'error').length;
  const facts = reading.lesson ? words.exercises(reading.lesson.exercises.length) : words.problems(errors);
  return (
    <li className="lesson-card">
      <div className="card-sheet">
        <SheetPicture lesson={reading.lesson} />
        <a
          className="card-link"
          href={pathOf(route)}
          onClick={(event) => {
            if (event.metaKey || event.ctrlKey || event.shiftKey) return;
            event.preventDefault();
            go(route);
          }}
        >
          <span className="hidden-words">{words.open(title)}</span>
        </a>
      </div>
      <div className="card-words">
        <div>
          <h2>{title}</h2>
          <p className="quiet">
            <span>{facts}</span>
            <span>{words.changed(when(stored.updatedAt))}</span>
          </p>
        </div>
        <CardMenu title={title} onAction={onAction} />
      </div>
    </li>
  );
}
