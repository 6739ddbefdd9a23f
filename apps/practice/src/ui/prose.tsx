/** What a teacher wrote, loaded only where something is written. */
import { type ComponentType, lazy, Suspense } from 'react';

interface ProseProps {
  readonly text: string;
}

let loaded: ComponentType<ProseProps> | null = null;

/** Loads what draws a text, so that texts are there as soon as a page is drawn. */
export async function loadProse(): Promise<{ readonly default: ComponentType<ProseProps> }> {
  const { Prose: Written } = await import('@shedbook/stand/prose');
  loaded = Written;
  return { default: Written };
}

const Later = lazy(loadProse);

/** The text; nothing where there is none. */
export function Prose({ text }: { readonly text: string | null }) {
  if (text === null) return null;
  const Written = loaded ?? Later;
  return (
    <Suspense>
      <Written text={text} />
    </Suspense>
  );
}
