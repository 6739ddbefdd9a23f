/**
 * The box of tools beside what is being written; where there is no room it lies along the lower edge, with the strokes
 * in reach of the thumb and everything else to be opened over the page.
 */
import { Button, Icon } from '@shedbook/stand';
import { type ReactNode, useState } from 'react';
import { useWords } from '../words/words.tsx';
import styles from './tool-box.module.css';

interface ToolBoxProps {
  readonly title: string;
  /** Whether it lies along the lower edge. */
  readonly docked: boolean;
  /** Always in reach: which of several things is written. */
  readonly over?: ReactNode;
  /** Always in reach. */
  readonly strokes: ReactNode;
  /** What is being written, for bringing it in sight as the box opens over the page. */
  readonly written: string;
  readonly children: ReactNode;
}

/** The box. */
export function ToolBox({ title, docked, over, strokes, written, children }: ToolBoxProps) {
  const words = useWords().page;
  const [open, setOpen] = useState(false);
  return (
    <section
      className={styles.box}
      data-part="pencil-box"
      data-docked={docked || undefined}
      data-open={!docked || open || undefined}
      aria-label={title}
    >
      <h2>{title}</h2>
      {over}
      <div className={styles.row}>
        {strokes}
        {docked && (
          <Button
            aria-expanded={open}
            aria-label={open ? words.fewerTools : words.moreTools}
            onClick={() => {
              setOpen(!open);
              if (!open) document.querySelector(written)?.scrollIntoView();
            }}
          >
            <Icon name={open ? 'close' : 'more'} />
          </Button>
        )}
      </div>
      {(!docked || open) && children}
    </section>
  );
}
