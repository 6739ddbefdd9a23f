/** The forms of a lesson: sections of bars, what each ends on, how often they go round, and the count-in; heard at once. */
import { type Form, type FormSection, formNamed, formShown, type Lesson } from '@shedbook/core';
import { Button, Choices, Icon, Select } from '@shedbook/stand';
import { nameIn } from '@shedbook/words';
import { useDocument, useDocumentState } from '../document/use-document.ts';
import {
  firstEnding,
  freeName,
  ownForms,
  removeForm,
  renameForm,
  setForm,
  withOneMore,
  withSection,
  withSectionMoved,
} from '../edit/forms.ts';
import { useSound } from '../hear/sound-context.tsx';
import { KeptField } from '../shared/kept-field.tsx';
import { useWords } from '../words/words.tsx';
import { EndingEditor } from './ending-editor.tsx';
import styles from './form-editor.module.css';
import { FormStrip } from './form-strip.tsx';
import { SectionClick } from './section-click.tsx';
import { Stepper } from './stepper.tsx';

const MOST = { bars: 256, repeat: 99, countIn: 8 } as const;

const PLAYS = ['pattern', 'time', 'rest'] as const satisfies readonly FormSection['play'][];

interface SectionEditorProps {
  readonly lesson: Lesson;
  readonly section: FormSection;
  readonly number: number;
  readonly isLast: boolean;
  readonly isOnly: boolean;
  readonly onChange: (section: FormSection | null) => void;
  readonly onMove: (by: -1 | 1) => void;
}

function SectionEditor(props: SectionEditorProps) {
  const { lesson, section, number, onChange, onMove } = props;
  const words = useWords().forms;
  const { play, bars, ending } = section;
  return (
    <li className={styles.section} aria-label={words.section({ n: number })}>
      <div className={styles.line}>
        <Select
          label={words.plays}
          value={play}
          onChange={(event) => {
            const next = PLAYS.find((each) => each === event.target.value) ?? 'pattern';
            onChange({ ...section, play: next, ending: next === 'rest' ? null : ending });
          }}
        >
          {PLAYS.map((each) => (
            <option key={each} value={each}>
              {words.play[each]}
            </option>
          ))}
        </Select>
        <Stepper
          label={words.bars}
          value={bars}
          least={1}
          most={MOST.bars}
          onChange={(next) => onChange({ ...section, bars: next })}
        />
        <SectionClick
          meter={lesson.meter}
          click={section.click}
          onChange={(click) => {
            const { click: _, ...silent } = section;
            onChange(click ? { ...silent, click } : silent);
          }}
        />
        <div className={styles.acts}>
          <Button
            dress="bare"
            disabled={number === 1}
            aria-label={words.up({ n: number })}
            onClick={() => onMove(-1)}
          >
            <Icon name="up" />
          </Button>
          <Button
            dress="bare"
            disabled={props.isLast}
            aria-label={words.down({ n: number })}
            onClick={() => onMove(1)}
          >
            <Icon name="down" />
          </Button>
          <Button
            dress="bare"
            disabled={props.isOnly}
            aria-label={words.remove({ n: number })}
            onClick={() => onChange(null)}
          >
            <Icon name="bin" />
          </Button>
        </div>
      </div>
      {play !== 'rest' && (
        <EndingEditor
          lesson={lesson}
          ending={ending}
          onAdd={() => onChange({ ...section, ending: firstEnding(lesson) })}
          onChange={(next) => onChange({ ...section, ending: next })}
        />
      )}
    </li>
  );
}

/** Plays the form that is looked at, and stops. */
function Hear({ form }: { readonly form: Form }) {
  const words = useWords();
  const { status, choice, choose, toggle } = useSound();
  const sounding = status === 'playing' || status === 'loading';
  return (
    <Button
      dress="strong"
      onClick={() => {
        if (choice.form !== form.name) choose({ form: form.name });
        toggle();
      }}
    >
      <Icon name={sounding ? 'stop' : 'play'} />
      {sounding ? words.sound.stop : words.forms.hear}
    </Button>
  );
}

/** The editor. */
export function FormEditor({ lesson }: { readonly lesson: Lesson }) {
  const document = useDocument();
  const words = useWords();
  const { choice, choose } = useSound();
  const own = ownForms(useDocumentState().text);
  const form = formShown(lesson, null, choice.form);
  const isOwn = own.includes(form.name);
  const edit = (next: Form) => document.edit(setForm(document.state().text, next));
  const add = () => {
    const name = freeName(lesson, words.forms.newName);
    edit({ ...form, name });
    choose({ form: name });
  };
  const rename = (wished: string) => {
    const name = wished.trim();
    if (name === '' || formNamed(lesson, name)) return;
    document.edit(renameForm(document.state().text, form, name));
    choose({ form: name });
  };
  return (
    <div className={styles.editor} data-part="form-editor">
      <Choices
        label={words.sound.form}
        value={form.name}
        choices={lesson.forms.map(({ name }) => {
          const said = nameIn(words.sound.forms, name);
          return [name, own.includes(name) ? words.sound.ownForm({ name: said }) : said] as const;
        })}
        onChange={(name) => choose({ form: name })}
      />
      <div className={styles.row}>
        <Hear form={form} />
        <Button onClick={add}>
          <Icon name="plus" />
          {words.forms.add}
        </Button>
        {isOwn && (
          <Button
            onClick={() => {
              document.edit(removeForm(document.state().text, form.name));
              choose({ form: null });
            }}
          >
            <Icon name="bin" />
            {words.forms.removeForm}
          </Button>
        )}
      </div>
      {isOwn && <KeptField label={words.page.name} value={form.name} onKeep={rename} />}
      <FormStrip form={form} />
      <ol className={styles.sections} aria-label={words.forms.sections}>
        {form.sections.map((section, index) => (
          <SectionEditor
            key={index}
            lesson={lesson}
            section={section}
            number={index + 1}
            isOnly={form.sections.length === 1}
            isLast={index === form.sections.length - 1}
            onChange={(next) => edit(withSection(form, index, next))}
            onMove={(by) => edit(withSectionMoved(form, index, by))}
          />
        ))}
      </ol>
      <Button onClick={() => edit(withOneMore(form))}>
        <Icon name="plus" />
        {words.forms.addSection}
      </Button>
      <div className={styles.row}>
        <Stepper
          label={words.forms.repeat}
          value={form.repeat}
          least={1}
          most={MOST.repeat}
          onChange={(repeat) => edit({ ...form, repeat })}
        />
        <Stepper
          label={words.forms.countIn}
          value={form.countInBars}
          least={0}
          most={MOST.countIn}
          onChange={(countInBars) => edit({ ...form, countInBars })}
        />
      </div>
    </div>
  );
}
