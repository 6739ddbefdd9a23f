/** What a teacher writes to a lesson or a section: paragraphs, lists, emphasis, links and pictures. */
import { type Medium, type ProseBlock, type ProseRun, readProse } from '@shedbook/core';
import { type FindMedium, MediaPlace, MediumView } from './medium.tsx';

function Run({ text, strong, emphasis, link }: ProseRun) {
  const set = strong ? (
    <strong>{emphasis ? <em>{text}</em> : text}</strong>
  ) : emphasis ? (
    <em>{text}</em>
  ) : (
    text
  );
  return link === null ? set : <a href={link}>{set}</a>;
}

/* biome-ignore-start lint/suspicious/noArrayIndexKey: a text is drawn as a whole, nothing in it moves */
function Runs({ runs }: { readonly runs: readonly ProseRun[] }) {
  return runs.map((run, index) => <Run key={index} {...run} />);
}

function Block({ block }: { readonly block: ProseBlock }) {
  if (block.kind === 'medium') return <MediumView medium={block.medium} />;
  if (block.kind === 'paragraph') {
    return (
      <p>
        <Runs runs={block.runs} />
      </p>
    );
  }
  const items = block.items.map((runs, index) => (
    <li key={index}>
      <Runs runs={runs} />
    </li>
  ));
  return block.isNumbered ? <ol>{items}</ol> : <ul>{items}</ul>;
}

export type { FindMedium } from './medium.tsx';

/** What there is to draw of what a teacher wrote. */
export interface ProseProps {
  readonly text: string | null;
  /** What stands under it; nothing where left out. */
  readonly media?: readonly Medium[] | undefined;
  /** Finds the files; they are named where left out. */
  readonly find?: FindMedium;
}

const NOWHERE: FindMedium = () => null;

/** The text, and under it pictures, sound and video; nothing where there is neither. */
export function Prose({ text, media = [], find = NOWHERE }: ProseProps) {
  return (
    <MediaPlace value={find}>
      {readProse(text ?? '').map((block, index) => (
        <Block key={index} block={block} />
      ))}
      {media.map((medium) => (
        <MediumView key={medium.path} medium={medium} />
      ))}
    </MediaPlace>
  );
}
/* biome-ignore-end lint/suspicious/noArrayIndexKey: see above */
