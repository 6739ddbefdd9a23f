/** What a teacher wrote, loaded only where something is written. */
import type { ProseProps } from '@shedbook/stand/prose';
import { type ComponentType, lazy, Suspense } from 'react';

let loaded: ComponentType<ProseProps> | null = null;

/** Loads what draws a text, so that texts are there as soon as a page is drawn. */
export async function loadProse(): Promise<{ readonly default: ComponentType<ProseProps> }> {
  const { Prose: Written } = await import('@shedbook/stand/prose');
  loaded = Written;
  return { default: Written };
}

const Later = lazy(loadProse);

/** The text, and what stands under it; nothing where there is neither. */
export function Prose(props: ProseProps) {
  if (props.text === null && (props.media ?? []).length === 0) return null;
  const Written = loaded ?? Later;
  return (
    <Suspense>
      <Written {...props} />
    </Suspense>
  );
}
