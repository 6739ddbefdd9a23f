/** Language, and light or dark. */

import { chosenTheme, showTheme, THEMES, type Theme } from '@shedbook/stand';
import { LANGUAGES } from '@shedbook/words';
import { useState } from 'react';
import { useLanguage } from '../words/words.tsx';
import { Choices } from './controls.tsx';

/** The choices at the foot of the desk. */
export function Preferences() {
  const { tag, words, choose } = useLanguage();
  const [theme, setTheme] = useState<Theme>(chosenTheme);
  return (
    <footer className="preferences">
      <Choices
        label={words.settings.language}
        value={tag}
        choices={Object.entries(LANGUAGES)}
        onChange={choose}
      />
      <Choices
        label={words.settings.theme}
        value={theme}
        choices={THEMES.map((each) => [each, words.settings.themes[each]] as const)}
        onChange={(next) => {
          showTheme(next);
          setTheme(next);
        }}
      />
    </footer>
  );
}
