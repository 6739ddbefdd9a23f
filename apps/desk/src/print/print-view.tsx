/** Printing: the pages exactly as they come out, what can be chosen about them, and the file. */

import { type Lesson, NUMBERINGS, PAPERS, type SheetSettings } from '@shedbook/core';
import { addressOf, ROUTES } from '@shedbook/routes';
import { buttonClass, Check, Choices, Icon, Range, SheetButton } from '@shedbook/stand';
import { type ReactNode, Suspense, useEffect, useRef } from 'react';
import type { DocumentState } from '../document/lesson-document.ts';
import { useDocument } from '../document/use-document.ts';
import { setSheet } from '../edit/heading.ts';
import { lazily } from '../loading/later.ts';
import { Guide } from '../shared/guide.tsx';
import { useLive } from '../shared/use-live.ts';
import { useLanguage, useWords } from '../words/words.tsx';
import styles from './print-view.module.css';
import { TakeHome } from './take-home.tsx';
import { useSheet } from './use-sheet.ts';

const RecordingsForm = lazily(
  () => import('./recordings.tsx'),
  (module) => module.RecordingsForm,
);

const FilmForm = lazily(
  () => import('./films.tsx'),
  (module) => module.FilmForm,
);

interface PrintViewProps {
  readonly state: DocumentState;
  readonly lesson: Lesson;
}

const TICKS = ['counts', 'stickings', 'legend', 'tickBoxes'] as const;

function SheetChoices({ lesson }: { readonly lesson: Lesson }) {
  const document = useDocument();
  const words = useWords().print;
  const { sheet } = lesson;
  const [scale, setScale] = useLive(sheet.scale);
  const set = <K extends keyof SheetSettings>(key: K, value: SheetSettings[K]) =>
    document.edit(setSheet(document.state().text, key, value));
  return (
    <section className={styles.choices} aria-label={words.title}>
      <Choices
        label={words.paper}
        value={sheet.paper}
        choices={PAPERS.map((paper) => [paper, paper === 'tablet' ? words.tablet : paper] as const)}
        onChange={(paper) => set('paper', paper)}
      />
      <Choices
        label={words.staff}
        value={sheet.staff}
        choices={[
          ['compact', words.compact],
          ['full', words.full],
        ]}
        onChange={(staff) => set('staff', staff)}
      />
      {lesson.sections.length > 0 && (
        <Choices
          label={words.numbering}
          value={sheet.numbering}
          choices={NUMBERINGS.map((each) => [each, words[each]] as const)}
          onChange={(numbering) => set('numbering', numbering)}
        />
      )}
      <Range
        label={words.size}
        says={`${Math.round(scale * 100)} %`}
        value={scale}
        min={0.6}
        max={2}
        step={0.1}
        onChange={setScale}
        onChangeEnd={(next) => next !== sheet.scale && set('scale', Number(next.toFixed(1)))}
      />
      <div>
        {TICKS.map((key) => (
          <Check key={key} checked={sheet[key]} onChange={(on) => set(key, on)}>
            {words[key]}
          </Check>
        ))}
      </div>
    </section>
  );
}

/** A page's styles stay inside it. */
const PAGE_STYLE = '<style>svg{display:block;inline-size:100%;block-size:auto}</style>';

/** One page; it is a picture, its text is that of the lesson. */
function PagePicture({ svg, label }: { readonly svg: string; readonly label: string }) {
  const frame = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const host = frame.current;
    if (!host) return;
    const inside = host.shadowRoot ?? host.attachShadow({ mode: 'open' });
    inside.innerHTML = PAGE_STYLE + svg;
  }, [svg]);
  return <div className={styles.page} data-part="print-page" role="img" aria-label={label} ref={frame} />;
}

interface MadeHereProps {
  /** Lasting name of the part. */
  readonly of: string;
  readonly words: { readonly title: string; readonly hint: string; readonly opens: string };
  /** The form, which is loaded when it is opened. */
  readonly children: ReactNode;
}

/** Something that is made of the exercises: a form of its own behind a press. */
function MadeHere({ of, words: { title, hint, opens }, children }: MadeHereProps) {
  const words = useWords();
  return (
    <section aria-labelledby={of}>
      <h3 id={of}>{title}</h3>
      <p className="quiet">{hint}</p>
      <SheetButton
        title={title}
        done={words.heading.close}
        opens={
          <>
            <Icon name="file" />
            {opens}
          </>
        }
      >
        <Suspense>{children}</Suspense>
      </SheetButton>
    </section>
  );
}

/** The view. */
export function PrintView({ state, lesson }: PrintViewProps) {
  const { tag, words: all } = useLanguage();
  const words = all.print;
  const { sheet, status } = useSheet(state);
  const pages = sheet?.pages ?? [];
  return (
    <div className={styles.view}>
      <Guide at="print" className={styles.guide} />
      <div className={styles.beside}>
        <h2>{words.title}</h2>
        <SheetChoices lesson={lesson} />
        <a
          className={buttonClass('strong')}
          href={`${addressOf(ROUTES.printSheet, { id: state.id })}?language=${tag}`}
          download
        >
          <Icon name="print" />
          {words.download}
        </a>
        <p className={`quiet ${styles.status}`} role="status">
          {status === 'preparing' && words.preparing}
          {status === 'failed' && words.failed}
        </p>
        <MadeHere of="recordings" words={all.recordings}>
          <RecordingsForm lesson={lesson} />
        </MadeHere>
        <MadeHere of="film" words={all.films}>
          <FilmForm id={state.id} lesson={lesson} />
        </MadeHere>
        <TakeHome state={state} lesson={lesson} />
      </div>
      <section
        className={styles.pages}
        data-part="print-pages"
        aria-label={words.preview}
        aria-busy={status === 'preparing'}
      >
        {pages.map((svg, index) => (
          <PagePicture key={index} svg={svg} label={words.page({ n: index + 1, of: pages.length })} />
        ))}
      </section>
    </div>
  );
}
