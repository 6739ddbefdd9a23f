/** Light, dark, or as the system has it. */
import { remember, remembered } from './memory.ts';

/** The choices. */
export const THEMES = ['system', 'light', 'dark'] as const;

/** One of the choices. */
export type Theme = (typeof THEMES)[number];

const KEY = 'theme';

/** The theme that was chosen. */
export function chosenTheme(): Theme {
  return THEMES.find((theme) => theme === remembered(KEY)) ?? 'system';
}

/** Shows a theme and remembers it. */
export function showTheme(theme: Theme): void {
  remember(KEY, theme);
  if (theme === 'system') delete document.documentElement.dataset['theme'];
  else document.documentElement.dataset['theme'] = theme;
}
