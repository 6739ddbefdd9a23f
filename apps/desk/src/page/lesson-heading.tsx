/** The heading of the page: title and author are written where they stand; meter, feel and tempo in a small form. */
import { formatFeel, type Lesson } from '@shedbook/core';
import { useEffect, useState } from 'react';
import { Button, Dialog, DialogTrigger, Popover } from 'react-aria-components';
import { useDocument } from '../document/use-document.ts';
import { setBy, setTitle } from '../edit/heading.ts';
import { useWords } from '../words/words.tsx';
import { feelWords } from './feel-words.ts';
import { MeasureForm } from './measure-form.tsx';

interface PlainFieldProps {
  readonly label: string;
  readonly value: string;
  readonly className: string;
  readonly onKeep: (value: string) => void;
}

/** Text that looks printed and can be written over. */
function PlainField({ label, value, className, onKeep }: PlainFieldProps) {
  const [text, setText] = useState(value);
  useEffect(() => setText(value), [value]);
  return (
    <input
      className={`plain-field ${className}`}
      aria-label={label}
      placeholder={label}
      value={text}
      onChange={(event) => setText(event.target.value)}
      onBlur={() => text !== value && onKeep(text)}
      onKeyDown={(event) => {
        if (event.key === 'Enter') event.currentTarget.blur();
        if (event.key === 'Escape') setText(value);
      }}
    />
  );
}

/** The heading. */
export function LessonHeading({ lesson }: { readonly lesson: Lesson }) {
  const document = useDocument();
  const words = useWords();
  const { tempo, meter, feel } = lesson;
  return (
    <header className="heading">
      <PlainField
        className="title-field"
        label={words.heading.title}
        value={lesson.title}
        onKeep={(title) => document.edit(setTitle(document.state().text, title.trim() || lesson.title))}
      />
      <div className="heading-line">
        <PlainField
          className="by-field"
          label={words.heading.by}
          value={lesson.by ?? ''}
          onKeep={(by) => document.edit(setBy(document.state().text, by.trim()))}
        />
        <DialogTrigger>
          <Button className="measure">
            <span className="hidden-words">{words.heading.edit}: </span>
            <span className="meter">{meter.text}</span>
            <span>{feelWords(formatFeel(feel), words)}</span>
            <span>♩ = {words.heading.tempi(tempo.startBpm, tempo.goalBpm)}</span>
          </Button>
          <Popover className="popover" placement="bottom end">
            <Dialog className="measure-dialog" aria-label={words.heading.edit}>
              <MeasureForm lesson={lesson} />
            </Dialog>
          </Popover>
        </DialogTrigger>
      </div>
    </header>
  );
}
