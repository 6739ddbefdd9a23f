/**
 * Saying what a block makes of a figure of the trade: the same figures head most pages.
 *
 * Source: common practice: to move a figure is the first drill on it, to fill it and to thin it the next.
 */
import type { DrillFact, FigureFact, IdeaFact, ThemeFact } from './idea-fact.ts';

/** What is said of a block by what one of its lines makes of the theme; the weightiest first. */
const DRILLS: readonly (readonly [DrillFact['fact'], (idea: IdeaFact) => boolean])[] = [
  ['drill-moved', ({ fact }) => fact.startsWith('idea-displaced')],
  ['drill-filled', ({ fact }) => fact === 'idea-filled'],
  ['drill-thinned', ({ fact }) => fact === 'idea-thinned'],
  ['drill-turned', ({ fact }) => fact === 'idea-turned'],
  ['drill-joined', ({ fact }) => fact === 'idea-joins-before'],
];

function isFigure(theme: ThemeFact): theme is FigureFact {
  return theme.fact.startsWith('figure-');
}

/** The heading of a block that begins with another line than its theme: that line is named first, where both have a name for it. */
export function ledHeading(lead: ThemeFact, theme: ThemeFact): ThemeFact {
  const isFirstSaid = isFigure(lead) || (lead.fact === 'theme-groups' && !isFigure(theme));
  const isThemeSaid = isFigure(theme) || theme.fact === 'theme-groups';
  return isFirstSaid && isThemeSaid ? { fact: 'theme-figures', figure: lead, other: theme } : theme;
}

/** The heading of a block: a figure of the trade heads many pages, so what the block makes of it is said, too. */
export function drilledHeading(theme: ThemeFact, ideas: readonly IdeaFact[]): ThemeFact {
  if (!isFigure(theme)) return theme;
  const drill = DRILLS.find(([, makes]) => ideas.some(makes));
  if (drill) return { fact: 'theme-drilled', figure: theme, drill: { fact: drill[0] } };
  const other = ideas.find((idea) => idea.fact === 'idea-figure');
  return other ? { fact: 'theme-figures', figure: theme, other: other.figure } : theme;
}
