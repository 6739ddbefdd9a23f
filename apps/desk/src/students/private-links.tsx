/** Private links of a student: made, shown once as text and as a code to scan, and taken back. */
import type { MadeLink, StoredLink, StoredStudent } from '@shedbook/routes';
import { Button, Icon, useSay } from '@shedbook/stand';
import { useCallback, useEffect, useState } from 'react';
import { wordsFor } from '../document/error-words.ts';
import { ShownOnce } from '../shared/shown-once.tsx';
import { useLanguage } from '../words/students-words.tsx';
import { listLinks, makeLink, revokeLink } from './api.ts';
import styles from './private-links.module.css';

interface ListedProps {
  readonly link: StoredLink;
  readonly n: number;
  readonly onRevoke: () => void;
}

function Listed({ link, n, onRevoke }: ListedProps) {
  const { words, tag } = useLanguage();
  const day = (moment: string) => new Date(moment).toLocaleDateString(tag, { day: 'numeric', month: 'long' });
  const { madeAt, usedAt } = link;
  return (
    <li>
      <span>
        {words.links.made({ day: day(madeAt) })}{' '}
        {usedAt === null ? words.links.unused : words.links.used({ day: day(usedAt) })}
      </span>
      <Button onClick={onRevoke} aria-label={words.links.revokeThis({ n })}>
        {words.links.revoke}
      </Button>
    </li>
  );
}

/** The list, and making another. */
export function PrivateLinks({ student }: { readonly student: StoredStudent }) {
  const { words, tag } = useLanguage();
  const say = useSay();
  const { id, name } = student;
  const [links, setLinks] = useState<readonly StoredLink[]>([]);
  const [made, setMade] = useState<MadeLink | null>(null);
  const attempt = useCallback(
    (work: Promise<unknown>) =>
      work
        .then(() => listLinks(id))
        .then(setLinks)
        .catch((error: unknown) => say(wordsFor(error, words))),
    [id, say, words],
  );
  useEffect(() => void attempt(Promise.resolve()), [attempt]);
  return (
    <section className={styles.links} aria-label={words.links.title} data-part="links">
      <h3>{words.links.title}</h3>
      <p className="quiet">{words.links.lead({ name })}</p>
      {links.length > 0 && (
        <ul>
          {links.map((link, index) => (
            <Listed
              key={link.id}
              link={link}
              n={index + 1}
              onRevoke={() =>
                void attempt(revokeLink(link.id)).then(() => say(words.links.revoked({ name })))
              }
            />
          ))}
        </ul>
      )}
      <Button onClick={() => void attempt(makeLink(id, tag).then(setMade))}>
        <Icon name="plus" />
        {words.links.make({ name })}
      </Button>
      {made && (
        <ShownOnce
          title={words.links.of({ name })}
          lead={words.links.once}
          address={made.address}
          label={words.links.address}
          code={{ svg: made.codeSvg, says: words.links.code({ name }) }}
          onClose={() => setMade(null)}
        />
      )}
    </section>
  );
}
