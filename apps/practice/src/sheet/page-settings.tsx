/** Language, light or dark, and which way round the drums stand. */
import { SET_UPS } from '@shedbook/core';
import { Choices, Preferences } from '@shedbook/stand';
import { LANGUAGES } from '@shedbook/words';
import { hrefOf } from '../page/route.ts';
import { usePracticeLanguage } from '../page/words.tsx';
import { usePracticeSession } from '../session/practice-session.tsx';
import styles from './page-settings.module.css';
import { StudentsPick } from './students-pick.tsx';

/** The choices at the foot of the sheet. */
export function PageSettings() {
  const { tag, words, choose: chooseLanguage } = usePracticeLanguage();
  const { choice, choose, pack } = usePracticeSession();
  return (
    <section className={styles.settings} aria-label={words.settings.title}>
      {!pack.isPrivate && <StudentsPick />}
      <Choices
        label={words.setting.setUp}
        value={choice.setUp}
        choices={SET_UPS.map((each) => [each, words.setting.setUps[each]] as const)}
        onChange={(setUp) => choose({ setUp })}
      />
      <Preferences
        language={tag}
        languages={Object.entries(LANGUAGES)}
        onLanguage={chooseLanguage}
        words={words.settings}
      />
      <a href={hrefOf({ at: 'sound' })}>{words.settings.trySound}</a>
    </section>
  );
}
