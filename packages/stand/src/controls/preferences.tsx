/** Language, and light or dark. */
import { useState } from 'react';
import { chosenTheme, showTheme, THEMES, type Theme } from '../device/theme.ts';
import { Choices } from './choices.tsx';

interface PreferencesProps {
  readonly language: string;
  /** Languages by their tags, each named in itself. */
  readonly languages: readonly (readonly [string, string])[];
  readonly onLanguage: (tag: string) => void;
  readonly words: {
    readonly language: string;
    readonly theme: string;
    readonly themes: Readonly<Record<Theme, string>>;
  };
}

/** The choices. */
export function Preferences({ language, languages, onLanguage, words }: PreferencesProps) {
  const [theme, setTheme] = useState<Theme>(chosenTheme);
  return (
    <>
      <Choices label={words.language} value={language} choices={languages} onChange={onLanguage} />
      <Choices
        label={words.theme}
        value={theme}
        choices={THEMES.map((each) => [each, words.themes[each]] as const)}
        onChange={(next) => {
          showTheme(next);
          setTheme(next);
        }}
      />
    </>
  );
}
