/** Language, light or dark, and which way round the drums stand. */
import type { SetUp } from '@shedbook/core';
import { chosenTheme, showTheme, THEMES, type Theme } from '@shedbook/stand';
import { useState } from 'react';
import { PRACTICE_CATALOGUES, usePracticeLanguage } from '../page/words.tsx';
import { usePracticeSession } from '../session/practice-session.tsx';
import { Pick } from '../ui/controls.tsx';

const SET_UPS: readonly SetUp[] = ['right-handed', 'left-handed'];

/** The choices at the foot of the sheet. */
export function PageSettings() {
  const { tag, words, choose: chooseLanguage } = usePracticeLanguage();
  const { choice, choose } = usePracticeSession();
  const [theme, setTheme] = useState<Theme>(chosenTheme);
  return (
    <section className="page-settings" aria-label={words.settings.title}>
      <Pick
        label={words.setting.setUp}
        value={choice.setUp}
        choices={SET_UPS.map((each) => [each, words.setting.setUps[each]] as const)}
        onChange={(setUp) => choose({ setUp })}
      />
      <Pick
        label={words.settings.language}
        value={tag}
        choices={Object.entries(PRACTICE_CATALOGUES).map(([each, { language }]) => [each, language] as const)}
        onChange={chooseLanguage}
      />
      <Pick
        label={words.settings.theme}
        value={theme}
        choices={THEMES.map((each) => [each, words.settings.themes[each]] as const)}
        onChange={(next) => {
          showTheme(next);
          setTheme(next);
        }}
      />
    </section>
  );
}
